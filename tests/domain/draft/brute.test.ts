/**
 * Small programmes, every one of which can be written out: all rows of shared main sets, all main
 * sets of all groups. Nothing here leans on the solver but the costs, which are what is compared;
 * what is allowed is written down a second time, in half minutes.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  firstCost,
  groundCost,
  groundLightCost,
  lightCost,
  stepCost,
  WEIGHTS,
} from '../../../src/domain/draft/objective.ts';
import type { Option } from '../../../src/domain/draft/option.ts';
import { solve } from '../../../src/domain/draft/solve.ts';
import {
  ARRIVALS,
  type Arrival,
  type Wish,
  type WishGroup,
} from '../../../src/domain/draft/wish.ts';
import { type GroupLine, wishOf } from './wishes.ts';

/** What the groups miss, what the shared main sets cost, what the rest costs. */
type Score = readonly [missing: number, ground: number, groups: number];

/** One group that does not arrive weighs more than whatever others miss. */
const late = (missing: number): number => (missing > 0 ? 100_000 + missing : 0);

const half = (length: number): number => Math.floor(length / 30_000);
const isLess = (a: Score, b: Score): boolean => {
  const n = a.findIndex((value, i) => Math.abs(value - (b[i] ?? 0)) > 1e-6);
  return n >= 0 && (a[n] ?? 0) < (b[n] ?? 0);
};

/** Every main set of exactly this length, by trying all numbers. */
function mainSets(main: number, arrive: Arrival): readonly Option[] {
  const found: Option[] = [];
  for (let sets = 3; sets <= 12; sets += 1)
    for (let hard = 1; hard <= main; hard += 1)
      for (let easy = 2; easy <= 20; easy += 1) {
        if (sets * (hard + easy) !== main || (easy > 4 && easy % 2 === 1)) continue;
        if (arrive === 'mix' && sets * hard > 0.75 * main) continue;
        const form = { kind: 'sets', sets, hard, easy } as const;
        found.push({ form, main, hard: sets * hard, stretch: hard });
      }
  if (arrive === 'run')
    for (const others of [1, 2] as const)
      for (const easy of [2, 4])
        for (let other = 4; other < main; other += 2)
          for (let first = other; first < main; first += 1) {
            if (first + others * (easy + other) !== main) continue;
            const form = { kind: 'runs', first, easy, others, other } as const;
            found.push({ form, main, hard: first + others * other, stretch: first });
          }
  if (arrive !== 'mix')
    found.push({ form: { kind: 'on', hard: main }, main, hard: main, stretch: main });
  return found;
}

/** Counts of sets that divide a main set. */
const waysOf = (main: number): number =>
  [3, 4, 5, 6, 7, 8, 9, 10, 11, 12].filter((n) => main % n === 0 && main / n > 2).length;
const canDivide = (main: number): boolean => waysOf(main) > 0 || waysOf(main - 1) > 0;

const known = new Map<string, readonly Option[]>();
function ending(main: number, arrive: Arrival): readonly Option[] {
  const key = `${main} ${arrive}`;
  const options = known.get(key) ?? [...mainSets(main, arrive), ...mainSets(main - 1, arrive)];
  known.set(key, options);
  return options;
}

const ceil = (value: number): number => Math.ceil(value - 1e-6);

/**
 * Half minutes of main set for so many km, at 8:00 per km running and 12:00 walking. Running: three
 * quarters of the event. Walking: two thirds of it, the 10 min around the main set walked too. Mix:
 * a session that covers the distance over 1.3, half of its main set run; with M minutes of it,
 * M / 16 + (M / 2 + 10) / 12 = km / 1.3.
 */
function needOf(arrive: Arrival, distanceM: number) {
  const km = distanceM / 1000;
  if (arrive === 'run') return { main: ceil(12 * km), stretch: ceil(12 * km), share: 0 };
  if (arrive === 'walk') return { main: ceil(16 * km - 20), stretch: 0, share: 0.75 };
  const minutes = (km / 1.3 - 10 / 12) / (1 / 16 + 1 / 24);
  return { main: ceil(2 * minutes), stretch: 0, share: 0.5 };
}

/** The least that one group can miss and cost over a row, by trying all its ways. */
function leastFor(wish: Wish, group: WishGroup, row: readonly number[]): Score | undefined {
  const { arrive } = group;
  const today = half(arrive === 'walk' ? group.walk : group.run);
  const need = needOf(arrive, wish.goal.distanceM);
  let least: Score | undefined;
  const end = (way: readonly Option[], cost: number): void => {
    const last = way.at(-1) as Option;
    const { main, stretch } = last;
    const missing =
      Math.max(0, need.main - main) +
      Math.max(0, need.stretch - stretch) +
      Math.max(0, Math.ceil(need.share * main) - last.hard);
    const light = row.at(-1) as number;
    for (const option of ending(light, arrive)) {
      if (option.hard > (last.hard * 2) / 3 || option.stretch > last.stretch) continue;
      const score: Score = [missing, 0, cost + lightCost(last, option) + firstCost(option, light)];
      if (least === undefined || isLess(score, least)) least = score;
    }
  };
  const go = (way: readonly Option[], cost: number): void => {
    if (way.length === row.length - 1) {
      end(way, cost);
      return;
    }
    const main = row[way.length] as number;
    const before = way.at(-1);
    for (const option of ending(main, arrive)) {
      if (before === undefined) {
        const share = arrive === 'run' ? main : Math.floor((2 * main) / 3);
        if (option.stretch > Math.max(2, today)) continue;
        if (option.hard > Math.min(today + 16, share)) continue;
        go([option], firstCost(option, main));
      } else {
        const longest = before.stretch;
        if (option.hard < before.hard || option.hard > before.hard + 8) continue;
        if (option.stretch > Math.max(Math.floor((longest * 13) / 10), longest + 3)) continue;
        go([...way, option], cost + stepCost(before, option) + firstCost(option, main));
      }
    }
  };
  go([], 0);
  return least;
}

/** Every row of main sets within the bounds, and what it costs. */
function rows(wish: Wish): readonly { readonly row: readonly number[]; readonly cost: number }[] {
  const longest = half(wish.session) - 20;
  const onFeet = Math.min(...wish.groups.map(({ walk, run }) => Math.max(half(walk), half(run))));
  const needed = wish.groups.map(({ arrive }) => {
    const { main } = needOf(arrive, wish.goal.distanceM);
    // Whole minutes; for who needs sets, such that two or more counts divide them.
    const fits = (length: number): boolean =>
      length % 2 === 0 && (arrive === 'run' || waysOf(length) >= 2);
    return Array.from({ length: 40 }, (_, n) => Math.max(0, main) + n).find(fits) ?? main;
  });
  const top = Math.min(longest, Math.max(40, ...needed));
  let all: { readonly row: readonly number[]; readonly cost: number }[] = [{ row: [], cost: 0 }];
  for (let week = 0; week < wish.weeks - 1; week += 1)
    all = all.flatMap(({ row, cost }) => {
      const before = row.at(-1);
      const from = before ?? 30;
      const to = Math.min(top, before === undefined ? onFeet + 20 : before + 10);
      const mains = Array.from({ length: to - from + 1 }, (_, n) => from + n);
      return mains
        .filter((main) => canDivide(main) && (main % 2 === 0 || main === to || main === before))
        .map((main) => ({ row: [...row, main], cost: cost + groundCost(main, before) }));
    });
  return all.flatMap(({ row, cost }) => {
    const last = row.at(-1) as number;
    const mains = Array.from({ length: last }, (_, n) => n).filter(
      (main) =>
        main >= Math.max(20, last / 2) &&
        main <= (last * 2) / 3 &&
        main % 2 === 0 &&
        canDivide(main),
    );
    const short = WEIGHTS.groundShort * (top - last);
    return mains.map((main) => ({
      row: [...row, main],
      cost: cost + short + groundLightCost(main, last),
    }));
  });
}

function leastOf(wish: Wish): Score | undefined {
  let least: Score | undefined;
  for (const { row, cost } of rows(wish)) {
    const scores = wish.groups.map((group) => leastFor(wish, group, row));
    if (!scores.every((score) => score !== undefined)) continue;
    const score: Score = [
      scores.reduce((sum, [missing]) => sum + late(missing), 0),
      cost,
      scores.reduce((sum, [, , groups]) => sum + groups, 0),
    ];
    if (least === undefined || isLess(score, least)) least = score;
  }
  return least;
}

function solved(wish: Wish): Score | undefined {
  const solution = solve(wish);
  if (solution === undefined) return undefined;
  const { ground, climbs } = solution;
  return [
    climbs.reduce((sum, { missing }) => sum + late(missing), 0),
    ground.cost,
    climbs.reduce((sum, { cost }) => sum + cost, 0),
  ];
}

function same(wish: Wish): void {
  const [least, found] = [leastOf(wish), solved(wish)];
  expect(least).toBeDefined();
  expect(found?.length).toBe(3);
  for (const n of [0, 1, 2]) expect(found?.[n]).toBeCloseTo(least?.[n] ?? Number.NaN, 6);
}

const group = fc.tuple(
  fc.integer({ min: 10, max: 80 }),
  fc.integer({ min: 0, max: 40 }),
  fc.constantFrom(...ARRIVALS),
);
const smallWish = fc
  .record({
    session: fc.integer({ min: 50, max: 56 }),
    distanceM: fc.constantFrom(1000, 2000, 3000, 5000),
    groups: fc.array(group, { minLength: 1, maxLength: 2 }),
  })
  .map(({ session, distanceM, groups }) =>
    wishOf(
      3,
      session / 2,
      groups.map(([walk, run, arrive], n): GroupLine => [`G${n}`, walk / 2, run / 2, arrive]),
      { distanceM },
    ),
  );

describe('all drafts of a small programme', () => {
  it('DRAFT-9 none of three weeks for one or two groups is better, whoever arrives', () => {
    fc.assert(fc.property(smallWish, same), { numRuns: 12 });
  });

  it.each<[string, number, GroupLine]>([
    ['walks', 30, ['Wren', 20, 0, 'walk']],
    ['mixes', 28, ['Dunlin', 15, 3, 'mix']],
    ['runs', 28, ['Swift', 30, 11, 'run']],
  ])('DRAFT-9 none of four weeks for a group that %s and arrives is better', (_, session, line) => {
    const wish = wishOf(4, session, [line], { distanceM: 2000 });
    expect(solved(wish)?.[0]).toBe(0);
    same(wish);
  });
});
