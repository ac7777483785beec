import { BOUNDS, type Half } from './bounds.ts';
import type { Ground } from './ground.ts';
import { missing } from './need.ts';
import { asideCost, firstCost, lightCost, riseCost, stepCost } from './objective.ts';
import { type Option, optionsOf } from './option.ts';
import { type Climber, limitsOf, type Reached, seenBefore } from './week-limits.ts';

/** A group's way through the weeks; pinned weeks have their pinned session. */
export interface Climb {
  readonly options: readonly Option[];
  /** What it comes to before the week of the event. */
  readonly reached: Reached;
  readonly missing: Half;
  readonly cost: number;
}

/** The best way to a main set of the last full week that was drafted; none before the first. */
interface Node {
  readonly option: Option | undefined;
  readonly cost: number;
  /** Chosen so far, week by week. */
  readonly way: Way | undefined;
}
interface Way {
  readonly option: Option;
  readonly before: Way | undefined;
}

const MISS = 1_000_000;

/** What the next week is a step from: the pinned session before it, or else the last full week. */
const beforeOf = ({ option, way }: Node): Option | undefined =>
  way?.option.form.kind === 'pinned' ? way.option : option;

/** The first of options, which stand in order of how hard they are, that is at least so hard. */
function firstFrom(options: readonly Option[], least: Half): number {
  let [low, high] = [0, options.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((options[middle] as Option).hard < least) low = middle + 1;
    else high = middle;
  }
  return low;
}

function fullWeek(
  climber: Climber,
  main: Half,
  seen: Reached,
  nodes: readonly Node[],
): readonly Node[] {
  const options = optionsOf(main, climber.arrive);
  const own = options.map((option) => firstCost(option, main));
  const best: (Node | undefined)[] = options.map(() => undefined);
  for (const node of nodes) {
    const { least, most, longest } = limitsOf(climber, main, node.option, seen);
    const before = beforeOf(node);
    for (let n = firstFrom(options, least); n < options.length; n += 1) {
      const option = options[n] as Option;
      if (option.hard > most) break;
      if (option.stretch > longest) continue;
      const known = best[n]?.cost ?? Number.POSITIVE_INFINITY;
      const alone = node.cost + (own[n] ?? 0);
      // The rise is most of a step's cost and soon known: few steps have to be looked at closer.
      if (before !== undefined && alone + riseCost(before, option) >= known) continue;
      const cost = alone + (before === undefined ? 0 : stepCost(before, option));
      if (cost < known) best[n] = { option, cost, way: { option, before: node.way } };
    }
  }
  return best.filter((node) => node !== undefined);
}

/** A week beside the rise: a light one, or one that a pinned session of another group cut short. */
function besideWeek(
  climber: Climber,
  main: Half,
  kind: 'aside' | 'light',
  seen: Reached,
  nodes: readonly Node[],
): readonly Node[] {
  const options = optionsOf(main, climber.arrive);
  return nodes.flatMap((node): Node[] => {
    const before = node.option ?? node.way?.option;
    if (before === undefined) return [];
    const hard = Math.max(before.hard, seen.hard);
    const stretch = Math.max(before.stretch, seen.stretch);
    const most = kind === 'light' ? BOUNDS.light.max * hard : hard;
    const costOf = kind === 'light' ? lightCost : asideCost;
    let found: Node | undefined;
    for (const option of options) {
      if (option.hard > most) break;
      if (option.stretch > stretch) continue;
      const cost = node.cost + costOf(before, option) + firstCost(option, main);
      if (cost < (found?.cost ?? Number.POSITIVE_INFINITY))
        found = { option: node.option, cost, way: { option, before: node.way } };
    }
    return found === undefined ? [] : [found];
  });
}

/** A pinned week: its session stands, and how far the week before leads up to it is counted. */
const pinnedWeek = (own: Option, nodes: readonly Node[]): readonly Node[] =>
  nodes.map((node) => {
    const before = beforeOf(node);
    const cost = node.cost + (before === undefined ? 0 : stepCost(before, own));
    return { option: node.option, cost, way: { option: own, before: node.way } };
  });

function wayOf(node: Node): readonly Option[] {
  const options: Option[] = [];
  for (let way = node.way; way !== undefined; way = way.before) options.push(way.option);
  return options.reverse();
}

/** The last full week that was drafted, or what is pinned before the week of the event. */
function reachedBy({ pinned }: Climber, { option }: Node): Reached {
  const seen = seenBefore(pinned, pinned.length - 1);
  return {
    main: Math.max(option?.main ?? 0, seen.main),
    hard: Math.max(option?.hard ?? 0, seen.hard),
    stretch: Math.max(option?.stretch ?? 0, seen.stretch),
  };
}

/**
 * The cheapest way of one group over a given ground, within all bounds: exact, by dynamic
 * programming over the main sets of the full weeks. Nothing when there is none.
 */
export function climb(climber: Climber, ground: Ground): Climb | undefined {
  let nodes: readonly Node[] = [{ option: undefined, cost: 0, way: undefined }];
  for (const [week, main] of ground.mains.entries()) {
    const kind = ground.kinds[week] ?? 'full';
    const seen = seenBefore(climber.pinned, week);
    const own = climber.pinned[week]?.own;
    if (week === ground.mains.length - 1) nodes = nodes.map((node) => withMissing(climber, node));
    if (own !== undefined) nodes = pinnedWeek(own, nodes);
    else if (kind === 'full') nodes = fullWeek(climber, main, seen, nodes);
    else nodes = besideWeek(climber, main, kind, seen, nodes);
  }
  const [first, ...others] = nodes;
  if (first === undefined) return undefined;
  const best = others.reduce((one, other) => (other.cost < one.cost ? other : one), first);
  const miss = Math.floor(best.cost / MISS);
  return {
    options: wayOf(best),
    reached: reachedBy(climber, best),
    missing: miss,
    cost: best.cost - miss * MISS,
  };
}

const withMissing = (climber: Climber, node: Node): Node => ({
  ...node,
  cost: node.cost + MISS * Math.ceil(missing(climber.need, reachedBy(climber, node))),
});
