import type { Group } from '../programme/programme.ts';
import type { Ms, Percent } from '../units.ts';
import type { CellPlace, Sheet } from './sheet.ts';

/** How a copied session grows from one place to the next; applied once more at each place. */
export type StepUp =
  | { readonly kind: 'same' }
  /** The hardest steps inside the sets last longer (or shorter, below 0). */
  | { readonly kind: 'hard'; readonly by: Ms }
  /** The other steps inside the sets. */
  | { readonly kind: 'easy'; readonly by: Ms }
  | { readonly kind: 'sets'; readonly by: number };

/** Everything that a leader can do to a sheet; each can be undone. Weeks count from 0. */
export type Edit =
  | { readonly kind: 'title'; readonly title: string }
  | { readonly kind: 'leader'; readonly leader: string }
  | { readonly kind: 'goal'; readonly name?: string; readonly distanceM?: number }
  /** `''` takes the date away. */
  | { readonly kind: 'goal-date'; readonly date: string }
  | { readonly kind: 'start-date'; readonly date: string }
  | { readonly kind: 'reminders'; readonly reminders: readonly string[] }
  | { readonly kind: 'cell'; readonly at: CellPlace; readonly text: string }
  /** Rewrites the text of a cell in the usual form. */
  | { readonly kind: 'tidy'; readonly at: CellPlace }
  | { readonly kind: 'pin'; readonly at: CellPlace; readonly pinned: boolean }
  /** One more session in this week for this group, a copy of its last. */
  | { readonly kind: 'add-session'; readonly week: number; readonly group: string }
  | { readonly kind: 'remove-session'; readonly at: CellPlace }
  /** Copies a cell to the later weeks of its group, or to the groups behind its own in its week. */
  | {
      readonly kind: 'fill';
      readonly from: CellPlace;
      readonly along: 'weeks' | 'groups';
      /** How many places; all that follow when left out. Pinned cells are left alone. */
      readonly count?: number;
      readonly step: StepUp;
    }
  | { readonly kind: 'focus'; readonly week: number; readonly focus: string }
  | { readonly kind: 'effort'; readonly week: number; readonly effort: Percent }
  | { readonly kind: 'times'; readonly week: number; readonly min: number; readonly max: number }
  /** Session from 1; 0: none is done together. */
  | { readonly kind: 'together'; readonly week: number; readonly session: number }
  /** A week at this place, a copy of the one before it (or behind it, at 0). */
  | { readonly kind: 'add-week'; readonly at: number }
  | { readonly kind: 'remove-week'; readonly week: number }
  | { readonly kind: 'move-week'; readonly from: number; readonly to: number }
  | { readonly kind: 'add-group'; readonly name: string; readonly for: string }
  | {
      readonly kind: 'group';
      readonly id: string;
      readonly change: Partial<Pick<Group, 'name' | 'for'>>;
    }
  | { readonly kind: 'remove-group'; readonly id: string }
  | { readonly kind: 'move-group'; readonly id: string; readonly to: number }
  /** Everything at once: a draft that was taken over. */
  | { readonly kind: 'replace'; readonly sheet: Sheet };
