import { describe, expect, it } from 'vitest';
import { read } from '../drivers/tree.ts';

const page = read('docs/threats.md');
const known = new Set(
  [...read('src/domain/SPEC.md').matchAll(/^- \*\*([A-Z]{2,6}-\d+)\*\*/gm)].map(([, id]) => id),
);

describe('the page on threats', () => {
  it('SAFE-4 names only rules that are there', () => {
    // Letters, a hyphen and figures that are no rule: names of standards.
    const named = [...page.matchAll(/\b(?!AES|SHA|RFC)[A-Z]{2,6}-\d+\b/g)].map(([id]) => id);
    expect(named.length).toBeGreaterThan(40);
    expect(named.filter((id) => !known.has(id))).toEqual([]);
  });

  it('SAFE-4 has a rule for each thing that it says nobody can do', () => {
    const rows = page.split('\n').filter((line) => /^\| (?!Cannot|---)/.test(line));
    expect(rows.length).toBeGreaterThan(15);
    const bare = rows.filter(
      (row) => ![...row.matchAll(/[A-Z]{2,6}-\d+/g)].some(([id]) => known.has(id)),
    );
    expect(bare).toEqual([]);
  });
});
