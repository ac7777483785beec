import { writeBackup } from '../../src/domain/exchange/backup.ts';
import { readBackup } from '../../src/domain/exchange/backup-read.ts';
import { logExport } from '../../src/domain/exchange/log-export.ts';
import { logTable } from '../../src/domain/exchange/log-table.ts';
import { restore } from '../../src/domain/exchange/restore.ts';
import type { LogEntry } from '../../src/domain/log/entry.ts';
import { entry } from '../drivers/records/entries.ts';
import { NINE_O_CLOCK } from '../drivers/sessions.ts';
import { kilobytes, median, type Table } from './table.ts';

const ENTRIES = 3000;
const TURNS = 15;

/** One session every second day, each with a note. */
export const sessionsWithNotes = (count: number): readonly LogEntry[] =>
  Array.from({ length: count }, (_, n) =>
    entry({
      id: `session-${String(n).padStart(8, '0')}-0f3a-4c1d-9b2e`,
      startedAt: NINE_O_CLOCK + n * 2 * 86_400_000,
      feeling: {
        effort: n % 11,
        note: 'Wind from the sea all the way out; herons by the second gate.',
        ...(n % 9 === 0 ? { niggle: { place: 'shin', side: 'left', severity: 1 } } : {}),
      },
    }),
  );

const entries = sessionsWithNotes(ENTRIES);
const log = entries.map((each) => [each.id, each] as const);

/** The same person's other phone: half of it there already, some of it rated anew. */
const half = log
  .slice(0, ENTRIES / 2)
  .map(([id, each], n) => [id, n % 5 === 0 ? { ...each, feltAt: 1, feeling: {} } : each] as const);

function timed(job: () => unknown): readonly string[] {
  const times = Array.from({ length: TURNS }, () => {
    const begun = performance.now();
    job();
    return performance.now() - begun;
  });
  const middle = median(times);
  return [`${middle.toFixed(0)} ms`, `${(4 * middle).toFixed(0)} ms`];
}

/** What saving and taking in a long log costs. */
export function keeping(): Table {
  const file = writeBackup({ log }, 'words', NINE_O_CLOCK);
  const read = readBackup(file);
  if (!read.ok) throw new Error(read.error);
  const { stores } = read.value;
  const row = (what: string, size: string, job: () => unknown): readonly string[] => [
    what,
    size,
    ...timed(job),
  ];
  const csv = logTable(entries);
  const json = logExport(entries, NINE_O_CLOCK);
  return {
    title: 'Keeping and moving the record',
    how: `${ENTRIES} sessions with notes, in Node, without the database; the middle one of ${TURNS} times. Nothing of it runs on the first screen.`,
    head: ['What', 'Size', 'Median', 'Four times slower'],
    rows: [
      row('The list as a table (CSV)', kilobytes(csv.length), () => logTable(entries)),
      row('The list as JSON', kilobytes(json.length), () => logExport(entries, NINE_O_CLOCK)),
      row('Writing a backup', kilobytes(file.length), () =>
        writeBackup({ log }, 'words', NINE_O_CLOCK),
      ),
      row('Opening it', kilobytes(file.length), () => readBackup(file)),
      row('Taking it in on a new phone', `${ENTRIES} new`, () => restore({}, stores)),
      row('Taking it in where half is there', `${ENTRIES / 2} new`, () =>
        restore({ log: half }, stores),
      ),
      row('Taking it in a second time', 'nothing new', () => restore({ log }, stores)),
    ],
  };
}
