import type { Plan } from '../../../domain/programme/plan.ts';
import type { PiecePlace } from '../../../domain/workshop/pieces.ts';
import type { EditResult } from '../../../domain/workshop/plan-edits.ts';

/** What every row of pieces needs of the plan that it is a part of. */
export interface Hand {
  readonly plan: Plan;
  /** Steps and repeats counted from 1, by key. */
  readonly numbers: ReadonlyMap<string, number>;
  /** Key of the piece whose further controls are shown. */
  readonly opened: string;
  readonly open: (key: string) => void;
  /** Takes an edit over, or says why not. `control`: where the focus goes then, on its piece. */
  readonly apply: (result: EditResult, control?: string) => void;
  /** Says why something was not done. */
  readonly refuse: (text: string) => void;
}

/** A place as a key: `main.1.0`. */
export const keyOf = ({ part, path }: PiecePlace): string => [part, ...path].join('.');
