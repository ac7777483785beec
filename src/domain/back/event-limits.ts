/**
 * Every number that an estimate of the event rests on, in one place. None is a promise: they make
 * the range that is shown as wide as what is not known.
 */

/** How far a number can be leaned on. */
export type Standing = 'published' | 'common practice';

/** A number that an estimate assumes. */
export interface Assumed {
  readonly value: number;
  readonly unit: 's per km' | 's' | '%' | 'm' | 'sessions' | 'weeks' | 'power';
  readonly standing: Standing;
  /** Where the number comes from, or whose it is. */
  readonly from: string;
}

const RIEGEL =
  'Riegel 1981, Athletic records and human endurance, American Scientist 69(3):285-90; range as ' +
  'an encyclopaedia gives it, 3.5 to 230 min';

/** Everything that an estimate of the event assumes. */
export const EVENT_LIMITS = {
  walkFast: {
    value: 640,
    unit: 's per km',
    standing: 'published',
    from: 'Brisk walking begins at 3.5 mph, 5.6 km/h: Compendium of Physical Activities 2024, code 17200',
  },
  walkSlow: {
    value: 900,
    unit: 's per km',
    standing: 'published',
    from: 'Walking at 2.5 mph, 4 km/h: Compendium of Physical Activities 2024, code 17170',
  },
  runFast: {
    value: 420,
    unit: 's per km',
    standing: 'common practice',
    from: 'Few who run in turn with walking keep more than 7:00 per km over 5 km',
  },
  runSlow: {
    value: 526,
    unit: 's per km',
    standing: 'published',
    from: '1.9 m/s: slower than that people outdoors walk; between 1.9 and 3.0 m/s they mix (Baker, arXiv 2501.00720)',
  },
  /** Either side of a pace that a person gave: wind, heat, crowd, the day. */
  ownPaceSpread: {
    value: 5,
    unit: '%',
    standing: 'common practice',
    from: 'Days differ by about that much',
  },
  /** Sessions with a distance that are looked at: the latest so many, within so many weeks. */
  measuredSessions: {
    value: 6,
    unit: 'sessions',
    standing: 'common practice',
    from: 'Two or three weeks of training',
  },
  measuredWeeks: {
    value: 8,
    unit: 'weeks',
    standing: 'common practice',
    from: 'What is longer ago says little of today',
  },
  /** Shorter ones are a lap or a mistake. */
  measuredMetres: {
    value: 1000,
    unit: 'm',
    standing: 'common practice',
    from: 'A kilometre at the least carries over to five',
  },
  measuredFaster: {
    value: 5,
    unit: '%',
    standing: 'common practice',
    from: 'On the day, with others, most are a little faster',
  },
  measuredSlower: {
    value: 10,
    unit: '%',
    standing: 'common practice',
    from: 'The event is often longer than what was measured, and legs tire',
  },
  trialShortest: { value: 210, unit: 's', standing: 'published', from: RIEGEL },
  trialLongest: { value: 13_800, unit: 's', standing: 'published', from: RIEGEL },
  trialPower: { value: 1.06, unit: 'power', standing: 'published', from: RIEGEL },
  trialFaster: {
    value: 2,
    unit: '%',
    standing: 'common practice',
    from: 'A trial alone is rarely the best that a person can do',
  },
  /** More than faster: the formula was fitted to records and trained runners. */
  trialSlower: {
    value: 8,
    unit: '%',
    standing: 'common practice',
    from: 'It says too little for most as the distance grows: Vickers and Vertosick 2016, BMC Sports Sci Med Rehabil 8:26, from the half marathon on; the size is ours',
  },
} as const satisfies Readonly<Record<string, Assumed>>;
