/**
 * Every threshold of the review, in one place. They decide what is worth another look; none is a
 * bound of safety, and the evidence gives none.
 */

/** How far a number can be leaned on. */
export type Standing =
  /** Guidance of a professional body or a clinic. */
  | 'guidance'
  /** Measured, but in other people or other units, or other studies do not find it. */
  | 'contested'
  /** What leaders do; no source. */
  | 'common practice';

/** A number that a check goes by. */
export interface Limit {
  readonly value: number;
  readonly unit: 's' | '%' | 'points of 10' | 'weeks' | 's per km';
  readonly standing: Standing;
  /** Where the number comes from, or whose it is. */
  readonly from: string;
}

const FRANDSEN =
  'Frandsen et al. 2025, Br J Sports Med 59(17):1203-10, doi 10.1136/bjsports-2024-109380: a ' +
  'single run against the longest of the last 30 days, in 5,205 experienced runners, by distance';

/** Every threshold of the checks. None is a limit of safety. */
export const REVIEW_LIMITS = {
  /** Main sets that end further apart leave people waiting. */
  together: {
    value: 30,
    unit: 's',
    standing: 'common practice',
    from: 'How long a group waits without getting cold or cross',
  },
  /** Walking before anything faster, and after it. */
  easyWalk: {
    value: 300,
    unit: 's',
    standing: 'guidance',
    from: 'American College of Sports Medicine: 5-10 min of light to moderate activity; Mayo Clinic: 5 and 5 min',
  },
  /** Of the session that the main part should fill. */
  mainShare: {
    value: 50,
    unit: '%',
    standing: 'common practice',
    from: 'A session that is mostly warm-up and cool-down is meant otherwise',
  },
  /** A session longer than this against the longest of the look back. */
  sessionGrowth: {
    value: 30,
    unit: '%',
    standing: 'contested',
    from:
      'Nielsen et al. 2014, J Orthop Sports Phys Ther 44(10):739-47: 874 novices, weekly distance, ' +
      'over 30 % against under 10 %: no difference overall, injuries of one kind HR 1.59 (0.96-2.66), P .07; ' +
      'against it Buist et al. 2008, Am J Sports Med 36:33-9: a graded programme changed nothing',
  },
  /** Growth up to this is not asked about, whatever it is in percent. */
  sessionFloor: {
    value: 300,
    unit: 's',
    standing: 'common practice',
    from: 'A set or a longer warm-up more',
  },
  /** Sessions and targets are compared with the weeks that lie so far back. */
  lookBack: {
    value: 4,
    unit: 'weeks',
    standing: 'common practice',
    from: 'The whole weeks in the 30 days that Frandsen et al. 2025 looked back over',
  },
  /** A running stretch longer than this against the longest before: two of Frandsen's bands begin at 10 and here. */
  stretchGrowth: { value: 30, unit: '%', standing: 'contested', from: FRANDSEN },
  /** From runs of a minute or two, sensible steps are large in percent. */
  stretchFloor: {
    value: 90,
    unit: 's',
    standing: 'common practice',
    from: 'From one minute to two, or from two to three and a half, is how runs begin',
  },
  /** A group that does less than the one below it, by more than this. */
  behind: {
    value: 60,
    unit: 's',
    standing: 'common practice',
    from: 'Less is not noticed on the path',
  },
  /** A week's target above the highest of the look back. */
  targetRise: {
    value: 1,
    unit: 'points of 10',
    standing: 'common practice',
    from:
      'Below a point nothing is told apart: runners rated easy days about one point above what the ' +
      'coach meant, Barnes 2017, Sports Med Open 3:38, doi 10.1186/s40798-017-0105-0',
  },
  /** The hardest step above the hardest of all weeks before: one class of the scale is two points wide. */
  stepRise: {
    value: 2,
    unit: 'points of 10',
    standing: 'common practice',
    from: 'A class of the 0-10 scale is two points wide (5-6 moderate, 7-8 vigorous): US Physical Activity Guidelines 2018, appendix 1; not to leave one out is common practice',
  },
  /** Steps below this are not asked about. */
  hardFrom: {
    value: 7,
    unit: 'points of 10',
    standing: 'guidance',
    from: 'Vigorous begins at 7 of 10: US Physical Activity Guidelines 2018, appendix 1',
  },
  /** How much less the week before the event holds than the fullest of the look back. */
  lighter: {
    value: 20,
    unit: '%',
    standing: 'common practice',
    from: 'Studies of lighter weeks are of trained racers: Bosquet et al. 2007, Med Sci Sports Exerc 39(8):1358-65 (from memory)',
  },
  /** A programme shorter than this is not asked where it arrives. */
  arrivalWeeks: {
    value: 4,
    unit: 'weeks',
    standing: 'common practice',
    from: 'Shorter ones are a piece of a programme',
  },
  /** What a group does in the end is what it does in these weeks. */
  lastWeeks: {
    value: 2,
    unit: 'weeks',
    standing: 'common practice',
    from: 'The week of the event alone is lighter than usual',
  },
  /** A group mostly runs when it runs this much of its main parts in the last weeks. */
  mostlyRunning: { value: 50, unit: '%', standing: 'common practice', from: 'The word itself' },
  /** A group below the most demanding one is on its way to running on when its walks have nearly gone. */
  nearlyAllRunning: {
    value: 90,
    unit: '%',
    standing: 'common practice',
    from: 'A minute of walking in ten; with more walks, running and walking in turn is the aim itself',
  },
  /** Running so long without a walk is running on. */
  continuous: {
    value: 1200,
    unit: 's',
    standing: 'common practice',
    from: 'Twenty minutes, about half of a first 5 km',
  },
  /** The event may be so much longer than the longest session of a group that mostly runs. */
  eventGrowth: {
    value: 30,
    unit: '%',
    standing: 'contested',
    from: `${FRANDSEN}; the event is a run like others`,
  },
  /** The same for a group that mostly walks. */
  eventGrowthWalking: {
    value: 50,
    unit: '%',
    standing: 'common practice',
    from: 'Walking is borne longer than running',
  },
  /** Assumed where distance follows from time. */
  runningPace: {
    value: 480,
    unit: 's per km',
    standing: 'common practice',
    from: '8:00 per km is 7.5 km/h: a little above 7.2 km/h, where people change from walking to running by themselves (PMC8629136)',
  },
  walkingPace: {
    value: 720,
    unit: 's per km',
    standing: 'common practice',
    from: '12:00 per km is 5 km/h, 3.1 mph: the walking of the Compendium of Physical Activities 2024, code 17190 (2.8-3.4 mph)',
  },
} as const satisfies Readonly<Record<string, Limit>>;

/** The name of a threshold. */
export type LimitName = keyof typeof REVIEW_LIMITS;
