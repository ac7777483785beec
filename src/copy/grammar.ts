/**
 * Small parts of sentences, in one way everywhere. No first page needs them; what one needs,
 * `capital`, stands in `words.ts`.
 */

/** "1 session", "3 sessions". @param more of several; left out: with an s */
export const many = (n: number, one: string, more = `${one}s`): string =>
  `${n} ${n === 1 ? one : more}`;

/** Without a capital, as in the middle of a sentence. */
export const lower = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);

/** "Dunlin", "Dunlin and Curlew", "Dunlin, Curlew and Swift". */
export const listed = (words: readonly string[]): string =>
  words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;

/** Numbers in ascending order, three or more in a row as a stretch: "2 to 4" and "6". */
export function stretches(numbers: readonly number[]): readonly string[] {
  const found: { from: number; to: number }[] = [];
  for (const n of numbers) {
    const last = found.at(-1);
    if (last?.to === n - 1) last.to = n;
    else found.push({ from: n, to: n });
  }
  return found.flatMap(({ from, to }) => {
    if (to < from + 2) return from === to ? [`${from}`] : [`${from}`, `${to}`];
    return [`${from} to ${to}`];
  });
}

/** A text of somebody else's such that it can stand in a line. */
export const oneLine = (text: string): string => text.replace(/\s+/g, ' ').trim();
