/** What the weeks of one person have in common. */
import { back } from '../../../src/copy/back.ts';

export const LONDON = 'Europe/London';
export const TOKYO = 'Asia/Tokyo';
export const SHIN = { place: 'shin', side: 'left' } as const;

/** The latest week of every plot, under the plots' own titles. */
export const numbers = (
  minutes: string,
  longest: string,
  felt: string,
  who: string,
  load: string,
) => ({
  [back.minutes.title]: minutes,
  [back.longest.title]: longest,
  [back.felt.title]: felt,
  [back.guidance.title]: who,
  [back.load.title]: load,
});
