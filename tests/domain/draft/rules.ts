/**
 * What no draft may do, looked at from outside: only the texts of the draft are read, parsed and
 * laid out in time, and the bounds are written down a second time, in seconds.
 */
import type { Draft } from '../../../src/domain/draft/draft.ts';
import type { Wish, WishGroup } from '../../../src/domain/draft/wish.ts';
import { parsePlan } from '../../../src/domain/programme/parse.ts';
import { isRunning, type Plan } from '../../../src/domain/programme/plan.ts';
import { layOut } from '../../../src/domain/timeline/lay-out.ts';

export interface Seen {
  readonly week: number;
  readonly group: WishGroup;
  readonly text: string;
  readonly plan: Plan;
  /** Pinned in its first session. */
  readonly pinned: boolean;
  /** All in seconds. */
  readonly total: number;
  readonly main: number;
  /** Warm-up and main set. */
  readonly end: number;
  /** Running; for those who walk, brisk walking too. */
  readonly hard: number;
  /** The longest of it without a break. */
  readonly stretch: number;
}

export function measure(text: string, group: WishGroup) {
  const plan = parsePlan(text);
  if (!plan.ok) throw new Error(`${text}: ${plan.error.code}`);
  const { segments, total } = layOut(plan.value);
  let [hard, stretch, now, main, end] = [0, 0, 0, 0, 0];
  for (const segment of segments) {
    const length = (segment.end - segment.start) / 1000;
    const { activity, part } = segment;
    const counts = isRunning(activity) || (group.arrive === 'walk' && activity === 'brisk walk');
    now = counts ? now + length : 0;
    stretch = Math.max(stretch, now);
    if (counts) hard += length;
    if (part === 'main') main += length;
    if (part !== 'cool-down') end += length;
  }
  return { plan: plan.value, total: total / 1000, main, end, hard, stretch };
}

/** Every first session of a draft, by week and group. */
export const seenIn = (wish: Wish, draft: Draft): readonly (readonly Seen[])[] =>
  draft.weeks.map(({ cells }, week) =>
    wish.groups.map((group) => {
      const text = cells[group.id]?.text ?? '';
      const pinned = (wish.pins ?? []).some(
        ({ at }) => at.week === week && at.group === group.id && at.session === 0,
      );
      return { week, group, text, pinned, ...measure(text, group) };
    }),
  );

const floor30 = (seconds: number): number => Math.floor(seconds / 30) * 30;
const seconds = (value: number): number => value / 1000;

/** What the group can do today, of what is asked of it. */
const todayOf = (group: WishGroup): number =>
  floor30(seconds(group.arrive === 'walk' ? group.walk : group.run));

/** Everything pinned for a group before a week, second sessions too. */
const pinnedBefore = (wish: Wish, { week, group }: Seen) =>
  (wish.pins ?? [])
    .filter(({ at }) => at.group === group.id && at.week < week)
    .map(({ text }) => measure(text, group));

const most = (values: readonly number[]): number => Math.max(0, ...values);

/** One session by itself: its ends, its form, its length. */
export function sessionFaults(wish: Wish, one: Seen): readonly string[] {
  if (one.pinned) return [];
  const { plan } = one;
  const faults: string[] = [];
  for (const part of ['warm-up', 'cool-down'] as const) {
    const [step, more] = plan[part];
    const isEasyWalk =
      step?.kind === 'step' && step.activity === 'easy walk' && step.duration === 300_000;
    if (!isEasyWalk || more !== undefined) faults.push(part);
  }
  if (one.total > seconds(wish.session)) faults.push('longer than a session may be');
  if (layOut(plan).segments.some(({ start, end }) => (end - start) % 30_000 !== 0))
    faults.push('not in half minutes');
  const [first, ...others] = plan.main;
  if (first?.kind === 'repeat') {
    if (others.length > 0 || first.count < 3 || first.count > 12) faults.push('sets');
    if (first.items.some(({ kind }) => kind === 'repeat')) faults.push('sets in sets');
  } else if (![1, 3, 5].includes(plan.main.length))
    faults.push('neither sets nor one to three runs');
  return faults.map((fault) => `${fault}: ${one.text}`);
}

/** Who is done together ends together, where nothing is pinned. */
export function endFaults(week: readonly Seen[]): readonly string[] {
  const ends = week.filter(({ pinned }) => !pinned).map(({ end }) => end);
  return most(ends) - Math.min(...ends) > 30 ? [`ends ${ends.join(' ')}`] : [];
}

/** A first week within what can be done today. */
export function firstFaults(wish: Wish, one: Seen): readonly string[] {
  if (one.week > 0 || one.pinned) return [];
  const { group } = one;
  const today = todayOf(group);
  const faults: string[] = [];
  if (one.stretch > Math.max(60, today)) faults.push('longest stretch');
  if (one.hard > today + 480) faults.push('all of it');
  if (group.arrive !== 'run' && one.hard > (one.main * 2) / 3 + 30) faults.push('two thirds');
  const onFeet = wish.groups.map(({ walk, run }) => floor30(seconds(Math.max(walk, run))));
  const isFree = (wish.pins ?? []).every(({ at }) => at.week > 0);
  if (isFree && one.main > Math.min(...onFeet) + 600) faults.push('main set');
  return faults.map((fault) => `first week, ${fault}: ${one.text}`);
}

/** From week to week of one group, the last one left out. */
export function riseFaults(wish: Wish, ofGroup: readonly Seen[]): readonly string[] {
  const full = ofGroup.slice(0, -1);
  return full.flatMap((now, n): string[] => {
    const before = full.slice(0, n);
    if (now.pinned || n === 0) return [];
    const pinned = pinnedBefore(wish, now);
    const drafted = before.filter((one) => !one.pinned);
    // A week that somebody else's pinned session cuts short is beside the rise.
    const isShared = (week: number): boolean =>
      (wish.pins ?? []).some(({ at }) => at.week === week && at.session === 0);
    const isFirst = drafted.every(({ week }) => isShared(week));
    const faults: string[] = [];
    const today = todayOf(now.group);
    const hard = most([...before, ...pinned].map((one) => one.hard));
    if (now.hard > Math.max(hard + 240, isFirst ? today + 480 : 0)) faults.push('over 4 min more');
    const longest = most([...before, ...pinned].map(({ stretch }) => stretch));
    const may = Math.max(
      isFirst ? today : 0,
      floor30(Math.round(longest * 1.3 * 1000) / 1000),
      longest + 90,
    );
    if (now.stretch > may) faults.push(`a stretch of ${now.stretch} after ${longest}`);
    const last = drafted.filter(({ week }) => !isShared(week)).at(-1);
    if (last !== undefined && !isShared(now.week)) {
      if (now.hard < last.hard) faults.push('less than before');
      if (now.main < last.main - 30) faults.push('a shorter main set');
    }
    const isFree = before.every(({ week }) => !isShared(week)) && !isShared(now.week);
    const main = most(before.map((one) => one.main));
    if (isFree && last !== undefined && now.main > main + 330)
      faults.push('main set over 5 min longer');
    return faults.map((fault) => `week ${n + 1}, ${fault}: ${now.text}`);
  });
}

/** The week of the event against the most before it. */
export function lightFaults(wish: Wish, ofGroup: readonly Seen[]): readonly string[] {
  const light = ofGroup.at(-1);
  if (light === undefined || light.pinned) return [];
  const before = ofGroup.slice(0, -1);
  const pinned = pinnedBefore(wish, light);
  const faults: string[] = [];
  if (light.hard > (most([...before, ...pinned].map((one) => one.hard)) * 2) / 3)
    faults.push('more than two thirds of the running');
  if (light.stretch > most([...before, ...pinned].map((one) => one.stretch)))
    faults.push('longest stretch');
  if (wish.pins === undefined && light.main > (most(before.map((one) => one.main)) * 2) / 3 + 30)
    faults.push('more than two thirds of the main set');
  return faults.map((fault) => `last week, ${fault}: ${light.text}`);
}

/** Everything at once. */
export function faultsOf(wish: Wish, draft: Draft): readonly string[] {
  const weeks = seenIn(wish, draft);
  const byGroup = wish.groups.map((_, g) => weeks.map((week) => week[g] as Seen));
  return [
    ...weeks.flat().flatMap((one) => [...sessionFaults(wish, one), ...firstFaults(wish, one)]),
    ...weeks.flatMap(endFaults),
    ...byGroup.flatMap((one) => [...riseFaults(wish, one), ...lightFaults(wish, one)]),
  ];
}
