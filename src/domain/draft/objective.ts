/**
 * What makes one draft better than another, in this order:
 *
 * 1. how many groups do not arrive, and then what they miss together at the end (need.ts);
 * 2. `groundCost`: the length of the main set, which all groups share, grows evenly and can be
 *    divided into sets in several ways;
 * 3. `firstCost`, `stepCost`, `asideCost` and `lightCost`, over all weeks and groups: running rises
 *    by even steps, few numbers change at once, and all of it is easy to say.
 *
 * Costs are numbers of our own making; squares are of half minutes. No source: they say what
 * reads well to a leader, while what is allowed at all stands in bounds.ts.
 */
import { BOUNDS, type Half } from './bounds.ts';
import type { Form, Option } from './option.ts';

/** What each fault of a draft costs. Only how they compare means anything. */
export const WEIGHTS = {
  /** The longest main set is shorter than somebody needs, or longer than anybody does. */
  groundShort: 1000,
  groundOver: 50,
  /** A pinned session is shorter than the week before, so that nobody goes on in its week. */
  groundAside: 400,
  /** The first main set is not about 20 min. */
  groundFirst: 1,
  groundRise: 1,
  /** By in how many ways a main set divides into sets: none, one, two ... */
  groundWays: [300, 80, 30, 8, 4],
  /** Running rises by this much: evenly, since a square is least when all are equal. */
  rise: 1,
  /** So does the longest stretch, which may also grow by 30 %. */
  stretch: 1 / 4,
  /** The longest stretch is shorter than the week before. */
  shrink: 8,
  /** Nothing changes. */
  same: 12,
  /** Each number that changes besides the first. */
  change: 5,
  /** Half a minute before the others. */
  apart: 6,
  /** Lengths with half a minute in them. */
  odd: 2,
  /** Sets beyond eight: long to count. */
  many: 2,
  /** Half minutes of a walk beyond two minutes. */
  slow: 3,
  /** Stretches of half a minute: over before they begin. */
  tiny: 8,
  /** Each run after a longer one: more to keep in mind than sets. */
  runs: 4,
} as const;

/** About 20 min: a first session that is worth coming for. */
const FIRST_MAIN: Half = 40;
/** In the light week about half of the running stays. */
const LIGHT_HARD = 0.55;
const LIGHT_MAIN = 0.6;

/** In how many numbers of sets a main set can be cut without a rest left over. */
export const waysOf = (main: Half): number => {
  let ways = 0;
  for (let sets: number = BOUNDS.sets.min; sets <= BOUNDS.sets.max; sets += 1)
    if (main % sets === 0 && main / sets > BOUNDS.easy.min) ways += 1;
  return ways;
};

/**
 * The shortest shared main set of at least a length: whole minutes, and for those who need sets one
 * that divides into them in two ways or more.
 */
export function wholeMain(main: Half, needsSets: boolean): Half {
  let whole = Math.max(0, main) + (Math.max(0, main) % 2);
  while (needsSets && waysOf(whole) < 2) whole += 2;
  return whole;
}

/** Cost of a main set in the shared row, after the one before it. */
export function groundCost(main: Half, before: Half | undefined): number {
  const ways = WEIGHTS.groundWays[waysOf(main)] ?? 0;
  return before === undefined
    ? ways + WEIGHTS.groundFirst * (main - FIRST_MAIN) ** 2
    : ways + WEIGHTS.groundRise * (main - before) ** 2;
}

/** Cost of the light week's main set: best at three fifths of the last full one. */
export const groundLightCost = (main: Half, last: Half): number =>
  (WEIGHTS.groundWays[waysOf(main)] ?? 0) +
  WEIGHTS.groundRise * Math.round((main - LIGHT_MAIN * last) ** 2);

const odd = (halves: Half): number => halves % 2;

function formCost(form: Form): number {
  switch (form.kind) {
    case 'sets':
      return (
        WEIGHTS.odd * (odd(form.hard) + odd(form.easy)) +
        WEIGHTS.many * Math.max(0, form.sets - 8) +
        WEIGHTS.slow * Math.max(0, form.easy - 4) +
        (form.hard === 1 ? WEIGHTS.tiny : 0)
      );
    case 'runs':
      return WEIGHTS.runs * form.others + WEIGHTS.odd * (odd(form.first) + odd(form.other));
    case 'on':
      return WEIGHTS.odd * odd(form.hard);
    case 'pinned':
      return 0;
  }
}

/** Cost of a main set by itself, among others that end at `main`. */
export const firstCost = (option: Option, main: Half): number =>
  formCost(option.form) + WEIGHTS.apart * (main - option.main);

/** How many numbers are other than the week before; another form counts as three. */
export function changesOf(before: Form, now: Form): number {
  if (before.kind === 'sets' && now.kind === 'sets')
    return (
      Number(before.sets !== now.sets) +
      Number(before.hard !== now.hard) +
      Number(before.easy !== now.easy)
    );
  if (before.kind === 'runs' && now.kind === 'runs')
    return (
      Number(before.first !== now.first) +
      Number(before.easy !== now.easy) +
      (before.others === now.others ? Number(before.other !== now.other) : 2)
    );
  return before.kind === 'on' && now.kind === 'on' ? Number(before.hard !== now.hard) : 3;
}

const changeCost = (before: Form, now: Form): number =>
  before.kind === 'pinned' || now.kind === 'pinned'
    ? 0
    : WEIGHTS.change * Math.max(0, changesOf(before, now) - 1);

/** The part of `stepCost` that the rise of running makes. */
export const riseCost = (before: Option, now: Option): number =>
  WEIGHTS.rise * (now.hard - before.hard) ** 2;

/** Cost of going from one week to the next. */
export const stepCost = (before: Option, now: Option): number =>
  riseCost(before, now) +
  WEIGHTS.stretch * Math.max(0, now.stretch - before.stretch) ** 2 +
  WEIGHTS.shrink * Math.max(0, before.stretch - now.stretch) +
  (changesOf(before.form, now.form) === 0 ? WEIGHTS.same : 0) +
  changeCost(before.form, now.form);

const towards = (hard: number, before: Option, now: Option): number =>
  WEIGHTS.rise * Math.round((now.hard - hard) ** 2) + changeCost(before.form, now.form);

/** Cost of the week of the event after the last full week. */
export const lightCost = (before: Option, now: Option): number =>
  towards(LIGHT_HARD * before.hard, before, now);

/** Cost of a week that a pinned session makes shorter than the one before: as hard as it was. */
export const asideCost = (before: Option, now: Option): number =>
  towards((before.hard * now.main) / Math.max(1, before.main), before, now);
