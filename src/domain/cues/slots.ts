import { type Ms, ms } from '../units.ts';
import type { Gap } from './room.ts';

/** A place in a gap at which something is to be said. */
export interface Slot {
  readonly gap: Gap;
  readonly at: Ms;
  /** Without it the gap would be quiet for too long; else it may stay empty. */
  readonly needed: boolean;
}

/** How densely a quiet stretch should be filled; lengths in milliseconds. */
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
  const filled = gaps.map((gap): Filled => {
    const width = gap.to - gap.from;
    return {
      gap,
      width,
      middle: (gap.from + gap.to) / 2,
      count: needed(width, wish),
      away: Infinity,
    };
  });
  for (const it of filled) if (it.count > 0) keepAway(filled, it.middle);
  let total = filled.reduce((sum, { count }) => sum + count, 0);
  for (; total < wish.wanted; total++) {
    const widest = widestOf(filled, wish.least);
    if (widest === undefined) break;
    widest.count += 1;
    keepAway(filled, widest.middle);
  }
  return filled.flatMap(({ gap, width, count }) =>
    count === 0
      ? []
      : spread(gap, count, wish).map((at) => ({ gap, at, needed: width > wish.bound })),
  );
}

interface Filled {
  readonly gap: Gap;
  readonly width: number;
  readonly middle: number;
  count: number;
  /** To the nearest gap that has something in it. */
  away: number;
}

function keepAway(filled: readonly Filled[], from: number): void {
  for (const it of filled) it.away = Math.min(it.away, Math.abs(it.middle - from));
}

/** Places are moved to whole five seconds at least: half of that on either side. */
const FINEST = 5000;

const needed = (width: number, { bound }: Wish): number =>
  width <= bound ? 0 : Math.ceil(width / (bound - FINEST)) - 1;

/** Gaps that differ by less than this are as wide as each other. */
const ALIKE = 10_000;

/**
 * The widest gap that has room for one more, those with something in them counting as much
 * less wide; of gaps alike, the one farthest from all that is placed already.
 */
function widestOf(filled: readonly Filled[], least: number): Filled | undefined {
  let best: Filled | undefined;
  let bestWidth = 0;
  for (const it of filled) {
    if (it.width / (it.count + 2) < least) continue;
    const width = Math.round(it.width / (it.count + 1) ** 2 / ALIKE);
    if (best === undefined || width > bestWidth || (width === bestWidth && it.away > best.away)) {
      best = it;
      bestWidth = width;
    }
  }
  return best;
}

/** Round times before a segment's end, the roundest first that move nothing by a quarter of its step. */
const GRIDS = [60_000, 30_000, 15_000, FINEST];

function spread({ room, from, to }: Gap, count: number, { bound, least }: Wish): Ms[] {
  const step = (to - from) / (count + 1);
  const even = Array.from({ length: count }, (_, i) => from + step * (i + 1));
  const { end } = room.segment;
  const tightest = Math.min(least, step - FINEST);
  for (const grid of GRIDS) {
    if (grid > step / 2 && grid > FINEST) continue;
    const places = even.map((at) => end - Math.round((end - at) / grid) * grid);
    const all = [from, ...places, to];
    const apart = all.slice(1).map((at, i) => at - (all[i] ?? 0));
    if (apart.every((quiet) => quiet >= tightest && quiet <= Math.max(bound, step))) {
      return places.map(ms);
    }
  }
  return even.map(ms);
}
