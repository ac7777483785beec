import { COUNT_MAX, DEPTH_MAX } from './bounds.ts';
import { isCommentBracket } from './entries.ts';
import { sayLeftover } from './leftover.ts';
import { checkMarks } from './marks.ts';
import type { Item, Repeat } from './plan.ts';
import type { RawBracket, RawCount, RawEntry, RawItem, RawRepeat, Span } from './raw.ts';
import { sayBracketReadings } from './readings.ts';
import type { Report } from './report.ts';
import { readStep } from './step.ts';

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
  if (isCommentBracket(raw)) report.say('bracket-note', raw);
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
  const star = report.typed(raw).startsWith('*') && report.startsLine(raw.start);
  if (star) return report.say('bullet', { start: raw.start, end: raw.start + 1 });
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
      sayBracketReadings(entries, n, (raw, to) => readItem(raw, depth, to), depth === 0, report);
      const item = readItem(entry, depth, report);
      if (item !== undefined) items.push(item);
      const next = entries[n + 1];
      if (entry.separator !== null) checkMarks(entry.separator, report);
      else if (next?.kind === 'times') report.say('count-after-step', next);
      else if (next !== undefined && isCommentBracket(next)) report.say('bracket-note', next);
      else if (next !== undefined) report.say('missing-separator', next);
    }
  }
  return items;
}
