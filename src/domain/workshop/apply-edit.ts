import type { Result } from '../result.ts';
import { fail, ok, unreachable } from '../result.ts';
import type { Edit } from './edit.ts';
import { addSession, fill, pinCell, removeSession, tidyCell, writeCell } from './edit-cells.ts';
import { addGroup, changeGroup, moveGroup, removeGroup } from './edit-groups.ts';
import {
  addWeek,
  moveWeek,
  removeWeek,
  setEffort,
  setFocus,
  setTimes,
  setTogether,
} from './edit-weeks.ts';
import { setGoal, setGoalDate, setReminders, setStartDate, setText } from './edit-words.ts';
import { beyond } from './limits.ts';
import type { EditRefusal } from './refusal.ts';
import type { Sheet } from './sheet.ts';

/** The edit done, before anything is asked of what comes out. */
function done(sheet: Sheet, edit: Edit): Result<Sheet, EditRefusal> {
  switch (edit.kind) {
    case 'title':
      return ok(setText(sheet, 'title', edit.title));
    case 'leader':
      return ok(setText(sheet, 'leader', edit.leader));
    case 'goal':
      return ok(setGoal(sheet, edit));
    case 'goal-date':
      return ok(setGoalDate(sheet, edit.date));
    case 'start-date':
      return ok(setStartDate(sheet, edit.date));
    case 'reminders':
      return ok(setReminders(sheet, edit.reminders));
    case 'cell':
      return ok(writeCell(sheet, edit));
    case 'tidy':
      return ok(tidyCell(sheet, edit));
    case 'pin':
      return ok(pinCell(sheet, edit));
    case 'add-session':
      return ok(addSession(sheet, edit));
    case 'remove-session':
      return ok(removeSession(sheet, edit));
    case 'fill':
      return fill(sheet, edit);
    case 'focus':
      return ok(setFocus(sheet, edit));
    case 'effort':
      return ok(setEffort(sheet, edit));
    case 'times':
      return ok(setTimes(sheet, edit));
    case 'together':
      return ok(setTogether(sheet, edit));
    case 'add-week':
      return ok(addWeek(sheet, edit));
    case 'remove-week':
      return ok(removeWeek(sheet, edit));
    case 'move-week':
      return ok(moveWeek(sheet, edit));
    case 'add-group':
      return ok(addGroup(sheet, edit));
    case 'group':
      return ok(changeGroup(sheet, edit));
    case 'remove-group':
      return ok(removeGroup(sheet, edit));
    case 'move-group':
      return ok(moveGroup(sheet, edit));
    case 'replace':
      // A draft is of this programme, whatever it calls itself.
      return ok({ ...edit.sheet, id: sheet.id });
    default:
      return unreachable(edit);
  }
}

/**
 * A sheet after an edit, or why it was not made: what would hold more than a programme may is
 * refused whole. A place that is not there, and an edit that changes nothing, give the same sheet
 * back, as the same object.
 */
export function tryEdit(sheet: Sheet, edit: Edit): Result<Sheet, EditRefusal> {
  const next = done(sheet, edit);
  if (!next.ok || next.value === sheet) return next;
  const refusal = beyond(next.value);
  // A sheet that is over already, by another version's limits, can still be mended.
  return refusal === undefined || beyond(sheet) !== undefined ? next : fail(refusal);
}

/** A sheet after an edit; as it was when the edit is refused. */
export function applyEdit(sheet: Sheet, edit: Edit): Sheet {
  const next = tryEdit(sheet, edit);
  return next.ok ? next.value : sheet;
}
