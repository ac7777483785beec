/**
 * What the grammar reads: a rough tree that accepts more than is right. `start` and `end` are
 * offsets in the folded text.
 */
export interface Span {
  readonly start: number;
  readonly end: number;
}

export interface RawMark extends Span {
  readonly mark: ';' | ',' | '+' | '/' | '&' | 'w/' | 'then' | 'and' | 'with' | 'plus';
}

/** Separators in a row. No marks: a new line alone. */
export interface RawMarks extends Span {
  readonly marks: readonly RawMark[];
}

export interface RawWords extends Span {
  readonly words: string;
}

export interface RawAmount extends Span {
  readonly number: string;
  /** As written; empty when there is none. */
  readonly unit: string;
}

export type RawDuration =
  | (Span & { readonly kind: 'clock'; readonly clock: string })
  | (Span & { readonly kind: 'range' })
  | (Span & { readonly kind: 'amounts'; readonly amounts: readonly RawAmount[] });

export type RawExtra =
  | (Span & { readonly kind: 'effort'; readonly effort: string | null })
  | (Span & { readonly kind: 'note'; readonly body: Span; readonly closed: boolean });

export interface RawStep extends Span {
  readonly kind: 'step';
  readonly duration: RawDuration | null;
  readonly words: RawWords | null;
  readonly extras: readonly RawExtra[];
  readonly first: 'duration' | 'words';
}

export interface RawCount extends Span {
  readonly digits: string;
}

export interface RawBracket extends Span {
  readonly kind: 'bracket';
  readonly entries: readonly RawEntry[];
  readonly closed: boolean;
}

/** A third bracket inside two others; what is in it was not read. */
export interface RawDeep extends Span {
  readonly kind: 'deep';
}

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

export type RawItem = (RawStep | RawRepeat | RawTimes) & { readonly separator: RawMarks | null };

export type RawEntry =
  | RawItem
  | (Span & { readonly kind: 'label'; readonly words: RawWords })
  | (RawMarks & { readonly kind: 'separator' });

/** `end` is where the grammar stopped: what follows belongs nowhere. */
export interface RawSession extends Span {
  readonly entries: readonly RawEntry[];
}
