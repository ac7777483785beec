/**
 * Rows as comma-separated values (RFC 4180): CRLF after every row, the last too; a cell with a
 * comma, a quote or a line break in quotes, its quotes doubled. So is one with a space at an end,
 * which some readers would cut off, and an empty cell that is a row's only one, which would be a
 * blank line.
 */
export const toCsv = (rows: readonly (readonly string[])[]): string =>
  rows.map((row) => `${row.map((cell) => quoted(cell, row.length)).join(',')}\r\n`).join('');

const quoted = (cell: string, cells: number): string =>
  /[",\r\n]|^\s|\s$/.test(cell) || (cell === '' && cells === 1)
    ? `"${cell.replaceAll('"', '""')}"`
    : cell;

/** What a spreadsheet takes for the beginning of a formula, in wide letters too. */
const STARTS = '=+\\-@\\t\\r\\n\uff1d\uff0b\uff0d\uff20';
const FORMULA = new RegExp(`^[ "]*[${STARTS}]`);
/** Where a spreadsheet that parts cells elsewhere than we do would begin one. */
const INNER = new RegExp(`([;\\t\\r\\n|][ "]*)(?=[${STARTS.replace(/\\[trn]/g, '')}])`, 'g');

/**
 * A person's own words as a cell that no spreadsheet runs: an apostrophe before what would begin
 * a formula (OWASP, "CSV Injection"), also behind signs that other spreadsheets part cells by.
 */
export function harmless(text: string): string {
  const inner = text.replace(INNER, "$1'");
  return FORMULA.test(inner) ? `'${inner}` : inner;
}
