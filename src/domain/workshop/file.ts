import { SENT_KEYS } from '../programme/keys.ts';
import type { ProgrammeProblem } from '../programme/problem.ts';
import type { Programme } from '../programme/programme.ts';
import { PROGRAMME_FORMAT, readProgramme } from '../programme/read.ts';
import type { Result } from '../result.ts';
import { ok } from '../result.ts';
import { cellsOf } from './places.ts';
import type { Sheet, SheetWeek } from './sheet.ts';

/** What a file says that is either in the sheet or is added when it is sent. */
const KNOWN: ReadonlySet<string> = new Set<string>([...SENT_KEYS, 'change']);

/** Top-level keys that this version does not know, as they stand in the file. */
function keptOf(text: string): Readonly<Record<string, unknown>> | undefined {
  // It has been read as a programme, so it is an object.
  const file = JSON.parse(text.replace(/^\ufeff/, '')) as object;
  const others = Object.entries(file).filter(([key]) => !KNOWN.has(key));
  return others.length === 0 ? undefined : Object.fromEntries(others);
}

/** A programme as a sheet: revision, keys and the line on what changed belong to sending. */
export function sheetOfProgramme(programme: Programme): Sheet {
  const { id, title, language, startDate, goal, leader, groups, weeks, reminders } = programme;
  const kept = keptOf(programme.text);
  return {
    id,
    title,
    language,
    ...(startDate === undefined ? {} : { startDate }),
    goal,
    leader: leader.name,
    groups,
    weeks: weeks.map(({ sessions, ...week }) => ({
      ...week,
      sessions: Object.fromEntries(
        Object.entries(sessions).map(([group, list]) => [
          group,
          list.map(({ text }) => ({ text })),
        ]),
      ),
    })),
    reminders,
    ...(kept === undefined ? {} : { kept }),
  };
}

/** A programme file's text as a sheet, or everything that is wrong with it. */
export function sheetOf(text: string): Result<Sheet, readonly ProgrammeProblem[]> {
  const read = readProgramme(text);
  return read.ok ? ok(sheetOfProgramme(read.value)) : read;
}

function weekOf(week: SheetWeek, { groups }: Sheet): object {
  const { focus, effort, timesPerWeek, together } = week;
  const sessions = groups.map(({ id }) => {
    const texts = cellsOf(week, id).map(({ text }) => text);
    return [id, texts.length === 1 ? texts[0] : texts] as const;
  });
  return {
    focus,
    effort,
    timesPerWeek: { min: timesPerWeek.min, max: timesPerWeek.max },
    ...(together === undefined ? {} : { together }),
    sessions: Object.fromEntries(sessions),
  };
}

/** A reminder without a word is none. */
export const saidReminders = ({ reminders }: Sheet): readonly string[] =>
  reminders.filter((reminder) => reminder.trim() !== '');

/**
 * The programme file of a sheet, as JSON text with its keys in the documented order. Gaps and
 * sessions that cannot be read are written as they are, so that reading it back names each with
 * its place. Sending sets revision and keys.
 */
export function fileOf(sheet: Sheet): string {
  const { id, title, language, startDate, goal, leader, groups, weeks, kept } = sheet;
  const others = Object.entries(kept ?? {}).filter(([key]) => !KNOWN.has(key));
  const file = Object.fromEntries([
    ['format', PROGRAMME_FORMAT],
    ['id', id],
    ['revision', 1],
    ['title', title],
    ['language', language],
    ...(startDate === undefined ? [] : [['startDate', startDate]]),
    [
      'goal',
      {
        name: goal.name,
        distanceM: goal.distanceM,
        ...(goal.date === undefined ? {} : { date: goal.date }),
      },
    ],
    ['leader', { name: leader, sign: null, seal: null }],
    ['groups', groups.map((group) => ({ id: group.id, name: group.name, for: group.for }))],
    ['weeks', weeks.map((week) => weekOf(week, sheet))],
    ['reminders', saidReminders(sheet)],
    ...others,
  ] as readonly (readonly [string, unknown])[]);
  return `${JSON.stringify(file, null, 2)}\n`;
}
