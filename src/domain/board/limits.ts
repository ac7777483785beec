/**
 * The numbers of the board that are not those of advice (`advice/rules.ts`) or of the review
 * (`review/limits.ts`). None is a bound of safety, and none replaces a leader's own eyes.
 */
export interface BoardLimit {
  readonly value: number;
  readonly unit: 'days' | 's' | '%' | 'people' | 'times';
  /** What it decides, and why there is such a number. */
  readonly reason: string;
  /** Where it comes from, or `common practice, no source`. */
  readonly from: string;
}

const NONE = 'common practice, no source';

/** Every such number with its reason, so that it can be disagreed with. */
export const BOARD_LIMITS = {
  silent: {
    value: 14,
    unit: 'days',
    reason:
      'Who was heard before and not for so long is asked how they are: one quiet week is a week',
    from: NONE,
  },
  stillFresh: {
    value: 14,
    unit: 'days',
    reason: 'How sessions felt is worth a word while the last that was told is no older than this',
    from: NONE,
  },
  finished: {
    value: 10,
    unit: 's',
    reason: 'A session that ended so close to its end was gone through: as the player takes it',
    from: NONE,
  },
  fewest: {
    value: 3,
    unit: 'people',
    reason:
      'Of fewer nothing is said of how it felt: one person would be known by it, and decide for all',
    from: `${NONE}; small cells are withheld in published tables, mostly below 3 to 10`,
  },
  leastShare: {
    value: 100 / 3,
    unit: '%',
    reason:
      'Of a group, so many have to be heard before its plan is changed: who answers is not everybody',
    from: NONE,
  },
  half: {
    value: 50,
    unit: '%',
    reason:
      'Repeated and eased for all is what half of those who told would need; the others get a word each',
    from: NONE,
  },
  niggleShare: {
    value: 25,
    unit: '%',
    reason:
      'So many of those who told with a niggle or a sign are no chance: the week is not built upon',
    from: NONE,
  },
  niggleFewest: {
    value: 2,
    unit: 'people',
    reason: 'One person’s niggle is a word with that person',
    from: NONE,
  },
  easierShare: {
    value: 200 / 3,
    unit: '%',
    reason:
      'More is asked of all only when clearly most found it easier than meant, and nobody harder',
    from: NONE,
  },
  step: {
    value: 10,
    unit: '%',
    reason: 'One step up or down in the length of the hard steps, in whole quarters of a minute',
    from: NONE,
  },
  mostSteps: {
    value: 8,
    unit: 'times',
    reason:
      'No more steps down than this are taken at once, and no hard step becomes shorter than half',
    from: NONE,
  },
} as const satisfies Readonly<Record<string, BoardLimit>>;

/** What a limit is asked for by. */
export type BoardLimitName = keyof typeof BOARD_LIMITS;

/** The number of a limit. */
export const boardLimit = (name: BoardLimitName): number => BOARD_LIMITS[name].value;
