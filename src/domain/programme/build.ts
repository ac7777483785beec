import { COUNT_MAX, DEPTH_MAX } from './bounds.ts';
import type { Item, Repeat } from './plan.ts';
import type { RawBracket, RawCount, RawEntry, RawItem, RawMarks, RawRepeat, Span } from './raw.ts';
import { sayBracketReadings } from './readings.ts';
import type { Report } from './report.ts';
import { readStep } from './step.ts';

/** One punctuation mark, and then one word, may stand between two steps. */
export function checkMarks({ marks }: RawMarks, report: Report): void {
  const isWord = (mark: string): boolean => mark === 'then' || mark === 'and' || mark === '&';
  let last = '';
  for (const place of marks) {
    const follows = last === '' || (!isWord(last) && isWord(place.mark));
    if (!follows) report.say('nothing-between', place, { before: last });
    last = place.mark;
  }
}

/** `/` and `and`, which join steps only inside brackets. */
export const joins = (marks: RawMarks | null): boolean =>
  marks !== null && ['/', '&', 'and'].includes(marks.marks[0]?.mark ?? '');

/** Says what is wrong where the grammar stopped, or where two things stand side by side. */
export function sayLeftover(from: number, report: Report, before: RawEntry | undefined): void {
  const { text } = report.folded;
  const start = from + (/^[ \n]*/.exec(text.slice(from))?.[0].length ?? 0);
  const rest = text.slice(start);
  const word = /^[^\s;,+/()@"]*/.exec(rest)?.[0] ?? '';
  const end = start + Math.max(1, word.length);
  const span: Span = { start, end };
  if (rest.startsWith(')')) report.say('stray-close', span);
  else if (/^[@"]/.test(rest) && before?.kind === 'repeat') report.say('extra-on-brackets', span);
  else if (/^[.\-|>~:\u2022\u2190-\u21ff]/.test(rest))
    report.say('bad-separator', { start, end: start + 1 });
  else report.say('leftover', span);
}

function readCount(raw: RawCount, report: Report): number | undefined {
  if (!/^\d+$/.test(raw.digits)) return report.say('count-range', raw);
  const count = Number(raw.digits);
  if (count === 0) return report.say('count-zero', raw);
  return count > COUNT_MAX ? report.say('count-over', raw, { limit: COUNT_MAX }) : count;
}

function readBracket(raw: RawBracket, depth: number, report: Report): readonly Item[] {
  const items = readItems(raw.entries, depth, report);
  if (!raw.closed) {
    if (report.folded.text.slice(raw.end).trim() === '')
      report.say('unclosed-bracket', { start: raw.start, end: raw.start + 1 });
    else sayLeftover(raw.end, report, raw.entries.at(-1));
  }
  if (raw.entries.length === 0) report.say('empty-brackets', raw);
  return items;
}

/** What is repeated: a bracket's items or one step. */
function readUnit(raw: RawRepeat, depth: number, report: Report): readonly Item[] {
  const { unit } = raw;
  if (unit === null) {
    report.say('missing-repeated', raw);
    return [];
  }
  if (unit.kind === 'deep') {
    report.say('too-deep', { start: unit.start, end: unit.start + 1 });
    return [];
  }
  if (unit.kind === 'bracket') return readBracket(unit, depth, report);
  const step = readStep(unit, report);
  return step === undefined ? [] : [step];
}

/** A repeat up to what it repeats: `4 x (`. */
const headOf = ({ start, end, unit }: RawRepeat): Span => ({
  start,
  end: unit !== null && unit.start > start ? unit.start + 1 : Math.min(end, start + 1),
});

function readRepeat(raw: RawRepeat, depth: number, report: Report): Repeat | undefined {
  if (depth + raw.counts.length > DEPTH_MAX) report.say('too-deep', headOf(raw));
  const after = (raw.counts[0]?.start ?? raw.start) > raw.start;
  const early = after ? [] : raw.counts.map((count) => readCount(count, report));
  if (raw.counts.length === 0 && raw.unit?.kind === 'bracket')
    report.say('missing-count', { start: raw.start, end: raw.start + 1 });
  let items = readUnit(raw, depth + Math.max(1, raw.counts.length), report);
  const counts = after ? raw.counts.map((count) => readCount(count, report)) : early;
  for (const count of [...counts].reverse()) {
    if (count !== undefined) items = [{ kind: 'repeat', count, items }];
  }
  const [outer] = items;
  return outer?.kind === 'repeat' ? outer : undefined;
}

/** One step or repeat. `depth` is how many repeats are open around it. */
export function readItem(raw: RawItem, depth: number, report: Report): Item | undefined {
  if (raw.kind === 'step') return readStep(raw, report);
  if (raw.kind === 'repeat') return readRepeat(raw, depth, report);
  return report.say('count-after-step', raw);
}

/** The steps of a bracket, or of a part. What stands between them is checked as well. */
export function readItems(
  entries: readonly RawEntry[],
  depth: number,
  report: Report,
): readonly Item[] {
  const items: Item[] = [];
  for (const [n, entry] of entries.entries()) {
    if (entry.kind === 'label') report.say('label-inside', entry);
    else if (entry.kind === 'separator') report.say('nothing-between', entry, { before: '' });
    else {
      sayBracketReadings(entries, n, depth, report);
      const item = readItem(entry, depth, report);
      if (item !== undefined) items.push(item);
      const next = entries[n + 1];
      if (entry.separator !== null) checkMarks(entry.separator, report);
      else if (next?.kind === 'times') report.say('count-after-step', next);
      else if (next !== undefined) report.say('missing-separator', next);
    }
  }
  return items;
}
