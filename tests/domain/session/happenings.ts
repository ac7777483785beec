/** What may happen to a phone, by a person, by the system or by the page, for stories made by chance. */
import fc from 'fast-check';
import { SIGNS, WISHES } from '../../../src/domain/session/event.ts';
import type { Phone } from '../../drivers/player.ts';

export type Happening = readonly [name: string, happens: (phone: Phone) => void];

const says = (type: string): Happening => [
  type,
  (phone) => phone.say(type as Parameters<Phone['say']>[0]),
];

/** The page is kept from acting, or acts again. */
const blocks: fc.Arbitrary<Happening> = fc.boolean().map((on) => [
  `block ${on}`,
  (phone) => {
    phone.blocked = on;
  },
]);

/** The wall clock is set; the sound stays where it is. @param most milliseconds, either way */
const setsClock = (most: number): fc.Arbitrary<Happening> =>
  fc.integer({ min: -most, max: most }).map((by) => [
    `clock ${by}`,
    (phone) => {
      const { track } = phone;
      phone.wall += by;
      phone.scrub(track);
    },
  ]);

/** Somebody drags the place. Milliseconds of the track. */
const scrubs = (min: number, max: number): fc.Arbitrary<Happening> =>
  fc.integer({ min, max }).map((to) => [`scrub ${to}`, (phone) => phone.scrub(to)]);

const happening: fc.Arbitrary<Happening> = fc.oneof(
  { weight: 6, arbitrary: pass(fc.double({ min: 0.1, max: 90, noNaN: true })) },
  { weight: 4, arbitrary: fc.constantFrom(...WISHES.filter((w) => w !== 'end')).map(says) },
  { weight: 1, arbitrary: fc.constant(says('end')) },
  { weight: 2, arbitrary: fc.constantFrom('button-pause', 'button-play').map(says) },
  { weight: 1, arbitrary: fc.constantFrom(...SIGNS).map(says) },
  {
    weight: 2,
    arbitrary: fc.constantFrom<Happening>(['take', (p) => p.take()], ['give', (p) => p.giveBack()]),
  },
  {
    weight: 2,
    arbitrary: fc.boolean().map((on): Happening => [`stick ${on}`, (p) => p.stick(on)]),
  },
  { weight: 2, arbitrary: blocks },
  { weight: 1, arbitrary: scrubs(0, 2_700_000) },
  { weight: 1, arbitrary: setsClock(60_000) },
);

function pass(seconds: fc.Arbitrary<number>): fc.Arbitrary<Happening> {
  return seconds.map((s) => [
    `pass ${s.toFixed(2)}`,
    (phone) => phone.pass(Math.round(s * 1000) / 1000, 0.5),
  ]);
}

/** Everything that may happen in a session, one after another. */
export const story = fc.array(happening, { minLength: 1, maxLength: 60 });

const waits = fc
  .integer({ min: 1, max: 200 })
  .map((n): Happening => [`pass ${n / 4}`, (p) => p.pass(n / 4)]);
const ofWait: fc.Arbitrary<Happening> = fc.oneof(
  { weight: 6, arbitrary: waits },
  { weight: 2, arbitrary: fc.constantFrom(...SIGNS).map(says) },
  {
    weight: 2,
    arbitrary: fc.constantFrom<Happening>(
      ['take', (p) => p.take()],
      ['give', (p) => p.giveBack()],
      ['stick', (p) => p.stick(true)],
      ['free', (p) => p.stick(false)],
    ),
  },
  { weight: 2, arbitrary: blocks },
  {
    weight: 2,
    arbitrary: fc.constantFrom('button-pause', 'skip', 'back', 'hold').map(says),
  },
  { weight: 1, arbitrary: setsClock(30_000) },
  { weight: 1, arbitrary: scrubs(-600_000, 390_000) },
);

/** What may happen before an agreed start of itself or by a slip, one after another. */
export const waitStory = fc.array(ofWait, { maxLength: 40 });

/** The same, and whatever a person does meanwhile. */
export const anyWaitStory = fc.array(fc.oneof(ofWait, happening), { maxLength: 40 });
