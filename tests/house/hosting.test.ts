import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { FILES } from '../../.ci/hosting.ts';
import { ROOT } from '../drivers/tree.ts';

const FOLDER = join(ROOT, 'docs/hosting');

describe('ready files for web hosts', () => {
  it('HOST-3 are what is made from the headers of our own server', () => {
    for (const [name, make] of Object.entries(FILES))
      expect(readFileSync(join(FOLDER, name), 'utf8'), `${name}: npm run hosting`).toBe(make());
    expect(readdirSync(FOLDER).sort()).toEqual([...Object.keys(FILES), 'README.md'].sort());
  });
});
