import { REVIEW_LIMITS } from '../review/limits.ts';

/**
 * Every number that advice, the finding of a group and "now" lean on, in one place. None is a
 * bound of safety, and the app never says that someone is fit to exercise.
 */
export interface Rule {
  readonly value: number;
  readonly unit: 'days' | 'weeks' | 's' | '%' | 'points of 10' | 'sessions' | 'times';
  /** What it decides, and why there is such a number. */
  readonly reason: string;
  /** Where it comes from, or `common practice, no source`. */
  readonly from: string;
}

const NONE = 'common practice, no source';

const BARNES =
  'Barnes 2017, Sports Med Open 3:38, doi 10.1186/s40798-017-0105-0: runners rated easy days ' +
  'about a point above what the coach meant (2.4 against 1.3)';
const SCALE =
  'US Physical Activity Guidelines 2018, appendix 1: 5-6 of 10 is moderate, 7-8 vigorous, so a ' +
  'class is two points wide';
const SCREENING =
  'Riebe et al. 2015, Med Sci Sports Exerc 47(11):2473-9: who has not been active regularly ' +
  'starts with light to moderate effort';

/** Every number that advice goes by, with its unit, its reason and where it is from. */
export const ADVICE_RULES = {
  // ---- what counts ---------------------------------------------------------------------------
  counts: {
    value: 50,
    unit: '%',
    reason: 'Of a session that ended early, so much makes it one of the week: most of it was done',
    from: NONE,
  },
  countsAnyway: {
    value: 600,
    unit: 's',
    reason: 'Asked instead of a share where the session is no longer in the programme',
    from: NONE,
  },
  cutShort: {
    value: 75,
    unit: '%',
    reason:
      'A session that ended before this was cut short: the cool-down alone is less than a quarter',
    from: NONE,
  },

  // ---- felt against target -------------------------------------------------------------------
  ordinary: {
    value: 1,
    unit: 'points of 10',
    reason: 'A gap of so much is ordinary and changes nothing',
    from: BARNES,
  },
  harder: {
    value: 2,
    unit: 'points of 10',
    reason: 'So far from the target, up or down, a session was of another class than it was meant',
    from: SCALE,
  },
  muchHarder: {
    value: 3,
    unit: 'points of 10',
    reason: 'So far above, repeating the same will hardly bring it back',
    from: NONE,
  },
  latest: {
    value: 3,
    unit: 'sessions',
    reason: 'So many of the latest are looked at: about a week',
    from: NONE,
  },
  agree: {
    value: 2,
    unit: 'sessions',
    reason: 'So many of them have to say the same. One alone may be a bad night or a hot day',
    from: NONE,
  },
  lookBack: {
    value: 21,
    unit: 'days',
    reason: 'Sessions further back say little about today',
    from: NONE,
  },

  // ---- rest ----------------------------------------------------------------------------------
  hard: {
    value: 7,
    unit: 'points of 10',
    reason: 'From here a session is a hard one',
    from: SCALE,
  },
  hardDays: {
    value: 2,
    unit: 'days',
    reason: 'So many hard days running get a word: the next one is for rest',
    from: NONE,
  },

  // ---- niggles and warning signs -------------------------------------------------------------
  niggleAgain: {
    value: 14,
    unit: 'days',
    reason: 'The same niggle twice within so many days is never answered with going on as before',
    from: NONE,
  },
  niggleOften: {
    value: 3,
    unit: 'times',
    reason: 'Back so often in that time, it belongs to somebody who can look at it, however slight',
    from: NONE,
  },
  niggleRest: {
    value: 3,
    unit: 'days',
    reason: 'Ordinary soreness is gone in two or three days. What is not is something else',
    from: NONE,
  },
  niggleEase: {
    value: 7,
    unit: 'days',
    reason: 'After a niggle that changed how one moves, so long in gentler sessions',
    from: NONE,
  },
  afterSign: {
    value: 28,
    unit: 'days',
    reason: 'For so long after a warning sign, whatever a doctor said, no step up is proposed',
    from: NONE,
  },

  // ---- gaps ----------------------------------------------------------------------------------
  away: {
    value: 7,
    unit: 'days',
    reason: 'So many days without a session change nothing: go on where you were',
    from: NONE,
  },
  backPer: {
    value: 7,
    unit: 'days',
    reason: 'After that, a week back for every so many days more, begun or whole',
    from: `${NONE}; that fitness is lost within four weeks is measured in trained people only (Mujika and Padilla 2000, Sports Med 30(2):79-87, from memory)`,
  },
  illness: {
    value: 3,
    unit: 'days',
    reason: 'An illness of so many days or more takes one week further back',
    from: NONE,
  },
  awayAtEvent: {
    value: 14,
    unit: 'days',
    reason: 'In the week of the event, which is lighter anyway, so many days away change nothing',
    from: NONE,
  },
  mostly: {
    value: 4,
    unit: 'days',
    reason: 'A week with so many days of pause was not missed, it was a pause',
    from: 'More than half of seven',
  },
  lateDay: {
    value: 4,
    unit: 'days',
    reason:
      'Who began on this day of a week (Monday is 1) or later is not asked where the rest of it is',
    from: NONE,
  },

  // ---- the event -----------------------------------------------------------------------------
  eventNear: {
    value: 14,
    unit: 'days',
    reason:
      'So near the event more is not proposed, nor a week repeated for being missed: what is done now hardly shows by then',
    from: `${NONE}; lighter weeks before an event are measured in trained racers (Bosquet et al. 2007, Med Sci Sports Exerc 39(8):1358-65, from memory)`,
  },

  // ---- stepping up ---------------------------------------------------------------------------
  runLonger: {
    value: REVIEW_LIMITS.stretchGrowth.value,
    unit: '%',
    reason: 'The first run in another group may be so much longer than the longest done lately',
    from: `contested: ${REVIEW_LIMITS.stretchGrowth.from}`,
  },
  runLongerFloor: {
    value: REVIEW_LIMITS.stretchFloor.value,
    unit: 's',
    reason: 'Or longer by this: short runs grow in steps that are large in percent',
    from: NONE,
  },
  runsBefore: {
    value: 30,
    unit: 'days',
    reason: 'Lately means within so many days',
    from: `contested: ${REVIEW_LIMITS.stretchGrowth.from}`,
  },

  // ---- finding a group -----------------------------------------------------------------------
  firstWeeks: {
    value: 2,
    unit: 'weeks',
    reason: 'What a group asks at the start is what these weeks ask',
    from: NONE,
  },
  lastWeeks: {
    value: REVIEW_LIMITS.lastWeeks.value,
    unit: 'weeks',
    reason: 'Where a group arrives is what these weeks ask: the last alone is often lighter',
    from: NONE,
  },
  firstRun: {
    value: REVIEW_LIMITS.stretchFloor.value,
    unit: 's',
    reason: 'Runs up to this can be somebody’s first, with at least as much walking between them',
    from: NONE,
  },
  firstRunShare: {
    value: 50,
    unit: '%',
    reason: 'Of the main set, at most so much is running where the runs are somebody’s first',
    from: NONE,
  },
  firstRunWalk: {
    value: 1200,
    unit: 's',
    reason: 'Who walks briskly for so long may try first runs',
    from: NONE,
  },
  walkPerRun: {
    value: 2,
    unit: 'times',
    reason: 'Who runs for a while can walk briskly for at least so many times as long',
    from: NONE,
  },
  feetPerWalk: {
    value: 4,
    unit: 'times',
    reason: 'A session, most of it easy, can be so many times as long as the longest brisk walk',
    from: NONE,
  },
  feetLonger: {
    value: REVIEW_LIMITS.sessionGrowth.value,
    unit: '%',
    reason: 'The second week’s walking, and its whole session, may be so much longer',
    from: `contested: ${REVIEW_LIMITS.sessionGrowth.from}`,
  },
  feetLongerFloor: {
    value: REVIEW_LIMITS.sessionFloor.value,
    unit: 's',
    reason: 'Or longer by this',
    from: NONE,
  },
  gentleShare: {
    value: 50,
    unit: '%',
    reason: 'Who should start gently is asked at first for at most so much of what they can do',
    from: NONE,
  },
  gentleBelow: {
    value: 7,
    unit: 'points of 10',
    reason: 'And for nothing as hard as this',
    from: `${SCREENING}; vigorous from 7: US Physical Activity Guidelines 2018, appendix 1`,
  },
  continuous: {
    value: REVIEW_LIMITS.continuous.value,
    unit: 's',
    reason: 'A group that runs so long without a walk in the end is one that runs on',
    from: NONE,
  },
  nearlyAll: {
    value: REVIEW_LIMITS.nearlyAllRunning.value,
    unit: '%',
    reason: 'And so is one whose main sets are so much running',
    from: NONE,
  },
} as const satisfies Readonly<Record<string, Rule>>;

/** The name of a number above. */
export type RuleId = keyof typeof ADVICE_RULES;

/** The number of a rule. */
export const rule = (id: RuleId): number => ADVICE_RULES[id].value;
