import { isDeeper } from '../exchange/depth.ts';
import { isPlainObject, jsonIn, ownValue } from '../exchange/own.ts';
import { fail, ok, type Result } from '../result.ts';
import type { Attendance } from './attendance.ts';
import type { Heard } from './heard.ts';
import type { BoardSetup } from './setup.ts';
import { asAttendance, asHeard, asSetup } from './shapes.ts';

/** Everything that is kept of people who told, of any number of programmes. */
export interface AllBoards {
  readonly heard: readonly Heard[];
  readonly days: readonly Attendance[];
  readonly setups: readonly BoardSetup[];
}

/** The format of what is inside a locked file. */
export const BOARDS_FORMAT = 'towpath-boards/1';

/**
 * Boards as what is then locked: JSON, every record as it is kept.
 *
 * @param at UTC milliseconds at which it is made
 */
export const writeBoards = ({ heard, days, setups }: AllBoards, at: number): string =>
  JSON.stringify({ format: BOARDS_FORMAT, madeAt: at, heard, days, setups });

/** What was in such a file. */
export interface OpenedBoards extends AllBoards {
  /** Records that cannot be right, or are of a newer version. */
  readonly refused: number;
}

/** Records by their key, each once: a file made by hand may have two. */
function sound<T>(
  list: unknown,
  read: (value: unknown) => T | undefined,
  keyOf: (value: T) => string,
): { readonly records: readonly T[]; readonly refused: number } {
  if (!Array.isArray(list)) return { records: [], refused: list === undefined ? 0 : 1 };
  const records = new Map<string, T>();
  for (const each of list) {
    const value = read(each);
    if (value !== undefined) records.set(keyOf(value), value);
  }
  return { records: [...records.values()], refused: list.length - records.size };
}

/** Reads what was locked: every record through every bound, as if anybody could have made it. */
export function readBoards(text: string): Result<OpenedBoards, 'damaged' | 'newer'> {
  const json = isDeeper(text) ? undefined : jsonIn(text);
  if (!isPlainObject(json)) return fail('damaged');
  const format = ownValue(json, 'format');
  if (typeof format !== 'string') return fail('damaged');
  if (format !== BOARDS_FORMAT)
    return fail(/^towpath-boards\/\d+$/.test(format) ? 'newer' : 'damaged');
  const heard = sound(ownValue(json, 'heard'), asHeard, ({ key }) => key);
  const days = sound(ownValue(json, 'days'), asAttendance, ({ key }) => key);
  const setups = sound(ownValue(json, 'setups'), asSetup, ({ programmeId }) => programmeId);
  return ok({
    heard: heard.records,
    days: days.records,
    setups: setups.records,
    refused: heard.refused + days.refused + setups.refused,
  });
}
