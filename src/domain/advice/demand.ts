import type { Activity, Plan } from '../programme/plan.ts';
import { isRunning } from '../programme/plan.ts';
import type { Group, Programme, Week } from '../programme/programme.ts';
import { factsOf, longestStretch } from '../review/facts.ts';
import { sessionsIn } from '../review/outline.ts';
import { type Ms, ms, type Percent } from '../units.ts';
import { rule } from './rules.ts';

/** The most that some sessions ask for. */
export interface Ask {
  /** Longest running with no walk in it. */
  readonly run: Ms;
  /** Longest brisk walking or running with no easier walk in it. */
  readonly brisk: Ms;
  /** Longest whole session. */
  readonly feet: Ms;
  /** Running in percent of the main set, where it is most. */
  readonly share: number;
  readonly hardest: Percent;
  /** Milliseconds of a main set times their effort. */
  readonly work: number;
}

/** Where a group's last weeks lead: walking, walking and running in turn, running on. */
export const ARRIVALS = ['walk', 'mix', 'run'] as const;
/** Where a group leads by its sessions: walking, both in turn, or running on. */
export type Arrival = (typeof ARRIVALS)[number];

/** What a group asks of a person, at first and in the end. */
export interface Demand {
  readonly group: Group;
  /** Of each of the first weeks that have sessions. */
  readonly weeks: readonly Ask[];
  readonly first: Ask;
  readonly last: Ask;
  readonly arrives: Arrival;
}

const NOTHING: Ask = { run: ms(0), brisk: ms(0), feet: ms(0), share: 0, hardest: 0, work: 0 };

const isBrisk = (activity: Activity): boolean => activity === 'brisk walk' || isRunning(activity);

function askOfPlan(plan: Plan): Ask {
  const { stretch, total, mainRun, main, hardest, work } = factsOf(plan);
  return {
    run: stretch,
    brisk: longestStretch(plan, isBrisk),
    feet: total,
    share: main === 0 ? 0 : (mainRun * 100) / main,
    hardest,
    work,
  };
}

/** The larger of each measure. */
const most = (a: Ask, b: Ask): Ask => ({
  run: ms(Math.max(a.run, b.run)),
  brisk: ms(Math.max(a.brisk, b.brisk)),
  feet: ms(Math.max(a.feet, b.feet)),
  share: Math.max(a.share, b.share),
  hardest: Math.max(a.hardest, b.hardest),
  work: Math.max(a.work, b.work),
});

/** What a week asks of a group at most; nothing in it, nothing asked. */
export const askOf = (week: Week, group: string): Ask =>
  sessionsIn(week, group)
    .map(({ plan }) => askOfPlan(plan))
    .reduce(most, NOTHING);

function arrivalOf({ run, share }: Ask): Arrival {
  if (run === 0) return 'walk';
  return run >= rule('continuous') * 1000 || share >= rule('nearlyAll') ? 'run' : 'mix';
}

/** What a group's first and last weeks ask for. Weeks in which it has no session are left out. */
export function demandOf({ weeks }: Pick<Programme, 'weeks'>, group: Group): Demand {
  const asks = weeks
    .filter((week) => sessionsIn(week, group.id).length > 0)
    .map((week) => askOf(week, group.id));
  const first = asks.slice(0, rule('firstWeeks'));
  const last = asks.slice(-rule('lastWeeks')).reduce(most, NOTHING);
  return {
    group,
    weeks: first,
    first: first.reduce(most, NOTHING),
    last,
    arrives: arrivalOf(last),
  };
}

/** By the longest first run, then how much of it is running, the work, the walking, the end. */
const measures = ({ first, last }: Demand): readonly number[] => [
  first.run,
  first.share,
  first.work,
  first.brisk,
  first.feet,
  last.run,
  last.work,
];

function byDemand(a: Demand, b: Demand): number {
  const [own, other] = [measures(a), measures(b)];
  const n = own.findIndex((value, i) => value !== other[i]);
  return n < 0 ? 0 : (own[n] ?? 0) - (other[n] ?? 0);
}

/**
 * The groups from the gentlest to the most demanding, by what their sessions ask for and never by
 * name or place; groups that ask for the same stay in the leader's order.
 */
export const ranked = (programme: Pick<Programme, 'groups' | 'weeks'>): readonly Demand[] =>
  programme.groups.map((group) => demandOf(programme, group)).sort(byDemand);
