/** Place in a text: line and column from 1, offset and length in UTF-16 units. */
export interface Place {
  readonly line: number;
  readonly column: number;
  readonly offset: number;
  readonly length: number;
}

/** Why a plan's text is not a plan. `src/copy/plan.ts` turns the code into a sentence. */
export interface PlanProblem {
  readonly code: string;
  readonly place: Place;
  readonly found: string;
  /** What the sentence needs besides: suggestions, readings, limits. */
  readonly detail?: Readonly<Record<string, string | number>>;
}

/** Why a file is not a programme: `path` such as `weeks[1].sessions.wren`. */
export interface ProgrammeProblem {
  readonly code: string;
  readonly path: string;
  readonly detail?: Readonly<Record<string, string | number>>;
  readonly plan?: PlanProblem;
}
