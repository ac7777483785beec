import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import peggy from 'peggy';
import { describe, expect, it } from 'vitest';

const file = (name: string): string =>
  fileURLToPath(new URL(`../../../src/domain/programme/${name}`, import.meta.url));
const committed = readFileSync(file('grammar.generated.js'), 'utf8');

describe('the parser that is made from the grammar', () => {
  it('PLAN-11 the committed one is what npm run grammar makes', () => {
    const source = file('grammar.peggy');
    const made = peggy.generate(readFileSync(source, 'utf8'), {
      output: 'source',
      format: 'es',
      grammarSource: source,
    });
    expect(committed).toBe(made);
  });

  it('PLAN-11 it runs no text as code and asks nothing of a browser', () => {
    expect(committed).not.toMatch(/\beval\b|new Function|\bwindow\b|\bdocument\b|\bimport\b/);
  });
});
