import * as v from 'valibot';
import { dayOf } from './dates.ts';
import { firstForbidden } from './unseen.ts';

/** How much a programme may hold. The JSON Schema in `public/` says the same. */
export const LIMITS = {
  groups: 8,
  weeks: 52,
  sessions: 7,
  reminders: 50,
  title: 120,
  name: 80,
  sentence: 200,
  change: 500,
  revision: 1_000_000,
  distanceM: 1_000_000,
} as const;

/** Ids are safe in a file name, a link and a path. */
export const ID = /^[a-z0-9](?:[a-z0-9-]{0,62}[a-z0-9])?$/;
/** Language tags of the common shape: RFC 5646, language and subtags. */
const LANGUAGE = /^[A-Za-z]{2,3}(?:-[A-Za-z0-9]{2,8}){0,3}$/;
/** A public key in base64url: RFC 4648, section 5. */
const KEY = /^[A-Za-z0-9_-]{40,200}$/;

/** Messages are the codes of problems; what a code needs stands behind the bar. */
const text = (limit: number, { empty = false, lines = false } = {}) =>
  v.pipe(
    v.string('type|text'),
    v.check((value) => empty || value.trim() !== '', 'text-empty'),
    v.check((value) => [...value].length <= limit, `text-long|${limit}`),
    v.check((value) => firstForbidden(value, { lines }) === undefined, 'bad-character'),
  );

const matching = (pattern: RegExp, code: string) =>
  v.pipe(v.string('type|text'), v.regex(pattern, code));

const whole = (min: number, max: number) =>
  v.pipe(
    v.number('type|number'),
    v.check(
      (value) => Number.isInteger(value) && value >= min && value <= max,
      `number|${min}|${max}`,
    ),
  );

const amount = (min: number, max: number) =>
  v.pipe(
    v.number('type|number'),
    v.check((value) => value >= min && value <= max, `amount|${min}|${max}`),
  );

const list = <T extends v.GenericSchema>(item: T, min: number, max: number) =>
  v.pipe(
    v.array(item, 'type|list'),
    v.check((value) => value.length >= min && value.length <= max, `list|${min}|${max}`),
  );

const date = v.pipe(
  v.string('type|text'),
  v.check((value) => dayOf(value) !== undefined, 'date'),
);

const key = v.optional(v.nullable(matching(KEY, 'key')), null);

const plans = v.union(
  [v.string('type|plan'), v.array(v.string('type|plan'), 'type|plan')],
  'type|plan',
);

/** A map that keeps its own keys whatever they are called; `sessions` is read by group id later. */
const sessions = v.custom<Readonly<Record<string, unknown>>>(
  (value) => typeof value === 'object' && value !== null && !Array.isArray(value),
  'type|object',
);

/** The sessions of one group in a week: one text, or a list of them. */
export const PlansShape = plans;

/** A programme file. What is between its parts is looked at in `cross.ts`. */
export const ProgrammeShape = v.object(
  {
    id: matching(ID, 'id'),
    revision: whole(1, LIMITS.revision),
    title: text(LIMITS.title),
    language: matching(LANGUAGE, 'language'),
    startDate: v.optional(date),
    goal: v.object(
      {
        name: text(LIMITS.name),
        distanceM: amount(1, LIMITS.distanceM),
        date: v.optional(date),
      },
      'type|object',
    ),
    leader: v.object({ name: text(LIMITS.name), sign: key, seal: key }, 'type|object'),
    groups: list(
      v.object(
        {
          id: matching(ID, 'id'),
          name: text(LIMITS.name),
          for: text(LIMITS.sentence, { empty: true }),
        },
        'type|object',
      ),
      1,
      LIMITS.groups,
    ),
    weeks: list(
      v.object(
        {
          focus: text(LIMITS.sentence, { empty: true }),
          effort: whole(0, 100),
          timesPerWeek: v.object({ min: whole(1, 7), max: whole(1, 7) }, 'type|object'),
          sessions,
          together: v.optional(whole(1, LIMITS.sessions)),
        },
        'type|object',
      ),
      1,
      LIMITS.weeks,
    ),
    reminders: list(text(LIMITS.sentence), 0, LIMITS.reminders),
    change: v.optional(text(LIMITS.change, { empty: true, lines: true })),
  },
  'type|object',
);

/** A programme file of the right shape, its plans still texts. */
export type ProgrammeInput = v.InferOutput<typeof ProgrammeShape>;
