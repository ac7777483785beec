import { type Ms, ms } from '../units.ts';
import type { Gap } from './room.ts';

/** A gap, and the places in it at which something is to be said. */
export interface Slot {
  readonly gap: Gap;
  readonly at: Ms;
}

export interface Wish {
  /** Longest quiet that is allowed. */
  readonly bound: number;
  /** Least time from one word to the next, for what is said without need. */
  readonly least: number;
  /** How many places are wanted in all, where there is room. */
  readonly wanted: number;
}

/**
 * Places for reminders and effort: first as many as keep every quiet within the bound, then more
 * in the widest gaps until there are as many as wanted. The places of a gap are spread evenly
 * over it, at round times before the segment's end.
 */
export function chooseSlots(gaps: readonly Gap[], wish: Wish): Slot[] {
  const filled = gaps.map((gap) => ({ gap, width: gap.to - gap.from, count: needed(gap, wish) }));
  const middles = filled.flatMap(({ gap, count }) => Array(count).fill(middleOf(gap)) as number[]);
  const total = () => middles.length;
  while (total() < wish.wanted) {
    const widest = widestOf(filled, middles, wish.least);
    if (widest === undefined) break;
    widest.count += 1;
    middles.push(middleOf(widest.gap));
  }
  return filled.flatMap(({ gap, count }) =>
    count === 0 ? [] : spread(gap, count, wish).map((at) => ({ gap, at })),
  );
}

interface Filled {
  readonly gap: Gap;
  readonly width: number;
  count: number;
}

/** Places are moved to whole five seconds at least: half of that on either side. */
const FINEST = 5000;

const needed = (gap: Gap, { bound }: Wish): number =>
  Math.max(0, Math.ceil((gap.to - gap.from) / (bound - FINEST)) - 1);

const middleOf = (gap: Gap): number => (gap.from + gap.to) / 2;

/** Gaps that differ by less than this are as wide as each other. */
const ALIKE = 10_000;

/**
 * The widest gap that has room for one more, those with something in them counting as much
 * less wide; of gaps alike, the one farthest from all that is placed already.
 */
function widestOf(
  filled: readonly Filled[],
  middles: readonly number[],
  least: number,
): Filled | undefined {
  let best: { readonly it: Filled; readonly width: number; readonly away: number } | undefined;
  for (const it of filled) {
    if (it.width / (it.count + 2) < least) continue;
    const width = Math.round(it.width / (it.count + 1) ** 2 / ALIKE);
    if (best !== undefined && width < best.width) continue;
    const middle = middleOf(it.gap);
    const away = Math.min(...middles.map((other) => Math.abs(other - middle)), Infinity);
    if (best === undefined || width > best.width || away > best.away) best = { it, width, away };
  }
  return best?.it;
}

/** Round times before a segment's end, the roundest first. */
const GRIDS = [60_000, 30_000, 15_000, FINEST];

function spread({ room, from, to }: Gap, count: number, { bound, least }: Wish): Ms[] {
  const step = (to - from) / (count + 1);
  const even = Array.from({ length: count }, (_, i) => from + step * (i + 1));
  const { end } = room.segment;
  const tightest = Math.min(least, step - FINEST);
  for (const grid of GRIDS) {
    const places = even.map((at) => end - Math.round((end - at) / grid) * grid);
    const all = [from, ...places, to];
    const apart = all.slice(1).map((at, i) => at - (all[i] ?? 0));
    if (apart.every((quiet) => quiet >= tightest && quiet <= Math.max(bound, step))) {
      return places.map(ms);
    }
  }
  return even.map(ms);
}
