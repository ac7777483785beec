/** One scale in our own words for target, running and rating, by whole points from 0 to 10. */
const BANDS: readonly (readonly [upTo: number, words: string])[] = [
  [0, 'rest'],
  [2, 'you could sing'],
  [4, 'you chat freely, breath calm'],
  [6, 'whole sentences, breath deeper'],
  [8, 'a few words at a time'],
  [9, 'a single word'],
  [10, 'all you have'],
];

/**
 * Effort in words, for a rating from 0 to 10. A target in percent is ten times the rating (common
 * practice, no source). Halves count up; anything outside the scale is taken as its nearest end.
 */
export function effortWords(rating: number): string {
  const point = Math.min(10, Math.max(0, Math.round(rating)));
  return BANDS.find(([upTo]) => point <= upTo)?.[1] ?? '';
}

/** A rating in number and words: "5 of 10: whole sentences, breath deeper". */
export const effortOfTen = (rating: number): string => `${rating} of 10: ${effortWords(rating)}`;
