import type { LogEntry } from '../log/entry.ts';
import { harmless, toCsv } from './csv.ts';
import { isoWeekText } from './iso-week.ts';

const two = (n: number): string => String(n).padStart(2, '0');

/** A moment at its place, as ISO 8601: `2027-03-01T09:00:00+01:00`. */
export function momentText(utc: number, offsetMinutes: number): string {
  const local = new Date(utc + offsetMinutes * 60_000).toISOString().slice(0, 19);
  const away = Math.abs(offsetMinutes);
  return `${local}${offsetMinutes < 0 ? '-' : '+'}${two(Math.floor(away / 60))}:${two(away % 60)}`;
}

type Cell = (entry: LogEntry) => string | number | boolean | undefined;

/** In this order for ever; a new column comes last, so that nobody's sums move. */
const COLUMNS: readonly (readonly [name: string, cell: Cell])[] = [
  ['date', (entry) => entry.localDate],
  ['iso_week', (entry) => isoWeekText(entry.localDate)],
  ['started', (entry) => momentText(entry.startedAt, entry.offsetMinutes)],
  ['zone', (entry) => harmless(entry.zone)],
  ['programme', (entry) => harmless(entry.programme.title)],
  ['revision', (entry) => entry.programme.revision],
  ['group', (entry) => harmless(entry.group.name)],
  ['week', (entry) => entry.week],
  ['session', (entry) => entry.session],
  ['how', (entry) => entry.how],
  ['outcome', (entry) => entry.outcome],
  ['done_seconds', (entry) => entry.doneSeconds],
  ['active_seconds', (entry) => entry.activeSeconds],
  ['distance_m', (entry) => entry.distanceM],
  ['target_effort', (entry) => entry.target / 10],
  ['effort', (entry) => entry.feeling.effort],
  ['effort_later', (entry) => entry.feeling.effortLater],
  ['niggle', (entry) => entry.feeling.niggle?.place],
  ['niggle_side', (entry) => entry.feeling.niggle?.side],
  ['niggle_severity', (entry) => entry.feeling.niggle?.severity],
  ['soreness', (entry) => entry.feeling.soreness],
  ['warning_sign', (entry) => entry.feeling.warningSign],
  ['note', (entry) => harmless(entry.feeling.note ?? '')],
  ['plan', (entry) => harmless(entry.plan)],
  ['id', (entry) => harmless(entry.id)],
];

/** Names of the table's columns, in their order. */
export const LOG_COLUMNS: readonly string[] = COLUMNS.map(([name]) => name);

const cellText = (value: ReturnType<Cell>): string => {
  if (value === undefined) return '';
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  return String(value);
};

/** Oldest first; of the same moment by id, so that the same log is the same file. */
export const inOrder = (entries: readonly LogEntry[]): readonly LogEntry[] =>
  [...entries].sort((a, b) => a.startedAt - b.startedAt || (a.id < b.id ? -1 : 1));

/**
 * Spreadsheets take a file without it for one in the letters of the country; whoever reads tables
 * by program knows it (RFC 4180 says nothing, RFC 3629, section 6, allows it).
 */
const BYTE_ORDER_MARK = '\ufeff';

/** The log as a table for a spreadsheet, oldest first, with a byte order mark. Never read back. */
export const logTable = (entries: readonly LogEntry[]): string =>
  BYTE_ORDER_MARK +
  toCsv([
    LOG_COLUMNS,
    ...inOrder(entries).map((entry) => COLUMNS.map(([, cell]) => cellText(cell(entry)))),
  ]);
