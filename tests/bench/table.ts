/** A table as the README shows it. */
export interface Table {
  readonly title: string;
  /** What was measured and how, in a line. */
  readonly how: string;
  readonly head: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

/** Markdown whose columns also line up in a terminal. */
export function asText({ title, how, head, rows }: Table): string {
  const all = [head, ...rows];
  const widths = head.map((_, column) => Math.max(...all.map((row) => row[column]?.length ?? 0)));
  const line = (row: readonly string[]): string =>
    `| ${widths.map((width, column) => (row[column] ?? '').padEnd(width)).join(' | ')} |`;
  const rule = `|${widths.map((width) => '-'.repeat(width + 2)).join('|')}|`;
  return [`### ${title}`, '', how, '', line(head), rule, ...rows.map(line), ''].join('\n');
}

export const kilobytes = (bytes: number): string => `${(bytes / 1000).toFixed(1)} kB`;

export const median = (values: readonly number[]): number => {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)] ?? Number.NaN;
};
