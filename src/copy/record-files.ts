/** What stands in the files that are given out: calendar, backup, and their names. */
import { type CalendarEvent, eventUid, sessionUid } from '../domain/exchange/calendar.ts';
import type { Planned } from '../domain/exchange/planned.ts';
import type { Programme } from '../domain/programme/programme.ts';
import { ms } from '../domain/units.ts';
import { effortOfTen } from './effort.ts';
import { minutes, sentence } from './times.ts';

/** What a backup says of itself to whoever opens it. */
export const backupWords =
  'Everything that Towpath keeps on one phone: programmes, groups, sessions with what was said about them, notes included. Anyone who has this file can read it. To use it: in Towpath, Settings, “Backup and calendar”, “Choose the file”. A leader’s keys and what people told their leader are not in it.';

export const fileName = {
  calendar: (programme: string, group: string): string => `${programme}-${group}.ics`,
  log: (date: string, what: 'csv' | 'json'): string => `towpath-sessions-${date}.${what}`,
  backup: (date: string): string => `towpath-backup-${date}.json`,
} as const;

const inWords = (before: number): string => {
  if (before === 0) return 'now';
  return before % 60 === 0 && before > 60
    ? `in ${before / 60} hours`
    : before === 60
      ? 'in an hour'
      : `in ${before} minutes`;
};

interface Wish {
  readonly groupId: string;
  readonly minutes: number;
  readonly alarmMinutes?: number;
}

/** Planned sessions, and the programme's event, as they stand in a calendar. */
export function calendarEvents(
  programme: Programme,
  { groupId, minutes: at, alarmMinutes }: Wish,
  sessions: readonly Planned[],
  link?: string,
): readonly CalendarEvent[] {
  const group = programme.groups.find(({ id }) => id === groupId)?.name ?? '';
  const { goal } = programme;
  const events = sessions.map(({ date, week, session, text, seconds }): CalendarEvent => {
    const about = programme.weeks[week - 1];
    const title = `Week ${week}, session ${session}: ${group}`;
    return {
      uid: sessionUid(programme.id, week, session),
      date,
      summary: `${title}, ${minutes(ms(seconds * 1000))}`,
      description: [
        programme.title,
        about?.focus ? sentence(about.focus) : '',
        about === undefined ? '' : `How hard: ${effortOfTen(Math.round(about.effort / 10))}.`,
        text,
        link === undefined
          ? 'Open Towpath to hear it.'
          : `${link}#/p/${programme.id}/${week}/${session}`,
        'Move it when the day does not suit. When you feel unwell, leave it out.',
      ]
        .filter((line) => line !== '')
        .join('\n'),
      at: {
        minutes: at,
        seconds,
        ...(alarmMinutes === undefined
          ? {}
          : {
              alarm: { minutesBefore: alarmMinutes, words: `${title}, ${inWords(alarmMinutes)}` },
            }),
      },
    };
  });
  if (goal.date === undefined || sessions.length === 0) return events;
  return [
    ...events,
    {
      uid: eventUid(programme.id),
      date: goal.date,
      summary: goal.name,
      description: programme.title,
    },
  ];
}
