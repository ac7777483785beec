/**
 * What the grammar reads: a rough tree that accepts more than is right. `start` and `end` are
 * offsets in the folded text.
 */
export interface Span {
  readonly start: number;
  readonly end: number;
}

/** One separator, or a word that stands for one. */
export interface RawMark extends Span {
  readonly mark: ';' | ',' | '+' | '/' | '&' | 'w/' | 'then' | 'and' | 'with' | 'plus';
}

/** Separators in a row. No marks: a new line alone. */
export interface RawMarks extends Span {
  readonly marks: readonly RawMark[];
}

/** Words that should name an activity or a part. */
export interface RawWords extends Span {
  readonly words: string;
}

/** A number with its unit. */
export interface RawAmount extends Span {
  readonly number: string;
  /** As written; empty when there is none. */
  readonly unit: string;
}

/** A time as it is written: `1:30`, `2-3 min` or `1 min 30 s`. */
export type RawDuration =
  | (Span & { readonly kind: 'clock'; readonly clock: string })
  | (Span & { readonly kind: 'range' })
  | (Span & { readonly kind: 'amounts'; readonly amounts: readonly RawAmount[] });

/** What may stand behind a step; the effort is null where nothing follows the @. */
export type RawExtra =
  | (Span & { readonly kind: 'effort'; readonly effort: string | null })
  | (Span & { readonly kind: 'note'; readonly body: Span; readonly closed: boolean });

/** A time and an activity, in whichever order; either may be missing. */
export interface RawStep extends Span {
  readonly kind: 'step';
  readonly duration: RawDuration | null;
  readonly words: RawWords | null;
  readonly extras: readonly RawExtra[];
  readonly first: 'duration' | 'words';
}

/** How many times. */
export interface RawCount extends Span {
  readonly digits: string;
}

/** What stands in brackets. */
export interface RawBracket extends Span {
  readonly kind: 'bracket';
  readonly entries: readonly RawEntry[];
  readonly closed: boolean;
}

/** A third bracket inside two others; what is in it was not read. */
export interface RawDeep extends Span {
  readonly kind: 'deep';
}

/** Something with how many times before it. */
export interface RawRepeat extends Span {
  readonly kind: 'repeat';
  /** `2 x 3 x ...` has two. None: a bracket that does not say how many times. */
  readonly counts: readonly RawCount[];
  readonly unit: RawBracket | RawDeep | RawStep | null;
}

/** `x 6` behind something that is not a bracket. */
export interface RawTimes extends Span {
  readonly kind: 'times';
  readonly count: RawCount;
}

/** A step or a repeat, with what divides it from the one before. */
export type RawItem = (RawStep | RawRepeat | RawTimes) & { readonly separator: RawMarks | null };

/** Anything that stands in a session. */
export type RawEntry =
  | RawItem
  | (Span & { readonly kind: 'label'; readonly words: RawWords })
  | (RawMarks & { readonly kind: 'separator' });

/** `end` is where the grammar stopped: what follows belongs nowhere. */
export interface RawSession extends Span {
  readonly entries: readonly RawEntry[];
}
