import { DEMO_PROGRAMME_TEXT } from '../../src/app/demo/demo.ts';
import { createReader } from '../../src/app/workshop/readings.ts';
import { adviceFor } from '../../src/domain/advice/advice.ts';
import { byWeek, weeksUpTo } from '../../src/domain/back/weeks.ts';
import { boardOf } from '../../src/domain/board/board-of.ts';
import { suggestionsFor } from '../../src/domain/board/suggest.ts';
import { wordsDue } from '../../src/domain/board/words-due.ts';
import { writeBackup } from '../../src/domain/exchange/backup.ts';
import { readBackup } from '../../src/domain/exchange/backup-read.ts';
import { incomingFromCode } from '../../src/domain/exchange/incoming.ts';
import { logTable } from '../../src/domain/exchange/log-table.ts';
import { encodePacket } from '../../src/domain/exchange/packet.ts';
import { restore } from '../../src/domain/exchange/restore.ts';
import { toUtf8 } from '../../src/domain/exchange/utf8.ts';
import type { LogEntry } from '../../src/domain/log/entry.ts';
import { reviewOutline } from '../../src/domain/review/review.ts';
import { applyEdit } from '../../src/domain/workshop/apply-edit.ts';
import { sheetOf } from '../../src/domain/workshop/file.ts';
import { HERON, on } from '../domain/advice/people.ts';
import { boardInput } from '../domain/board/members.ts';
import { dateOf, people, TWELVE } from '../drivers/board/club.ts';
import { newLeader, signWith, textBy } from '../drivers/exchange/leader.ts';
import { NINE_O_CLOCK } from '../drivers/sessions.ts';
import { sessionsWithNotes } from './records.ts';
import { median, type Table } from './table.ts';

/** How often each is done; each time over things that were never seen before. */
const TURNS = 5;

/** Something that is done with so many, made ready anew outside of the time that it takes. */
interface Operation {
  readonly what: string;
  readonly ready: (size: number) => () => unknown;
}

/** Operations, by what they do, over what is made for each of them alike. */
const over = <T>(
  made: (size: number) => T,
  jobs: Readonly<Record<string, (given: T) => unknown>>,
): readonly Operation[] =>
  Object.entries(jobs).map(([what, job]) => ({
    what,
    ready: (size) => {
      const given = made(size);
      return () => job(given);
    },
  }));

function measured({ what, ready }: Operation, sizes: readonly number[]): readonly string[] {
  const times = sizes.map((size) =>
    median(
      // The first is left out: the engine makes code fast that it has seen.
      Array.from({ length: TURNS + 1 }, () => {
        const job = ready(size);
        const begun = performance.now();
        job();
        return performance.now() - begun;
      }).slice(1),
    ),
  );
  const growth = times.slice(1).map((time, n) => (time / (times[n] ?? Number.NaN)).toFixed(1));
  return [what, ...times.map((time) => `${time.toFixed(time < 10 ? 2 : 0)} ms`), ...growth];
}

const keyed = (entries: readonly LogEntry[]) => entries.map((each) => [each.id, each] as const);

const OF_THE_LOG: readonly Operation[] = [
  ...over(sessionsWithNotes, {
    'what to do now': (entries) =>
      adviceFor({ programme: HERON, group: 'curlew', entries, today: on(3, 2) }),
    'looking back over eight weeks': (entries) => {
      const weeks = byWeek(entries);
      return weeksUpTo(weeks, Math.max(...weeks.keys()), 8);
    },
    'the list as a table': logTable,
  }),
  ...over((size) => keyed(sessionsWithNotes(size)), {
    'a backup written and opened': (log) => readBackup(writeBackup({ log }, 'words', NINE_O_CLOCK)),
    'a backup taken in where half is there': (log) =>
      restore({ log: log.slice(0, log.length / 2) }, { log }),
  }),
];

const club = (size: number) =>
  boardInput(people(size), { programme: TWELVE, today: dateOf(11, 7) });

/** The same club, known already, and then with one who told anew. */
function oneAnswerMore(size: number) {
  const input = club(size);
  boardOf(input);
  const [first, ...rest] = input.heard;
  return { ...input, heard: first === undefined ? rest : [{ ...first }, ...rest] };
}

const OF_THE_BOARD: readonly Operation[] = [
  ...over(club, { 'the whole board': boardOf }),
  ...over(oneAnswerMore, { 'the board after one answer more': boardOf }),
  ...over(club, { 'who needs a word': wordsDue, 'what next week should be': suggestionsFor }),
];

interface ProgrammeFile {
  readonly groups: readonly { readonly id: string }[];
  readonly weeks: readonly object[];
}

/** The club's programme with its weeks over and over, no two of its sessions alike. */
function programmeOf(weeks: number): Record<string, unknown> {
  const file = JSON.parse(DEMO_PROGRAMME_TEXT) as ProgrammeFile;
  const sessions = (n: number) =>
    file.groups.map(({ id }, g) => [
      id,
      `5 min easy walk; ${4 + g} x (${60 + n} s run, ${80 - n} s walk); 5 min easy walk`,
    ]);
  return {
    ...file,
    goal: { name: 'Heron Loop', distanceM: 5000 },
    weeks: Array.from({ length: weeks }, (_, n) => ({
      ...file.weeks[n % file.weeks.length],
      sessions: Object.fromEntries(sessions(n)),
    })),
  };
}

function sheetOfWeeks(weeks: number) {
  const sheet = sheetOf(JSON.stringify(programmeOf(weeks)));
  if (!sheet.ok) throw new Error(JSON.stringify(sheet.error));
  return sheet.value;
}

function packed(weeks: number) {
  const leader = newLeader();
  const text = textBy(leader, programmeOf(weeks));
  const bytes = toUtf8(text);
  const signature = new Uint8Array(Buffer.from(signWith(leader, bytes), 'base64url'));
  return { bytes, signature };
}

/** A sheet that is open, and the reader that knows it. */
function openSheet(weeks: number) {
  const { read } = createReader();
  const sheet = sheetOfWeeks(weeks);
  reviewOutline(read(sheet).outline);
  return { read, sheet };
}

const AT = { week: 1, group: 'curlew', session: 0 };
const TYPED = { kind: 'cell', at: AT, text: '5 min walk; 21 min run; 4 min walk' } as const;

const OF_A_PROGRAMME: readonly Operation[] = [
  ...over(sheetOfWeeks, {
    'opened in the workshop and checked': (sheet) =>
      reviewOutline(createReader().read(sheet).outline),
  }),
  ...over(openSheet, {
    'a letter typed, all read and checked': ({ read, sheet }) =>
      reviewOutline(read(applyEdit(sheet, TYPED)).outline),
  }),
  ...over(packed, { 'packed for a link': encodePacket }),
  ...over((size) => encodePacket(packed(size)), {
    'opened from a link': (code) => {
      const read = incomingFromCode(code);
      if (!read.ok) throw new Error(JSON.stringify(read.error));
    },
  }),
];

const table = (
  title: string,
  of: string,
  sizes: readonly number[],
  rows: readonly Operation[],
) => ({
  title,
  how: `Rules by themselves in Node, nothing known from the time before; the middle one of ${TURNS}. A growth of ten is in step with the size.`,
  head: [of, ...sizes.map(String), ...sizes.slice(1).map((size) => `growth to ${size}`)],
  rows: rows.map((row) => measured(row, sizes)),
});

/** How what is done with a log, a board and a programme grows when there is ten times as much. */
export const growing = (): readonly Table[] => [
  table('A longer log', 'sessions', [300, 3000], OF_THE_LOG),
  table('A larger club', 'people over 12 weeks', [50, 500, 5000], OF_THE_BOARD),
  table('A longer programme', 'weeks of four groups', [2, 20], OF_A_PROGRAMME),
];
