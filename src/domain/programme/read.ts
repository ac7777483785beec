import * as v from 'valibot';
import type { Result } from '../result.ts';
import { fail, ok } from '../result.ts';
import { crossCheck } from './cross.ts';
import type { PathStep } from './path.ts';
import { pathText } from './path.ts';
import type { Detail, ProgrammeCode, ProgrammeProblem } from './problem.ts';
import { PROGRAMME_CODES } from './problem.ts';
import type { Programme, Week } from './programme.ts';
import { PROGRAMME_MAX_BYTES } from './programme.ts';
import { readSessions } from './sessions.ts';
import type { ProgrammeInput } from './shape.ts';
import { ProgrammeShape } from './shape.ts';

/** The format that this version writes; it reads this one. */
export const PROGRAMME_FORMAT = 'towpath-programme/1';
/** More would bury the first: a file with one wrong habit has it everywhere. */
const PROBLEMS_SHOWN = 50;

/** Bytes of a text in UTF-8 (RFC 3629), without the platform's encoder. */
function utf8Length(text: string): number {
  let bytes = 0;
  for (const letter of text) {
    const code = letter.codePointAt(0) ?? 0;
    bytes += code < 0x80 ? 1 : code < 0x800 ? 2 : code < 0x10000 ? 3 : 4;
  }
  return bytes;
}

const one = (code: ProgrammeCode, detail?: Detail): readonly ProgrammeProblem[] => [
  { code, path: '', ...(detail ? { detail } : {}) },
];

/** The file as JSON of the right format, before its shape is looked at. */
function open(text: string): Result<object, readonly ProgrammeProblem[]> {
  const limit = PROGRAMME_MAX_BYTES;
  if (text.length > limit || utf8Length(text) > limit)
    return fail(one('file-large', { limitKiB: limit / 1024 }));
  if (text.trim() === '') return fail(one('file-empty'));
  let json: unknown;
  try {
    json = JSON.parse(text.replace(/^\ufeff/, ''));
  } catch {
    return fail(one('file-json'));
  }
  if (typeof json !== 'object' || json === null || Array.isArray(json))
    return fail(one('file-other'));
  const format: unknown = Object.hasOwn(json, 'format') ? Reflect.get(json, 'format') : undefined;
  if (format === PROGRAMME_FORMAT) return ok(json);
  const isOurs = typeof format === 'string' && /^towpath-programme\/\d{1,6}$/.test(format);
  return fail(one(isOurs ? 'file-version' : 'file-other'));
}

const isCode = (code: string): code is ProgrammeCode =>
  (PROGRAMME_CODES as readonly string[]).includes(code);

/** Messages in shape.ts are codes, with what the sentence needs behind bars. */
function problemOf(issue: v.BaseIssue<unknown>): ProgrammeProblem {
  const path = pathText(
    (issue.path ?? []).map((item): PathStep => {
      const key: unknown = 'key' in item ? item.key : '';
      return typeof key === 'number' ? key : String(key);
    }),
  );
  if (issue.received === 'undefined') return { code: 'missing', path };
  const [code = '', first = '', last] = issue.message.split('|');
  if (!isCode(code) || code === 'type') return { code: 'type', path, detail: { expected: first } };
  if (last !== undefined) return { code, path, detail: { min: Number(first), max: Number(last) } };
  return { code, path, ...(first === '' ? {} : { detail: { limit: Number(first) } }) };
}

function weeksOf(input: ProgrammeInput, problems: ProgrammeProblem[]): readonly Week[] {
  return input.weeks.map(({ focus, effort, timesPerWeek, sessions, together }, n) => ({
    focus,
    effort,
    timesPerWeek,
    sessions: readSessions(sessions, input.groups, ['weeks', n, 'sessions'], problems),
    ...(together === undefined ? {} : { together }),
  }));
}

/**
 * Read a programme file (`towpath-programme/1`, JSON). Size is checked before parsing, then shape,
 * then what the parts say of one another, then every plan. Unknown keys are ignored; `text` keeps
 * the file exactly, so that a signature over it stays valid. Problems carry the path in the file
 * and, for plans, the place in the plan.
 */
export function readProgramme(text: string): Result<Programme, readonly ProgrammeProblem[]> {
  const opened = open(text);
  if (!opened.ok) return opened;
  const shaped = v.safeParse(ProgrammeShape, opened.value);
  if (!shaped.success) return fail(shaped.issues.map(problemOf).slice(0, PROBLEMS_SHOWN));
  const input = shaped.output;
  const problems: ProgrammeProblem[] = [...crossCheck(input)];
  const weeks = weeksOf(input, problems);
  if (problems.length > 0) return fail(problems.slice(0, PROBLEMS_SHOWN));
  const { startDate, goal, change, ...rest } = input;
  return ok({
    ...rest,
    ...(startDate === undefined ? {} : { startDate }),
    goal: {
      name: goal.name,
      distanceM: goal.distanceM,
      ...(goal.date === undefined ? {} : { date: goal.date }),
    },
    ...(change === undefined ? {} : { change }),
    weeks,
    text,
  });
}
