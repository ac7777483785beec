/** Place in a text: line and column from 1, offset and length in UTF-16 units. */
export interface Place {
  readonly line: number;
  readonly column: number;
  readonly offset: number;
  readonly length: number;
}

/** What a sentence needs besides its code, by name. */
export type Detail = Readonly<Record<string, string | number>>;

/** What can be wrong with a plan's text. `src/copy/plan.ts` has a sentence for each. */
export const PLAN_CODES = [
  'bad-character',
  'bad-separator',
  'before-label',
  'bracket-note',
  'bullet',
  'clock-digits',
  'clock-seconds',
  'colon',
  'count-after-step',
  'count-over',
  'count-range',
  'count-zero',
  'decimal',
  'distance',
  'duration-order',
  'duration-over',
  'effort-missing',
  'effort-over',
  'effort-pace',
  'effort-range',
  'effort-twice',
  'effort-unit',
  'effort-unknown',
  'empty',
  'empty-brackets',
  'extra-on-brackets',
  'label-colon',
  'label-empty',
  'label-inside',
  'label-needs-main',
  'label-order',
  'label-twice',
  'label-unknown',
  'leftover',
  'missing-activity',
  'missing-count',
  'missing-duration',
  'missing-repeated',
  'missing-separator',
  'missing-times',
  'missing-unit',
  'needs-brackets',
  'needs-brackets-count',
  'not-a-step',
  'note-empty',
  'note-long',
  'note-open',
  'note-twice',
  'nothing-between',
  'number-word',
  'part-as-activity',
  'range',
  'session-long',
  'slash-outside',
  'step-long',
  'step-short',
  'stray-close',
  'text-long',
  'too-deep',
  'unclosed-bracket',
  'unit-m',
  'unknown-activity',
  'unknown-unit',
] as const;
/** One of these codes. */
export type PlanCode = (typeof PLAN_CODES)[number];

/** Why a plan's text is not a plan. `src/copy/plan.ts` turns the code into a sentence. */
export interface PlanProblem {
  readonly code: PlanCode;
  readonly place: Place;
  /** What stands there, as typed. */
  readonly found: string;
  /** What the sentence needs besides: suggestions, readings, limits. */
  readonly detail?: Detail;
}

/** What can be wrong with a programme file. `src/copy/programme.ts` has a sentence for each. */
export const PROGRAMME_CODES = [
  'amount',
  'bad-character',
  'date',
  'date-order',
  'file-empty',
  'file-json',
  'file-large',
  'file-other',
  'file-version',
  'group-twice',
  'group-unknown',
  'id',
  'key',
  'language',
  'list',
  'missing',
  'monday',
  'number',
  'plan',
  'sessions-missing',
  'text-empty',
  'text-long',
  'times-order',
  'together',
  'type',
] as const;
/** One of these codes. */
export type ProgrammeCode = (typeof PROGRAMME_CODES)[number];

/** Why a file is not a programme: `path` such as `weeks[1].sessions.wren`. */
export interface ProgrammeProblem {
  readonly code: ProgrammeCode;
  readonly path: string;
  readonly detail?: Detail;
  readonly plan?: PlanProblem;
}
