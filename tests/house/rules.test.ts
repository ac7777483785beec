import { describe, expect, it } from 'vitest';
import { projectFiles, read } from '../drivers/tree.ts';

const ID = /[A-Z]{2,6}-\d+/;
const listed = [...read('src/domain/SPEC.md').matchAll(/^- \*\*([A-Z]{2,6}-\d+)\*\* (.*)$/gm)].map(
  (found) => ({ id: found[1] ?? '', sentence: found[2] ?? '' }),
);

/** Ids that the titles of tests begin with: `PLAN-3 ...`, or several: `PLAN-3, PLAN-4 ...`. */
const TITLE = new RegExp(`\\(\\s*(['"\`])((?:${ID.source})(?:, (?:${ID.source}))*)[ :]`, 'g');
const named = projectFiles()
  .filter((path) => /^tests\/.*\.test\.tsx?$/.test(path))
  .flatMap((path) =>
    [...read(path).matchAll(TITLE)].flatMap((found) =>
      (found[2] ?? '').split(', ').map((id) => ({ id, path })),
    ),
  );

describe('rules and the tests that show them', () => {
  it('HOUSE-6 every rule has its own id and a sentence', () => {
    expect(listed.length).toBeGreaterThan(40);
    const ids = listed.map(({ id }) => id);
    expect(ids.filter((id, index) => ids.indexOf(id) !== index)).toEqual([]);
    expect(listed.filter(({ sentence }) => sentence.length < 12)).toEqual([]);
  });

  it('HOUSE-6 every rule is named by the title of a test', () => {
    const shown = new Set(named.map(({ id }) => id));
    expect(listed.map(({ id }) => id).filter((id) => !shown.has(id))).toEqual([]);
  });

  it('HOUSE-6 no test names a rule that is not there', () => {
    const known = new Set(listed.map(({ id }) => id));
    expect(named.filter(({ id }) => !known.has(id))).toEqual([]);
  });

  it('HOUSE-6 no test is left out or left alone', () => {
    const idle = projectFiles()
      .filter((path) => /^tests\/.*\.test\.tsx?$/.test(path))
      .filter((path) => /\b(it|test|describe)\.(only|skip|todo|skipIf|runIf)\b/.test(read(path)))
      .filter((path) => path !== 'tests/house/rules.test.ts');
    expect(idle).toEqual([]);
  });
});
