import type { Edit } from './edit.ts';
import { inOneLine } from './one-line.ts';
import { copied, moved, withWeek } from './places.ts';
import type { Sheet, SheetWeek } from './sheet.ts';

type Of<K extends Edit['kind']> = Extract<Edit, { readonly kind: K }>;

/** Says what a week is about, in one line. */
export const setFocus = (sheet: Sheet, edit: Of<'focus'>): Sheet => {
  const focus = inOneLine(edit.focus);
  return withWeek(sheet, edit.week, (week) => (week.focus === focus ? week : { ...week, focus }));
};

/** Sets the target of a week, in percent. */
export const setEffort = (sheet: Sheet, { week: n, effort }: Of<'effort'>): Sheet =>
  withWeek(sheet, n, (week) => (week.effort === effort ? week : { ...week, effort }));

const withTogether = (week: SheetWeek, together: number): SheetWeek => {
  const { together: before = 0, ...rest } = week;
  if (together === before) return week;
  return together === 0 ? rest : { ...rest, together };
};

/** Says which session is done together, from 1; 0: none. */
export const setTogether = (sheet: Sheet, { week, session }: Of<'together'>): Sheet =>
  withWeek(sheet, week, (before) => withTogether(before, session));

/** When one of the two numbers passes the other, the one that was not touched follows it. */
export const setTimes = (sheet: Sheet, edit: Of<'times'>): Sheet =>
  withWeek(sheet, edit.week, (week) => {
    const { timesPerWeek: before, together = 0 } = week;
    const { min, max } =
      edit.min === before.min
        ? { min: Math.min(edit.min, edit.max), max: edit.max }
        : { min: edit.min, max: Math.max(edit.min, edit.max) };
    if (min === before.min && max === before.max) return week;
    return withTogether({ ...week, timesPerWeek: { min, max } }, Math.min(together, max));
  });

const copyOf = (week: SheetWeek): SheetWeek => ({
  ...week,
  sessions: Object.fromEntries(
    Object.entries(week.sessions).map(([id, cells]) => [id, cells.map(copied)]),
  ),
});

/** Adds a week at a place, like the one before it; a new first one like the first. */
export function addWeek(sheet: Sheet, { at }: Of<'add-week'>): Sheet {
  const before = sheet.weeks[Math.max(0, at - 1)];
  if (!Number.isInteger(at) || at < 0 || before === undefined) return sheet;
  return { ...sheet, weeks: sheet.weeks.toSpliced(at, 0, copyOf(before)) };
}

/** Takes a week out. */
export const removeWeek = (sheet: Sheet, { week }: Of<'remove-week'>): Sheet =>
  sheet.weeks[week] === undefined ? sheet : { ...sheet, weeks: sheet.weeks.toSpliced(week, 1) };

/** Moves a week to another place. */
export function moveWeek(sheet: Sheet, { from, to }: Of<'move-week'>): Sheet {
  const weeks = moved(sheet.weeks, from, to);
  return weeks === sheet.weeks ? sheet : { ...sheet, weeks };
}
