import { fileOf } from './file.ts';
import type { Sheet } from './sheet.ts';

const WEEKS = 4;

/**
 * A programme before its first word: two groups and four weeks of empty sessions, towards 5 km,
 * two or three times a week at moderate effort. Title, leader and goal are to be named.
 *
 * @param id safe in a file name (`programmeId`)
 * @param language tag of RFC 5646
 */
export const blankSheet = (id: string, language: string): Sheet => ({
  id,
  title: '',
  language,
  goal: { name: '', distanceM: 5000 },
  leader: '',
  groups: [
    { id: 'a', name: 'A', for: '' },
    { id: 'b', name: 'B', for: '' },
  ],
  weeks: Array.from({ length: WEEKS }, () => ({
    focus: '',
    effort: 50,
    timesPerWeek: { min: 2, max: 3 },
    sessions: { a: [{ text: '' }], b: [{ text: '' }] },
  })),
  reminders: [],
});

/** Nothing of it was written yet, so that whoever begins anew can begin with it. */
export const isBlank = (sheet: Sheet): boolean =>
  fileOf(sheet) === fileOf(blankSheet(sheet.id, sheet.language));
