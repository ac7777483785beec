import type { Arrival, Ask, Demand } from './demand.ts';
import { rule } from './rules.ts';

/** Plain choices, as the fewest minutes of each: none, a minute, two, five, ... or more. */
export const WALK_CHOICES = [0, 5, 10, 20, 30, 45] as const;
/** The same for running. */
export const RUN_CHOICES = [0, 1, 2, 5, 10, 20, 30] as const;

/** What a person says of today. Nothing of it is kept. */
export interface Answers {
  /** Longest brisk walk without stopping, in minutes. */
  readonly walk: number;
  /** Longest run without stopping, in minutes, however slow. */
  readonly run: number;
  /** What they would like to be able to do; `any` when they do not mind. */
  readonly wish: Arrival | 'any';
  /** There is something that should make them start gently. What it is, is not asked. */
  readonly gently: boolean;
}

/** What a group asks for at first that is more than the person said, in ms or percent of effort. */
export interface Short {
  readonly what: 'run' | 'first-runs' | 'walk' | 'feet' | 'hard';
  readonly asks: number;
  readonly able: number;
}

/** What a person can do at first, in milliseconds. */
export interface Able {
  readonly run: number;
  readonly firstRun: number;
  readonly brisk: number;
  readonly feet: number;
  readonly gently: boolean;
}

const MINUTE = 60_000;
/** A day: nobody is asked for more, and sums stay finite. */
const MOST_MINUTES = 1440;

const minutesOf = (answer: number): number =>
  Number.isNaN(answer) ? 0 : Math.min(MOST_MINUTES, Math.max(0, answer));

/** What the first weeks may ask of a person, from their answers; odd numbers are taken as near ones. */
export function ableOf({ walk, run, gently }: Answers): Able {
  const share = gently ? rule('gentleShare') / 100 : 1;
  const running = minutesOf(run) * MINUTE * share;
  const whole = Math.max(minutesOf(walk), minutesOf(run) * rule('walkPerRun')) * MINUTE;
  const brisk = whole * share;
  const mayTry = !gently && brisk >= rule('firstRunWalk') * 1000;
  return {
    run: running,
    firstRun: mayTry ? rule('firstRun') * 1000 : 0,
    brisk,
    // Easy walking is gentle already: it is not halved.
    feet: whole * rule('feetPerWalk'),
    gently,
  };
}

const grownRun = (able: number, gently: boolean): number =>
  Math.max(
    (able * (100 + rule('runLonger'))) / 100,
    gently ? 0 : able + rule('runLongerFloor') * 1000,
  );

const grownFeet = (able: number, gently: boolean): number =>
  Math.max(
    (able * (100 + rule('feetLonger'))) / 100,
    gently ? 0 : able + rule('feetLongerFloor') * 1000,
  );

/** What one of the first weeks (from 0) asks for that is more than a person can do, if anything. */
function shortIn(ask: Ask, week: number, able: Able): Short | undefined {
  const run = (base: number) => (week === 0 ? base : grownRun(base, able.gently));
  const feet = (base: number) => (week === 0 ? base : grownFeet(base, able.gently));
  if (ask.run > run(Math.max(able.run, able.firstRun)))
    return { what: 'run', asks: ask.run, able: able.run };
  if (ask.run > run(able.run) && ask.share > rule('firstRunShare'))
    return { what: 'first-runs', asks: ask.share, able: rule('firstRunShare') };
  if (ask.brisk > feet(able.brisk)) return { what: 'walk', asks: ask.brisk, able: able.brisk };
  if (ask.feet > feet(able.feet)) return { what: 'feet', asks: ask.feet, able: able.feet };
  if (able.gently && ask.hardest >= rule('gentleBelow') * 10)
    return { what: 'hard', asks: ask.hardest, able: rule('gentleBelow') * 10 };
  return undefined;
}

/** The first thing in a group's first weeks that is more than a person can do, if anything. */
export function shortOf({ weeks }: Demand, able: Able): Short | undefined {
  for (const [n, ask] of weeks.entries()) {
    const short = shortIn(ask, n, able);
    if (short !== undefined) return short;
  }
  return undefined;
}
