import type { Group, Programme } from '../programme/programme.ts';
import { type Sides, sidesOf, textsOf, type WeekText } from './compare.ts';
import { saidReminders } from './file.ts';
import type { Sheet } from './sheet.ts';

/** What became of one week. Weeks count from 0. */
export interface WeekChange {
  readonly week: number;
  /** Where it stood when it was sent. */
  readonly was: number;
  /** Ids of groups whose sessions are others; groups that came or went are not among them. */
  readonly groups: readonly string[];
  readonly texts: readonly WeekText[];
}

/** What is not as it was sent. */
export interface Changes {
  readonly weeks: readonly WeekChange[];
  /** Places in the sheet. */
  readonly weeksAdded: readonly number[];
  /** Places in what was sent. */
  readonly weeksRemoved: readonly number[];
  readonly groupsAdded: readonly Group[];
  readonly groupsRemoved: readonly Group[];
  /** Name or words of a group that is in both, as they are now. */
  readonly groupsRenamed: readonly { readonly was: Group; readonly now: Group }[];
  /** Those in both stand in another order: the voice calls groups by number. */
  readonly groupsMoved: boolean;
  readonly title: boolean;
  readonly leader: boolean;
  /** Name or distance. */
  readonly goal: boolean;
  readonly startDate: boolean;
  readonly goalDate: boolean;
  readonly reminders: boolean;
}

function changedWeeks(before: Programme, now: Sheet, sides: Sides): readonly WeekChange[] {
  return sides.weeks.changed.flatMap(({ was, now: week }): readonly WeekChange[] => {
    const [old, next] = [before.weeks[was], now.weeks[week]];
    if (old === undefined || next === undefined) return [];
    const [oldTexts, texts] = [textsOf(old), textsOf(next)];
    return [
      {
        week,
        was,
        groups: sides.shared.filter(
          (group) => sides.said.before(was, group) !== sides.said.now(week, group),
        ),
        texts: (Object.keys(texts) as WeekText[]).filter((key) => texts[key] !== oldTexts[key]),
      },
    ];
  });
}

const isSame = (a: unknown, b: unknown): boolean => JSON.stringify(a) === JSON.stringify(b);

/** What a participant will find changed when the sheet is sent as the next revision. */
export function changesBetween(before: Programme, now: Sheet): Changes {
  const sides = sidesOf(before, now);
  const old = new Map(before.groups.map((group) => [group.id, group]));
  const ids = new Set(now.groups.map(({ id }) => id));
  return {
    weeks: changedWeeks(before, now, sides),
    weeksAdded: sides.weeks.added,
    weeksRemoved: sides.weeks.removed,
    groupsAdded: now.groups.filter(({ id }) => !old.has(id)),
    groupsRemoved: before.groups.filter(({ id }) => !ids.has(id)),
    groupsRenamed: now.groups.flatMap((group) => {
      const was = old.get(group.id);
      const isOther = was !== undefined && (was.name !== group.name || was.for !== group.for);
      return isOther ? [{ was, now: group }] : [];
    }),
    groupsMoved: !isSame(
      before.groups.map(({ id }) => id).filter((id) => ids.has(id)),
      sides.shared,
    ),
    title: before.title !== now.title,
    leader: before.leader.name !== now.leader,
    goal: before.goal.name !== now.goal.name || before.goal.distanceM !== now.goal.distanceM,
    startDate: before.startDate !== now.startDate,
    goalDate: before.goal.date !== now.goal.date,
    reminders: !isSame(before.reminders, saidReminders(now)),
  };
}
