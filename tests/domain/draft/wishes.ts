/** Wishes by hand and by chance. */
import fc from 'fast-check';
import type { Draft } from '../../../src/domain/draft/draft.ts';
import { draftProgramme } from '../../../src/domain/draft/draft.ts';
import { ARRIVALS, type Arrival, type Pin, type Wish } from '../../../src/domain/draft/wish.ts';
import { parsePlan } from '../../../src/domain/programme/parse.ts';
import { msOfSeconds } from '../../../src/domain/units.ts';

/** Name, longest comfortable brisk walk and run in minutes, where to arrive. */
export type GroupLine = readonly [name: string, walk: number, run: number, arrive: Arrival];

export const wishOf = (
  weeks: number,
  sessionMinutes: number,
  groups: readonly GroupLine[],
  more: { readonly distanceM?: number; readonly pins?: readonly Pin[] } = {},
): Wish => ({
  weeks,
  session: msOfSeconds(sessionMinutes * 60),
  goal: { name: 'Heron Loop', distanceM: more.distanceM ?? 5000 },
  groups: groups.map(([name, walk, run, arrive]) => ({
    id: name.toLowerCase(),
    name,
    for: '',
    walk: msOfSeconds(walk * 60),
    run: msOfSeconds(run * 60),
    arrive,
  })),
  ...(more.pins === undefined ? {} : { pins: more.pins }),
});

/** The club's four groups. */
export const FOUR: readonly GroupLine[] = [
  ['Wren', 20, 0, 'walk'],
  ['Dunlin', 20, 0, 'mix'],
  ['Curlew', 30, 5, 'run'],
  ['Swift', 40, 12, 'run'],
];

export function pin(week: number, group: string, text: string, session = 0): Pin {
  const plan = parsePlan(text);
  if (!plan.ok) throw new Error(`${text}: ${plan.error.code}`);
  return { at: { week, group, session }, text, plan: plan.value };
}

export function draftOf(wish: Wish): Draft {
  const draft = draftProgramme(wish);
  if (!draft.ok) throw new Error(JSON.stringify(draft.error));
  return draft.value;
}

const group = fc.tuple(
  fc.integer({ min: 10, max: 240 }),
  fc.oneof(fc.constant(0), fc.integer({ min: 0, max: 120 })),
  fc.constantFrom(...ARRIVALS),
);

/** Any wish that may be asked for, in half minutes. Long programmes and distances included. */
export const anyWish: fc.Arbitrary<Wish> = fc
  .record({
    weeks: fc.integer({ min: 3, max: 16 }),
    session: fc.integer({ min: 50, max: 240 }),
    distanceM: fc.constantFrom(1000, 1609, 3000, 5000, 8000, 10_000, 21_098, 50_000),
    groups: fc.array(group, { minLength: 1, maxLength: 5 }),
  })
  .map(({ weeks, session, distanceM, groups }) =>
    wishOf(
      weeks,
      session / 2,
      groups.map(([walk, run, arrive], n): GroupLine => [`G${n}`, walk / 2, run / 2, arrive]),
      { distanceM },
    ),
  );

const PINNED = [
  '5 min easy walk; 6 x (2 min run, 1 min walk); 5 min easy walk',
  '5 min easy walk; 7 x (1 min walk, 2 min brisk walk); 5 min easy walk',
  '5 min easy walk; 31 min run; 5 min easy walk',
  '6 min easy walk; 4 x (4 min run, 90 s walk); 4 min easy walk',
  '5 min easy walk; 3 x (65 s jog, 100 s walk); 5 min easy walk',
  'main: 10 min walk',
  '5 min easy walk; 12 x (2 min run, 4 min walk); 5 min easy walk',
];

/** The same, some sessions of it pinned. */
export const anyPinnedWish: fc.Arbitrary<Wish> = anyWish.chain((wish) =>
  fc
    .uniqueArray(
      fc.record({
        week: fc.integer({ min: 0, max: wish.weeks - 1 }),
        group: fc.constantFrom(...wish.groups.map(({ id }) => id)),
        session: fc.constantFrom(0, 0, 0, 1),
        text: fc.constantFrom(...PINNED),
      }),
      {
        minLength: 1,
        maxLength: 4,
        selector: ({ week, group, session }) => `${week} ${group} ${session}`,
      },
    )
    .map((pins) => ({
      ...wish,
      pins: pins.map(({ week, group, session, text }) => pin(week, group, text, session)),
    })),
);
