import { parseArgs } from 'node:util';
import { TALK_LEVELS, type Talk } from '../domain/cues/cue.ts';
import { fail, ok, type Result } from '../domain/result.ts';

/** What the command prints when its words are off, or with `--help`. */
export const USAGE = `npm run --silent track -- FILE --week 1 --group wren --out DIR
  [--session 1] [--cues few|usual|many]

Writes one session of a programme file as sound (.mp3) and captions (.vtt) into DIR, for any
player. Weeks and sessions count from 1. Prints what was written as one line of JSON.`;

/** What is to be made, as far as the command line alone can tell. */
export interface Order {
  readonly file: string;
  readonly week: number;
  readonly group: string;
  readonly session: number;
  readonly talk: Talk;
  readonly out: string;
}

const OPTIONS = {
  week: { type: 'string' },
  group: { type: 'string' },
  session: { type: 'string', default: '1' },
  cues: { type: 'string', default: 'usual' },
  out: { type: 'string' },
  help: { type: 'boolean', default: false },
} as const;

/** Read a command line's arguments; the error is a sentence. */
export function readOrder(args: readonly string[]): Result<Order | 'help', string> {
  const parsed = parse(args);
  if (!parsed.ok) return parsed;
  const { values, positionals } = parsed.value;
  if (values.help) return ok('help');
  const [file, more] = positionals;
  if (file === undefined || file === '') return fail('Give a programme file.');
  if (more !== undefined) return fail(`Give one programme file; "${more}" is one too many.`);
  const { group, out, cues } = values;
  if (values.week === undefined) return fail('Say which week: --week 1');
  const week = countOf(values.week);
  if (week === undefined) return fail(`--week is a number from 1, not "${values.week}".`);
  if (!group) return fail('Say which group, by its id: --group wren');
  const session = countOf(values.session);
  if (session === undefined) return fail(`--session is a number from 1, not "${values.session}".`);
  const talk = TALK_LEVELS.find((level) => level === cues);
  if (talk === undefined) return fail(`--cues is few, usual or many, not "${cues}".`);
  if (!out) return fail('Say which folder to write into: --out DIR');
  return ok({ file, week, group, session, talk, out });
}

const parse = (args: readonly string[]) => {
  try {
    return ok(parseArgs({ args: [...args], options: OPTIONS, allowPositionals: true }));
  } catch (error) {
    return fail(complaintOf(error));
  }
};

/** Node's own words for an unknown option, or one without its value, up to the first full stop. */
function complaintOf(error: unknown): string {
  const said = error instanceof Error ? error.message : '';
  return `${/^[^.\n]+/.exec(said)?.[0] ?? 'The options cannot be read'}.`;
}

const countOf = (text: string): number | undefined =>
  /^[1-9]\d{0,3}$/.test(text) ? Number(text) : undefined;
