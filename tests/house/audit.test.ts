import { describe, expect, it } from 'vitest';
import {
  adviceIn,
  bundledNames,
  type Lock,
  lockProblems,
  packageOf,
  shippedNames,
} from '../../.ci/shipped.ts';
import { importsOf, projectFiles, read } from '../drivers/tree.ts';

const lock: Lock = JSON.parse(read('package-lock.json'));
const good = { version: '1.0.0', license: 'MIT', integrity: `sha512-${'A'.repeat(86)}==` };
const problems = (more: object) => lockProblems({ packages: { 'node_modules/wader': more } });

describe('packages of others', () => {
  it('SAFE-2 each has a hash; what is shipped runs no script when installed and may be shipped by all', () => {
    expect(shippedNames(lock).length).toBeGreaterThan(15);
    expect(lockProblems(lock)).toEqual([]);
  });

  it('SAFE-2 one without a hash, with a weak one, with a script or with another licence is seen', () => {
    expect(problems(good)).toEqual([]);
    const { integrity: _, ...bare } = good;
    expect(problems(bare)).toEqual(['wader 1.0.0: no SHA-512']);
    expect(problems({ ...good, integrity: 'sha1-AAAA' })).toEqual(['wader 1.0.0: no SHA-512']);
    expect(problems({ ...bare, dev: true })).toEqual(['wader 1.0.0: no SHA-512']);
    const scripted = { ...good, hasInstallScript: true };
    expect(problems(scripted)).toEqual(['wader 1.0.0: runs a script when it is installed']);
    expect(problems({ ...scripted, dev: true })).toEqual([]);
    for (const license of ['GPL-3.0', 'MIT AND GPL-3.0', 'UNLICENSED', ''])
      expect(problems({ ...good, license }), license).toHaveLength(1);
    for (const license of ['(MIT OR GPL-3.0)', 'MIT AND ISC', '0BSD'])
      expect(problems({ ...good, license }), license).toEqual([]);
  });

  it('SAFE-2 what the app’s own files import is one of its dependencies', () => {
    const own = new Set(Object.keys(JSON.parse(read('package.json')).dependencies));
    const files = projectFiles().filter(
      (path) => /^src\/.*\.(ts|tsx)$/.test(path) && !/^src\/(cli|voice\/build)\//.test(path),
    );
    const used = new Set<string>();
    for (const path of files)
      for (const { own: isOurs, target, typeOnly } of importsOf(path)) {
        const name = isOurs || typeOnly ? undefined : packageOf(target);
        if (name !== undefined) used.add(name);
      }
    expect([...used].filter((name) => !own.has(name))).toEqual([]);
    expect([...own].filter((name) => !used.has(name))).toEqual([]);
  });

  it('SAFE-2 an import says which package it is of, and the bundler’s list what was taken', () => {
    expect(['react/jsx-runtime', '@hpke/core', './sw.ts', 'node:fs'].map(packageOf)).toEqual([
      'react',
      '@hpke/core',
      undefined,
      undefined,
    ]);
    expect(bundledNames('## @hpke/core - 1.9.0 (MIT)\n\n## idb - 8 (ISC)\n')).toEqual([
      '@hpke/core',
      'idb',
    ]);
  });

  it('SAFE-2 advisories from moderate on count, and no answer is never taken for none', () => {
    const of = (severity?: string) => JSON.stringify({ vulnerabilities: { wader: { severity } } });
    expect(adviceIn('{"vulnerabilities":{}}')).toEqual({ asked: true, grave: [] });
    expect(adviceIn(of('low'))).toEqual({ asked: true, grave: [] });
    for (const severity of ['moderate', 'high', 'critical', 'unheard-of'])
      expect(adviceIn(of(severity))).toEqual({ asked: true, grave: [`wader: ${severity}`] });
    expect(adviceIn('{"message":"405 Method Not Allowed - POST host","error":{}}')).toEqual({
      asked: false,
      why: '405 Method Not Allowed',
    });
    for (const said of ['', 'null', '[]', '{}', 'oops']) expect(adviceIn(said).asked).toBe(false);
  });
});
