import { fail, ok, type Result } from '../result.ts';
import { BACKUP_FORMAT, checkOf, type Row, type Stores } from './backup.ts';
import { isDeeper } from './depth.ts';
import { LOG_EXPORT_FORMAT } from './log-export.ts';
import { LOG_COLUMNS } from './log-table.ts';
import { isPlainObject, jsonIn, ownValue } from './own.ts';

/** Longest file that is read, in characters: ten times what 3,000 sessions and a full shelf take. */
export const BACKUP_MAX = 64 * 1024 * 1024;
/** Objects and lists inside one another: a record needs eleven. */
const DEPTH = 64;

/** Why nothing can be taken from a file, most of them by saying what it is instead. */
export const BACKUP_CODES = [
  'calendar',
  'damaged',
  'empty',
  'foreign',
  'keys',
  'programme',
  'table',
  'too-large',
] as const;
/** Why a file is no backup that can be taken in. */
export type BackupCode = (typeof BACKUP_CODES)[number];

/** A file that can be restored from, as far as it can be read. */
export interface OpenedBackup {
  /** `log`: the log as JSON, which holds nothing else. */
  readonly kind: 'backup' | 'log';
  readonly stores: Stores;
  /** UTC milliseconds. */
  readonly madeAt?: number;
  /** Written by a later version: what this one does not know of is left. */
  readonly newer: boolean;
  /** `cut`: it ends too early, its whole records were read; `changed`: not as it was written. */
  readonly damage: 'none' | 'cut' | 'changed';
}

const isRow = (value: unknown): value is Row =>
  Array.isArray(value) && value.length === 2 && typeof value[0] === 'string';

/** What a text is that is no backup. */
function otherKind(text: string, format: unknown): BackupCode {
  const start = text.trimStart();
  if (/^BEGIN:VCALENDAR/i.test(start)) return 'calendar';
  if (start.startsWith(LOG_COLUMNS.slice(0, 3).join(','))) return 'table';
  if (typeof format !== 'string') return 'foreign';
  if (format.startsWith('towpath-programme/')) return 'programme';
  return format.startsWith('towpath-keys/') ? 'keys' : 'foreign';
}

/** Records that stand whole on their lines, of a text that JSON cannot be read from. */
function salvage(text: string): Stores | undefined {
  const stores = new Map<string, Row[]>();
  let rows: Row[] | undefined;
  let isInside = false;
  for (const line of text.split(/\r?\n/)) {
    const name = /^"([^"\\]+)": (\[|\{)$/.exec(line);
    if (name?.[2] === '{') isInside ||= name[1] === 'stores';
    else if (name !== null && isInside) {
      rows = stores.get(name[1] ?? '') ?? [];
      stores.set(name[1] ?? '', rows);
    } else if (rows !== undefined && line.startsWith('[')) {
      const row = isDeeper(line, DEPTH) ? undefined : jsonIn(line.replace(/,$/, ''));
      if (isRow(row)) rows.push(row);
    }
  }
  return [...stores.values()].some(({ length }) => length > 0)
    ? Object.fromEntries(stores)
    : undefined;
}

const timeIn = (file: object): { readonly madeAt?: number } => {
  const madeAt = ownValue(file, 'madeAt');
  return typeof madeAt === 'number' && Number.isFinite(madeAt) ? { madeAt } : {};
};

function storesOf(file: object): Stores {
  const stores = ownValue(file, 'stores');
  if (!isPlainObject(stores)) return {};
  return Object.fromEntries(
    Object.entries(stores).map(([name, rows]) => [
      name,
      Array.isArray(rows) ? rows.filter(isRow) : [],
    ]),
  );
}

/** Entries of a log as rows; what has no id cannot be told from others. */
function rowsOfLog(file: object): Stores {
  const entries = ownValue(file, 'entries');
  const list: readonly unknown[] = Array.isArray(entries) ? entries : [];
  return {
    log: list.flatMap((entry): Row[] => {
      const id = isPlainObject(entry) ? ownValue(entry, 'id') : undefined;
      return typeof id === 'string' ? [[id, entry]] : [];
    }),
  };
}

function openedOf(file: object, text: string): Result<OpenedBackup, BackupCode> {
  const format = ownValue(file, 'format');
  const [family, version] = typeof format === 'string' ? format.split('/') : [];
  const isNewer = (known: string): boolean => Number(version) > Number(known.split('/')[1]);
  if (family === LOG_EXPORT_FORMAT.split('/')[0])
    return ok({
      kind: 'log',
      stores: rowsOfLog(file),
      ...timeIn(file),
      newer: isNewer(LOG_EXPORT_FORMAT),
      damage: 'none',
    });
  if (family !== BACKUP_FORMAT.split('/')[0]) return fail(otherKind(text, format));
  const stores = storesOf(file);
  const newer = isNewer(BACKUP_FORMAT);
  // A later version may count its check in another way.
  const isWhole = newer || ownValue(file, 'check') === checkOf(stores);
  return ok({
    kind: 'backup',
    stores,
    ...timeIn(file),
    newer,
    damage: isWhole ? 'none' : 'changed',
  });
}

/**
 * A backup, or the log as JSON, from a file's text; or what the file is instead. What was cut off
 * gives the records that are whole. Looks at no record: `restore` does. Never throws.
 */
export function readBackup(given: string): Result<OpenedBackup, BackupCode> {
  if (given.length > BACKUP_MAX) return fail('too-large');
  const text = given.replace(/^\ufeff/, '');
  if (text.trim() === '') return fail('empty');
  const file = isDeeper(text, DEPTH) ? undefined : jsonIn(text);
  if (isPlainObject(file)) return openedOf(file, text);
  if (!text.includes(`"${BACKUP_FORMAT.split('/')[0]}/`)) return fail(otherKind(text, undefined));
  const stores = salvage(text);
  if (stores === undefined) return fail('damaged');
  const [, madeAt] = /^"madeAt": (\d+),$/m.exec(text) ?? [];
  return ok({
    kind: 'backup',
    stores,
    ...(madeAt === undefined ? {} : { madeAt: Number(madeAt) }),
    newer: !text.includes(`"${BACKUP_FORMAT}"`),
    damage: 'cut',
  });
}
