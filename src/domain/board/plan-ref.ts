import { sessionsFor } from '../advice/situation.ts';
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

const known = new WeakMap<Programme, Map<string, readonly PlanRef[]>>();

/** The sessions of each group and week are measured once for a programme. */
function plansOf(programme: Programme, week: number, group: string): readonly PlanRef[] {
  let all = known.get(programme);
  if (all === undefined) {
    all = new Map();
    known.set(programme, all);
  }
  const key = `${week} ${group}`;
  const found = all.get(key);
  if (found !== undefined) return found;
  const made = sessionsFor(programme.weeks[week - 1], group).map(({ text, plan }) => ({
    text,
    seconds: planLength(plan) / 1000,
  }));
  all.set(key, made);
  return made;
}

/** What a session was of, where the programme has it. */
export const planRef = (programme: Programme, { group, week, session }: Place) =>
  plansOf(programme, week, group)[session - 1];
