import type { Programme } from '../programme/programme.ts';
import { type Able, type Answers, ableOf, type Short, shortOf } from './able.ts';
import { ARRIVALS, type Arrival, type Ask, type Demand, ranked } from './demand.ts';

/** A group beside the one that is answered: what it asks, and what speaks against it. */
export interface Compared {
  readonly group: string;
  readonly than: 'gentler' | 'harder';
  readonly first: Ask;
  readonly last: Ask;
  readonly arrives: Arrival;
  /** Nothing when it starts within what the person can do. */
  readonly short?: Short;
  /** It leads to more running than they wish for. */
  readonly beyondWish: boolean;
}

/** The group that would suit a person, why, and how the others compare. */
export interface GroupAnswer {
  readonly group: string;
  readonly why: {
    readonly code:
      | 'only'
      /** Starts within what they can do; the next one does not. */
      | 'fits'
      /** The most demanding of all, and it starts within what they can do. */
      | 'most'
      /** Harder ones would fit, but lead further than they wish. */
      | 'wish'
      /** A harder one would fit without starting gently. */
      | 'gently'
      /** None starts within what they can do; this is the gentlest. */
      | 'gentlest';
    readonly first: Ask;
    readonly last: Ask;
    readonly arrives: Arrival;
    /** `gentlest`: what it asks that is more; otherwise what the next harder one asks. */
    readonly short?: Short;
    /** The next harder group. */
    readonly next?: string;
  };
  /** Every other group, in order from the gentlest. */
  readonly others: readonly Compared[];
}

const level = (arrival: Arrival | 'any'): number =>
  arrival === 'any' ? ARRIVALS.length : ARRIVALS.indexOf(arrival);

/** The most that may lie at a group's end; where every group leads further, the least of them. */
const wishLevel = (order: readonly Demand[], wish: Answers['wish']): number =>
  Math.max(level(wish), Math.min(...order.map(({ arrives }) => level(arrives))));

/** The place, in order of demand, of the hardest group that fits; the gentlest when none does. */
function choose(order: readonly Demand[], answers: Answers): { at: number; fits: boolean } {
  const able = ableOf(answers);
  const upTo = wishLevel(order, answers.wish);
  const at = order.findLastIndex(
    (demand) => level(demand.arrives) <= upTo && shortOf(demand, able) === undefined,
  );
  return { at: Math.max(0, at), fits: at >= 0 };
}

function codeOf(
  order: readonly Demand[],
  answers: Answers,
  { at, fits }: { at: number; fits: boolean },
): GroupAnswer['why']['code'] {
  if (order.length === 1) return 'only';
  if (!fits) return 'gentlest';
  if (at === order.length - 1) return 'most';
  if (answers.gently && choose(order, { ...answers, gently: false }).at > at) return 'gently';
  if (choose(order, { ...answers, wish: 'any' }).at > at) return 'wish';
  return 'fits';
}

/**
 * The group that a person may start in, by what the first and the last weeks ask for: the hardest
 * that starts within what they can do and leads no further than they wish; the gentlest when none
 * does. Being able to do more never leads to a gentler group, starting gently never to a harder
 * one. The person may take any other.
 *
 * @returns nothing only for a programme without groups, which no file can be
 */
export function findGroup(
  programme: Pick<Programme, 'groups' | 'weeks'>,
  answers: Answers,
): GroupAnswer | undefined {
  const order = ranked(programme).filter(
    ({ weeks }, _, all) => weeks.length > 0 || all.every((each) => each.weeks.length === 0),
  );
  const choice = choose(order, answers);
  const own = order[choice.at];
  if (own === undefined) return undefined;
  const able = ableOf(answers);
  const upTo = wishLevel(order, answers.wish);
  const code = codeOf(order, answers, choice);
  const next = order[choice.at + 1];
  const short = shortOf(code === 'gentlest' || code === 'only' ? own : (next ?? own), able);
  const { first, last, arrives } = own;
  return {
    group: own.group.id,
    why: {
      code,
      first,
      last,
      arrives,
      ...(short && { short }),
      ...(next && { next: next.group.id }),
    },
    others: order
      .filter((demand) => demand !== own)
      .map((demand) => compared(demand, order.indexOf(demand) < choice.at, able, upTo)),
  };
}

function compared(demand: Demand, isGentler: boolean, able: Able, upTo: number): Compared {
  const { group, first, last, arrives } = demand;
  const short = shortOf(demand, able);
  return {
    group: group.id,
    than: isGentler ? 'gentler' : 'harder',
    first,
    last,
    arrives,
    ...(short && { short }),
    beyondWish: level(arrives) > upTo,
  };
}
