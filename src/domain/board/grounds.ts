import { rule } from '../advice/rules.ts';
import type { BoardInput } from './board.ts';
import { sizeOf } from './board-of.ts';
import { gapOf, isKnown } from './cells.ts';
import { boardLimit } from './limits.ts';
import type { Grounds } from './next-week.ts';
import type { Seen } from './row.ts';
import { medianOf, tenths } from './spread.ts';

/** One person's week in their group. Sessions in other groups say nothing of this one's plan. */
function weekOf({ row, record }: Seen, number: number) {
  const cell = row.cells[number - 1];
  const sessions = record.sessions.filter(
    ({ week, group }) => week === number && group === row.group,
  );
  const gap = medianOf(sessions.flatMap((session) => gapOf(session) ?? []));
  return {
    isKnown: cell !== undefined && isKnown(cell),
    // Who did enough did it in whichever group.
    enough: cell?.enough ?? false,
    cutShort: sessions.some((session) => session.cutShort),
    niggle: sessions.some(({ niggle }) => niggle !== undefined),
    sign: sessions.some(({ sign }) => sign),
    gap,
  };
}

/** What a group's week tells, counted over its people. @param looked the week, from 1 */
export function groundsOf(
  input: BoardInput,
  group: string,
  people: readonly Seen[],
  looked: number,
): Grounds {
  const of = sizeOf(input, group, people.length);
  const weeks = people.map((seen) => weekOf(seen, looked)).filter((week) => week.isKnown);
  const gaps = weeks.flatMap(({ gap }) => gap ?? []);
  const gap = medianOf(gaps);
  const count = (holds: (each: (typeof weeks)[number]) => boolean): number =>
    weeks.filter(holds).length;
  return {
    heard: weeks.length,
    of,
    rated: gaps.length,
    harder: gaps.filter((each) => tenths(each) >= rule('harder')).length,
    muchHarder: gaps.filter((each) => tenths(each) >= rule('muchHarder')).length,
    easier: gaps.filter((each) => tenths(each) <= -rule('harder')).length,
    cutShort: count(({ cutShort }) => cutShort),
    enough: count(({ enough }) => enough),
    niggles: count(({ niggle }) => niggle),
    signs: count(({ sign }) => sign),
    hurt: count(({ niggle, sign }) => niggle || sign),
    ...(gap !== undefined && { gap: tenths(gap) }),
  };
}

/** Whether so many of some are at least a share in percent; of none nothing is. */
export const isShare = (n: number, of: number, percent: number): boolean =>
  of > 0 && n * 100 >= of * percent - 1e-9;

/** Whether too little is known of a group to conclude anything from it. */
export const isTooFew = ({ heard, of }: Grounds): boolean =>
  heard < boardLimit('fewest') || !isShare(heard, of, boardLimit('leastShare'));
