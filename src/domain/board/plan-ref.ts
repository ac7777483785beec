import { enoughOf, sessionsFor } from '../advice/situation.ts';
import type { Programme } from '../programme/programme.ts';
import { planLength } from '../programme/totals.ts';

/** A session of a programme: its text and its length in whole seconds. */
export interface PlanRef {
  readonly text: string;
  readonly seconds: number;
}

interface Place {
  readonly group: string;
  /** Both from 1. */
  readonly week: number;
  readonly session: number;
}

/** By group, week from 1 and session. */
type Plans = ReadonlyMap<string, readonly (readonly PlanRef[])[]>;

const known = new WeakMap<Programme, Plans>();

/** The sessions of a programme, measured once. */
export function plansOf(programme: Programme): Plans {
  const found = known.get(programme);
  if (found !== undefined) return found;
  const refs = (group: string): readonly (readonly PlanRef[])[] =>
    programme.weeks.map((week) =>
      sessionsFor(week, group).map(({ text, plan }) => ({
        text,
        seconds: planLength(plan) / 1000,
      })),
    );
  const made = new Map(programme.groups.map(({ id }) => [id, refs(id)]));
  known.set(programme, made);
  return made;
}

/** What a session was of, where the programme has it. */
export const planRef = (plans: Plans, { group, week, session }: Place): PlanRef | undefined =>
  plans.get(group)?.[week - 1]?.[session - 1];

const least = new WeakMap<Programme, Map<string, readonly number[]>>();

/** Sessions that make each week a done one for a group, week 1 first; asked once for a programme. */
export function enoughBy(programme: Programme, group: string): readonly number[] {
  const all = least.get(programme) ?? new Map<string, readonly number[]>();
  least.set(programme, all);
  const found = all.get(group);
  if (found !== undefined) return found;
  const made = programme.weeks.map((week) => enoughOf(week, group));
  all.set(group, made);
  return made;
}
