import { isoDate, mondayOf } from '../programme/calendar.ts';
import { dayOf } from '../programme/dates.ts';
import type { Edit } from './edit.ts';
import { inOneLine } from './one-line.ts';
import type { Sheet } from './sheet.ts';

type Of<K extends Edit['kind']> = Extract<Edit, { readonly kind: K }>;

/** Sets title or leader, in one line. */
export function setText(sheet: Sheet, key: 'title' | 'leader', typed: string): Sheet {
  const text = inOneLine(typed);
  return sheet[key] === text ? sheet : { ...sheet, [key]: text };
}

/** Sets the event's name or distance (metres); what is left out stays. */
export function setGoal(sheet: Sheet, edit: Of<'goal'>): Sheet {
  const name = inOneLine(edit.name ?? sheet.goal.name);
  const distanceM = edit.distanceM ?? sheet.goal.distanceM;
  if (name === sheet.goal.name && distanceM === sheet.goal.distanceM) return sheet;
  return { ...sheet, goal: { ...sheet.goal, name, distanceM } };
}

/** Sets the day of the event, ISO 8601; empty: it has none. */
export function setGoalDate(sheet: Sheet, date: string): Sheet {
  const { date: before = '', ...rest } = sheet.goal;
  if (date === before) return sheet;
  return { ...sheet, goal: date === '' ? rest : { ...rest, date } };
}

/** Programmes start on Mondays: any other day is taken for the Monday of its week. */
export function setStartDate(sheet: Sheet, date: string): Sheet {
  const { startDate: before = '', ...rest } = sheet;
  const day = dayOf(date);
  const startDate = day === undefined ? date : isoDate(mondayOf(day));
  if (startDate === before) return sheet;
  return startDate === '' ? rest : { ...rest, startDate };
}

/** Sets all reminders, each in one line. */
export function setReminders(sheet: Sheet, given: readonly string[]): Sheet {
  const reminders = given.map(inOneLine);
  const isSame =
    reminders.length === sheet.reminders.length &&
    reminders.every((reminder, n) => reminder === sheet.reminders[n]);
  return isSame ? sheet : { ...sheet, reminders };
}
