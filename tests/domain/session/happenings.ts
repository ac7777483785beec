/** What may happen to a phone, by a person, by the system or by the page, for stories made by chance. */
import fc from 'fast-check';
import type { Phone } from '../../drivers/player.ts';

export type Happening = readonly [name: string, happens: (phone: Phone) => void];

export const says = (type: string): Happening => [
  type,
  (phone) => phone.say(type as Parameters<Phone['say']>[0]),
];

/** The page is kept from acting, or acts again. */
export const blocks: fc.Arbitrary<Happening> = fc.boolean().map((on) => [
  `block ${on}`,
  (phone) => {
    phone.blocked = on;
  },
]);

/** The wall clock is set; the sound stays where it is. @param most milliseconds, either way */
export const setsClock = (most: number): fc.Arbitrary<Happening> =>
  fc.integer({ min: -most, max: most }).map((by) => [
    `clock ${by}`,
    (phone) => {
      const { track } = phone;
      phone.wall += by;
      phone.scrub(track);
    },
  ]);

/** Somebody drags the place. Milliseconds of the track. */
export const scrubs = (min: number, max: number): fc.Arbitrary<Happening> =>
  fc.integer({ min, max }).map((to) => [`scrub ${to}`, (phone) => phone.scrub(to)]);
