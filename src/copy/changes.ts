/** The line that a new revision carries: what is not as it was sent. */

import { LIMITS } from '../domain/programme/shape.ts';
import type { Changes, WeekChange } from '../domain/workshop/changes.ts';
import type { WeekText } from '../domain/workshop/compare.ts';
import type { Sheet } from '../domain/workshop/sheet.ts';
import { listed, stretches } from './grammar.ts';
import { day } from './times.ts';
import { capital } from './words.ts';

const TEXTS: Readonly<Record<WeekText, string>> = {
  focus: 'the focus',
  effort: 'the effort',
  times: 'how often',
  together: 'which session is done together',
};

/** "Week 3", "Weeks 3 and 5", "Weeks 3 to 6". Given from 0. */
function weeksInWords(weeks: readonly number[]): string {
  const said = stretches([...weeks].sort((a, b) => a - b).map((week) => week + 1));
  return `${weeks.length > 1 ? 'Weeks' : 'Week'} ${listed(said)}`;
}

const isAre = (count: number): string => (count === 1 ? 'is' : 'are');

/** "Curlew and Swift are changed", without the week. */
function whatChanged({ groups, texts }: WeekChange, sheet: Sheet): string {
  const all = groups.length === sheet.groups.length && groups.length > 1;
  const names = sheet.groups.filter(({ id }) => groups.includes(id)).map(({ name }) => name.trim());
  const things = [...(all ? ['all groups'] : names), ...texts.map((text) => TEXTS[text])];
  return `${capital(listed(things))} ${isAre(all ? 2 : things.length)} changed`;
}

/** Weeks in which the same happened are named together. */
function weekSentences({ weeks }: Changes, sheet: Sheet): readonly string[] {
  const byWhat = new Map<string, number[]>();
  for (const change of weeks) {
    const what = whatChanged(change, sheet);
    byWhat.set(what, [...(byWhat.get(what) ?? []), change.week]);
  }
  return [...byWhat].map(([what, places]) => `${weeksInWords(places)}: ${what}.`);
}

const names = (groups: readonly { readonly name: string }[]): string =>
  listed(groups.map(({ name }) => name.trim()));

function groupSentences(changes: Changes): readonly string[] {
  const {
    groupsMoved: isMoved,
    groupsAdded: added,
    groupsRemoved: removed,
    groupsRenamed: renamed,
  } = changes;
  return [
    ...(added.length > 0 ? [`${names(added)} ${isAre(added.length)} new.`] : []),
    ...(removed.length > 0 ? [`${names(removed)} ${isAre(removed.length)} no longer in it.`] : []),
    ...(isMoved ? ['The groups stand in another order.'] : []),
    ...renamed.map(({ was, now }) =>
      was.name === now.name
        ? `Who ${now.name.trim()} is for is said anew.`
        : `${was.name.trim()} is now called ${now.name.trim()}.`,
    ),
  ];
}

function countSentences({ weeksAdded, weeksRemoved }: Changes): readonly string[] {
  const gone = weeksRemoved.length;
  return [
    ...(weeksAdded.length > 0
      ? [`${weeksInWords(weeksAdded)} ${isAre(weeksAdded.length)} new.`]
      : []),
    ...(gone > 0 ? [`${gone} ${gone === 1 ? 'week is' : 'weeks are'} taken out.`] : []),
  ];
}

function wholeSentences(changes: Changes, sheet: Sheet): readonly string[] {
  const { startDate, goal, title, leader } = sheet;
  const when = (what: string, date: string | undefined): string =>
    date === undefined ? `${what} has no date any more.` : `${what} is on ${day(date)}.`;
  return [
    ...(changes.startDate ? [when('The start', startDate)] : []),
    ...(changes.goalDate ? [when(goal.name.trim() || 'The event', goal.date)] : []),
    ...(changes.goal ? ['The goal is changed.'] : []),
    ...(changes.title ? [`It is now called ${title.trim()}.`] : []),
    ...(changes.leader ? [`It now comes from ${leader.trim()}.`] : []),
    ...(changes.reminders ? ['The reminders are changed.'] : []),
  ];
}

/**
 * A proposal for the line on what changed, within the length that a file allows: sentences that do
 * not fit are left out at the end. Empty when nothing that a participant would notice is changed.
 */
export function changeLine(changes: Changes, sheet: Sheet): string {
  const [first = '', ...rest] = [
    ...weekSentences(changes, sheet),
    ...countSentences(changes),
    ...groupSentences(changes),
    ...wholeSentences(changes, sheet),
  ];
  let line = cut(first);
  for (const sentence of rest) {
    const next = `${line} ${sentence}`;
    if ([...next].length > LIMITS.change) break;
    line = next;
  }
  return line;
}

const cut = (sentence: string): string => {
  const letters = [...sentence];
  return letters.length <= LIMITS.change
    ? sentence
    : `${letters.slice(0, LIMITS.change - 1).join('')}…`;
};
