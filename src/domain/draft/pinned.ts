import { type Activity, isRunning } from '../programme/plan.ts';
import { mainEnd } from '../programme/totals.ts';
import { layOut } from '../timeline/lay-out.ts';
import { BOUNDS, type Half, msOfHalf } from './bounds.ts';
import type { Option } from './option.ts';
import type { Arrival, Pin, Wish } from './wish.ts';

/** A pinned session in the solver's terms. Its end is rounded up, what was done is not. */
export function pinnedOption({ plan }: Pin, arrive: Arrival): Option {
  const counts = (activity: Activity): boolean =>
    isRunning(activity) || (arrive === 'walk' && activity === 'brisk walk');
  let [hard, stretch, now] = [0, 0, 0];
  for (const { activity, start, end } of layOut(plan).segments) {
    now = counts(activity) ? now + end - start : 0;
    if (counts(activity)) hard += end - start;
    stretch = Math.max(stretch, now);
  }
  const half = msOfHalf(1);
  const main = Math.ceil(mainEnd(plan) / half) - BOUNDS.ends;
  return { form: { kind: 'pinned' }, main, hard: hard / half, stretch: stretch / half };
}

/** What a group's pinned sessions of a week mean for the draft. */
export interface PinnedWeek {
  /** Stands for the week: its first session is pinned. */
  readonly own?: Option;
  /** Longest main set, most running and longest stretch of all that is pinned in it. */
  readonly main: number;
  readonly hard: number;
  readonly stretch: number;
}

/** What the pinned sessions of a group fix, week by week. */
export function pinnedWeeks(wish: Wish, group: string, arrive: Arrival): readonly PinnedWeek[] {
  const pins = (wish.pins ?? []).filter(({ at }) => at.group === group);
  return Array.from({ length: wish.weeks }, (_, week) => {
    const here = pins.filter(({ at }) => at.week === week);
    const options = here.map((pin) => pinnedOption(pin, arrive));
    const first = here.find(({ at }) => at.session === 0);
    return {
      ...(first === undefined ? {} : { own: pinnedOption(first, arrive) }),
      main: Math.max(0, ...options.map(({ main }) => main)),
      hard: Math.max(0, ...options.map(({ hard }) => hard)),
      stretch: Math.max(0, ...options.map(({ stretch }) => stretch)),
    };
  });
}

/**
 * Lengths that the shared main set may have in each week so that the others end within 30 s of a
 * pinned session; of several, the first group's. Nothing where none is pinned, or where it is too
 * short or too long for anybody else.
 */
export function pinnedMains(wish: Wish, longest: Half): readonly (readonly Half[] | undefined)[] {
  return Array.from({ length: wish.weeks }, (_, week) => {
    const pin = wish.groups
      .map(({ id }) =>
        wish.pins?.find(({ at }) => at.week === week && at.session === 0 && at.group === id),
      )
      .find((found) => found !== undefined);
    if (pin === undefined) return undefined;
    const { main } = pinnedOption(pin, 'run');
    if (main < BOUNDS.main.lightMin || main > longest) return undefined;
    // The others take a length or half a minute less: one more is within 30 s of a whole half minute.
    const isWhole = mainEnd(pin.plan) % msOfHalf(1) === 0;
    return isWhole && main < longest ? [main, main + 1] : [main];
  });
}
