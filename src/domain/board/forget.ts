import type { Attendance, Mark } from './attendance.ts';
import type { Heard } from './heard.ts';
import { mergeSetup } from './merge.ts';
import type { BoardSetup, Forgotten } from './setup.ts';
import { unsaid } from './written.ts';

/**
 * The person, whom they are said to be, and those written in by hand who are said to be the same:
 * by what was said alone, whether or not anything is here of whom they are said to be.
 */
export function sameAs(heard: readonly Heard[], person: string): readonly string[] {
  const told = heard.find((each) => each.person === person)?.known?.same ?? person;
  const written = heard.filter(({ known }) => known?.same === told).map((each) => each.person);
  return [...new Set([person, told, ...written])];
}

/** Until when what a person sent stays out, UTC milliseconds; nothing: they were not forgotten. */
export const forgottenUntil = (
  setup: BoardSetup | undefined,
  digest: string | undefined,
): number | undefined =>
  digest === undefined ? undefined : setup?.forgotten.find((each) => each.digest === digest)?.at;

/** A setup that also says of these people that they were forgotten. */
export function withForgotten(
  setup: BoardSetup | undefined,
  programmeId: string,
  forgotten: readonly Forgotten[],
): BoardSetup {
  const none = unsaid(programmeId);
  return mergeSetup(setup ?? none, { ...none, forgotten });
}

/**
 * What is left of a person when all that was said up to a moment goes; nothing: nothing is. Before
 * or after a merge it leaves the same.
 */
export function afterForgetting(heard: Heard, until: number): Heard | undefined {
  const { told, known, ...rest } = heard;
  const entries = heard.entries.filter(({ toldAt }) => toldAt > until);
  const left = {
    ...(told !== undefined && told.at > until ? { told } : {}),
    ...(known !== undefined && known.at > until ? { known } : {}),
  };
  if (entries.length === 0 && Object.keys(left).length === 0) return undefined;
  const isWhole =
    entries.length === heard.entries.length && left.told === told && left.known === known;
  return isWhole ? heard : { ...rest, ...left, entries };
}

/** A day's list without ticks of some people: those up to a moment for each of them. */
export function withoutMarks(day: Attendance, until: ReadonlyMap<string, number>): Attendance {
  const stays = ([person, { at }]: [string, Mark]): boolean => at > (until.get(person) ?? -1);
  const marks = Object.entries(day.marks);
  return marks.every(stays) ? day : { ...day, marks: Object.fromEntries(marks.filter(stays)) };
}
