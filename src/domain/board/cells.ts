import { rule } from '../advice/rules.ts';
import type { Day } from '../programme/calendar.ts';
import type { Week } from '../programme/programme.ts';
import type { BoardCell, BoardSession, CellState } from './board.ts';
import { type Calendar, mondayOfWeek } from './calendar.ts';
import { medianOf, tenths } from './spread.ts';

/** Felt less target in points, in tenths; nothing where it was not rated. */
export const gapOf = ({ felt, target }: BoardSession): number | undefined =>
  felt === undefined ? undefined : tenths(felt - target);

/** What is known of a person besides the sessions of a week. */
export interface Telling {
  /** Sessions that make each week a done one, week 1 first. */
  readonly enough: readonly number[];
  /** The local day on which they last told. */
  readonly told?: Day;
  /** Sessions that they kept to themselves. */
  readonly leftOut: number;
  /** The latest week that they told of, from 1. */
  readonly reached: number;
}

/**
 * How a week stands of which nothing was told. Who keeps sessions to themselves may have done some
 * in it, so it stays unknown.
 */
function stateOfNothing(
  week: number,
  { told, leftOut, reached }: Telling,
  calendar: Calendar,
): CellState {
  const monday = mondayOfWeek(calendar, week);
  const isAhead =
    monday === undefined ? week > Math.max(calendar.week, reached) : monday > calendar.today;
  if (isAhead) return 'ahead';
  const isOver = monday === undefined ? reached > week : told !== undefined && told > monday + 6;
  return isOver && told !== undefined && leftOut === 0 ? 'none-told' : 'unknown';
}

/** One week of a person. @param number from 1 */
export function cellOf(
  number: number,
  week: Week,
  sessions: readonly BoardSession[],
  telling: Telling,
  calendar: Calendar,
): BoardCell {
  const gaps: number[] = [];
  let [done, niggles, signs, cutShort] = [0, 0, 0, 0];
  for (const session of sessions) {
    const gap = gapOf(session);
    if (gap !== undefined) gaps.push(gap);
    if (session.counts) done += 1;
    if (session.niggle !== undefined) niggles += 1;
    if (session.sign) signs += 1;
    if (session.cutShort) cutShort += 1;
  }
  const gap = medianOf(gaps);
  return {
    week: number,
    state: sessions.length > 0 ? 'heard' : stateOfNothing(number, telling, calendar),
    sessions,
    done,
    enough: done >= (telling.enough[number - 1] ?? 1),
    wanted: week.timesPerWeek,
    niggles,
    signs,
    cutShort,
    ...(gap !== undefined && { gap: tenths(gap) }),
  };
}

/** Whether something of a week is known, be it that nothing was done. */
export const isKnown = ({ state }: Pick<BoardCell, 'state'>): boolean =>
  state === 'heard' || state === 'none-told';

/** How felt effort stood to what was meant, in classes that can be drawn without colour. */
export const LOOKS = [
  'much-harder',
  'harder',
  'as-meant',
  'easier',
  'not-rated',
  'none-told',
  'unknown',
  'ahead',
] as const;
/** How a week of a person looks on the board. */
export type CellLook = (typeof LOOKS)[number];

/** A gap in its class. An ordinary point up or down is as meant. */
export function lookOfGap(gap: number): 'much-harder' | 'harder' | 'as-meant' | 'easier' {
  if (gap >= rule('muchHarder')) return 'much-harder';
  if (gap >= rule('harder')) return 'harder';
  return gap <= -rule('harder') ? 'easier' : 'as-meant';
}

/** By its gap where a week was heard and rated; else by how it stands. */
export function lookOf({ state, gap }: Pick<BoardCell, 'state' | 'gap'>): CellLook {
  if (state !== 'heard') return state;
  return gap === undefined ? 'not-rated' : lookOfGap(gap);
}
