import { type Ms, ms } from '../units.ts';

/**
 * What a week of an adult should hold at least, and the upper end that is worth more: 150 to 300
 * minutes of moderate activity, or 75 to 150 of vigorous, or a mix in which a vigorous minute
 * counts as two. Every minute counts, however short the bout.
 *
 * Source: WHO guidelines on physical activity and sedentary behaviour 2020 (Bull et al. 2020,
 * Br J Sports Med 54:1451-62, doi 10.1136/bjsports-2020-102955). For adults, also older ones; children have another.
 */
export const GUIDANCE = {
  from: ms(150 * 60_000),
  to: ms(300 * 60_000),
  vigorousCountsAs: 2,
} as const;

/** Moderate and vigorous time in the one measure of the guidance: moderate time. */
export const asModerate = ({ moderate, vigorous }: { moderate: Ms; vigorous: Ms }): Ms =>
  ms(moderate + GUIDANCE.vigorousCountsAs * vigorous);

/** Where a week stands to what is advised. */
export type AgainstGuidance = 'below' | 'within' | 'above';

/** Where a week stands. Both ends belong to what is asked for. */
export function againstGuidance(counted: Ms): AgainstGuidance {
  if (counted < GUIDANCE.from) return 'below';
  return counted > GUIDANCE.to ? 'above' : 'within';
}
