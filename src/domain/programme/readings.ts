import { joins, readItem } from './build.ts';
import { sayDuration } from './duration.ts';
import { formatItems } from './format.ts';
import type { Item } from './plan.ts';
import type { RawCount, RawEntry, RawItem } from './raw.ts';
import { Report } from './report.ts';
import { lengthOf } from './totals.ts';

const isItem = (entry: RawEntry | undefined): entry is RawItem =>
  entry !== undefined && entry.kind !== 'label' && entry.kind !== 'separator';

/** `6 x 2 min run`, which says nothing of what follows it. */
const isBare = (entry: RawItem): boolean =>
  entry.kind === 'repeat' && entry.unit?.kind === 'step' && entry.counts.length === 1;

/** A bracket that does not say how many times: a recovery, behind a bare repeat. */
const isLoneBracket = (entry: RawEntry | undefined): boolean =>
  entry?.kind === 'repeat' && entry.counts.length === 0 && entry.unit?.kind === 'bracket';

/** Items joined by `/` or `and` from here on, and the count behind the last (`... x 6`). */
function chainFrom(
  entries: readonly RawEntry[],
  from: number,
): { chain: readonly RawItem[]; count: RawCount | null } {
  const chain: RawItem[] = [];
  for (let n = from; n < entries.length; n += 1) {
    const entry = entries[n];
    if (!isItem(entry)) break;
    if (entry.kind === 'times') return { chain, count: entry.count };
    chain.push(entry);
    if (!joins(entry.separator) && entries[n + 1]?.kind !== 'times') break;
  }
  return { chain, count: null };
}

/** The chain's items if they are right; otherwise their own problem is told first. */
function itemsOf(chain: readonly RawItem[], depth: number, report: Report): readonly Item[] {
  const attempt = new Report(report.original, report.folded);
  const items = chain.flatMap((raw) => {
    if (isLoneBracket(raw) && raw.kind === 'repeat' && raw.unit?.kind === 'bracket')
      return raw.unit.entries.flatMap((inner) =>
        isItem(inner) ? (readItem(inner, depth, attempt) ?? []) : [],
      );
    return readItem(raw, depth, attempt) ?? [];
  });
  report.first ??= attempt.first;
  return attempt.first === undefined ? items : [];
}

const said = (items: readonly Item[]): string => sayDuration(lengthOf(items));

/**
 * `6 x 2 min run / 1 min walk` can be read in two ways: asks for brackets and shows both with
 * their totals. Outside brackets, `/` and `and` join nothing.
 */
export function sayBracketReadings(
  entries: readonly RawEntry[],
  n: number,
  depth: number,
  report: Report,
): void {
  const entry = entries[n];
  if (report.first !== undefined || !isItem(entry)) return;
  const recovery = isBare(entry) && entry.separator === null && isLoneBracket(entries[n + 1]);
  const joined = joins(entry.separator) && isItem(entries[n + 1]);
  const outside = joins(entry.separator) && depth === 0;
  if (!recovery && !outside && !(joined && isBare(entry))) return;
  const { chain, count } = recovery
    ? { chain: entries.slice(n, n + 2).filter(isItem), count: null }
    : chainFrom(entries, n);
  const items = itemsOf(chain, depth, report);
  const span = { start: entry.start, end: (chain.at(-1) ?? entry).end };
  const [first, ...rest] = items;
  if (first?.kind === 'repeat' && isBare(entry) && rest.length > 0) {
    const together: Item = { ...first, items: [...first.items, ...rest] };
    report.say('needs-brackets', span, {
      together: formatItems([together], '; '),
      togetherTotal: said([together]),
      apart: formatItems(items, '; '),
      apartTotal: said(items),
    });
  } else if (count !== null && /^\d+$/.test(count.digits)) {
    const write = `${Number(count.digits)} x (${formatItems(items, ', ')})`;
    report.say('needs-brackets-count', { ...span, end: count.end }, { write });
  } else if (outside) {
    const mark = entry.separator?.marks[0];
    if (mark) report.say('slash-outside', mark);
  }
}
