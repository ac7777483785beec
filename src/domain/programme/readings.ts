import { sayDuration } from './duration.ts';
import { isBare, isItem, isLoneBracket, isRecovery } from './entries.ts';
import { formatItems } from './format-items.ts';
import { isForeign, joins } from './marks.ts';
import type { Item } from './plan.ts';
import type { RawCount, RawEntry, RawItem } from './raw.ts';
import { Report } from './report.ts';
import { lengthOf } from './totals.ts';

type Read = (raw: RawItem, report: Report) => Item | undefined;

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
function itemsOf(chain: readonly RawItem[], read: Read, report: Report): readonly Item[] {
  const attempt = new Report(report.original, report.folded);
  const items = chain.flatMap((raw) => {
    if (isLoneBracket(raw) && raw.kind === 'repeat' && raw.unit?.kind === 'bracket')
      return raw.unit.entries.flatMap((inner) =>
        isItem(inner) ? (read(inner, attempt) ?? []) : [],
      );
    return read(raw, attempt) ?? [];
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
  read: Read,
  isOutside: boolean,
  report: Report,
): void {
  const entry = entries[n];
  if (report.first !== undefined || !isItem(entry)) return;
  const recovery = isBare(entry) && entry.separator === null && isRecovery(entries[n + 1]);
  const joined = joins(entry.separator) && isItem(entries[n + 1]);
  const outside = joins(entry.separator) && isOutside;
  if (!recovery && !outside && !(joined && isBare(entry))) return;
  const { chain, count } = recovery
    ? { chain: entries.slice(n, n + 2).filter(isItem), count: null }
    : chainFrom(entries, n);
  const items = itemsOf(chain, read, report);
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
    if (mark && !isForeign(mark)) report.say('slash-outside', mark);
  }
}
