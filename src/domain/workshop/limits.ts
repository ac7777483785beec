import { TEXT_MAX } from '../programme/bounds.ts';
import { dayOf, isMonday } from '../programme/dates.ts';
import { ID, LIMITS } from '../programme/shape.ts';
import type { EditRefusal } from './refusal.ts';
import type { Sheet, SheetWeek } from './sheet.ts';

const isLong = (text: string, limit: number): boolean =>
  text.length > limit && [...text].length > limit;

const longText = (text: string, limit: number): EditRefusal | undefined =>
  isLong(text, limit) ? { code: 'text-long', detail: { limit } } : undefined;

const notWithin = (value: number, min: number, max: number): EditRefusal | undefined =>
  value >= min && value <= max ? undefined : { code: 'number', detail: { min, max } };

const notWhole = (value: number, min: number, max: number): EditRefusal | undefined =>
  Number.isInteger(value) ? notWithin(value, min, max) : { code: 'number', detail: { min, max } };

const full = (code: EditRefusal['code'], count: number, limit: number): EditRefusal | undefined =>
  count > limit ? { code, detail: { limit } } : undefined;

/** The first of several questions that finds something. */
function first(...questions: readonly (() => EditRefusal | undefined)[]): EditRefusal | undefined {
  for (const question of questions) {
    const found = question();
    if (found !== undefined) return found;
  }
  return undefined;
}

const each = <T>(list: readonly T[], question: (member: T) => EditRefusal | undefined) =>
  first(...list.map((member) => () => question(member)));

function beyondDates({ startDate, goal }: Sheet): EditRefusal | undefined {
  const start = startDate === undefined ? undefined : dayOf(startDate);
  const isWrong =
    (startDate !== undefined && (start === undefined || !isMonday(start))) ||
    (goal.date !== undefined && dayOf(goal.date) === undefined);
  return isWrong ? { code: 'date' } : undefined;
}

function beyondGroups({ groups }: Sheet): EditRefusal | undefined {
  const ids = new Set(groups.map(({ id }) => id));
  if (groups.length === 0) return { code: 'last-group' };
  if (ids.size < groups.length || groups.some(({ id }) => !ID.test(id))) return { code: 'id' };
  return each(groups, (group) =>
    first(
      () => longText(group.name, LIMITS.name),
      () => longText(group.for, LIMITS.sentence),
    ),
  );
}

function beyondWeek(week: SheetWeek, { groups }: Sheet): EditRefusal | undefined {
  const { focus, effort, timesPerWeek, together, sessions } = week;
  const { min, max } = timesPerWeek;
  return first(
    () => longText(focus, LIMITS.sentence),
    () => notWhole(effort, 0, 100),
    () => notWhole(min, 1, LIMITS.sessions),
    () => notWhole(max, min, LIMITS.sessions),
    () => (together === undefined ? undefined : notWhole(together, 1, max)),
    () =>
      Object.keys(sessions).length === groups.length &&
      groups.every(({ id }) => Object.hasOwn(sessions, id))
        ? undefined
        : { code: 'shape' },
    () =>
      each(Object.values(sessions), (cells) =>
        first(
          () => (cells.length === 0 ? { code: 'last-session' } : undefined),
          () => full('sessions-full', cells.length, LIMITS.sessions),
          () => each(cells, ({ text }) => longText(text, TEXT_MAX)),
        ),
      ),
  );
}

/**
 * What a sheet holds more of than a programme may (`LIMITS`, and the bounds of a session's text),
 * or less than it needs: one group, one week, one session for each group in each week. Texts may
 * be empty and sessions unreadable: those are gaps and mistakes, which the file's reader names.
 */
export const beyond = (sheet: Sheet): EditRefusal | undefined =>
  first(
    () => (ID.test(sheet.id) ? undefined : { code: 'id' }),
    () => longText(sheet.title, LIMITS.title),
    () => longText(sheet.leader, LIMITS.name),
    () => longText(sheet.goal.name, LIMITS.name),
    () => notWithin(sheet.goal.distanceM, 1, LIMITS.distanceM),
    () => beyondDates(sheet),
    () => full('groups-full', sheet.groups.length, LIMITS.groups),
    () => beyondGroups(sheet),
    () => full('weeks-full', sheet.weeks.length, LIMITS.weeks),
    () => (sheet.weeks.length === 0 ? { code: 'last-week' } : undefined),
    () => full('reminders-full', sheet.reminders.length, LIMITS.reminders),
    () => each(sheet.reminders, (reminder) => longText(reminder, LIMITS.sentence)),
    () => each(sheet.weeks, (week) => beyondWeek(week, sheet)),
  );
