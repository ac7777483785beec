import type { Ms, Percent } from '../units.ts';

/** What the body does in a step. The words are the ones that may be written in a plan. */
export const ACTIVITIES = [
  'stand',
  'stretch',
  'slow walk',
  'easy walk',
  'walk',
  'brisk walk',
  'easy jog',
  'jog',
  'run',
  'steady run',
  'strong run',
  'fast run',
] as const;
/** One of these activities. */
export type Activity = (typeof ACTIVITIES)[number];

/** The three parts of a session, in their order. */
export const PARTS = ['warm-up', 'main', 'cool-down'] as const;
/** One of these parts. */
export type Part = (typeof PARTS)[number];

/** One activity for one length of time. */
export interface Step {
  readonly kind: 'step';
  readonly duration: Ms;
  readonly activity: Activity;
  /** Overrides the activity's own effort. */
  readonly effort?: Percent;
  /** Shown and captioned, never spoken. */
  readonly note?: string;
}

/** Some items over again: sets, or rounds of sets. */
export interface Repeat {
  readonly kind: 'repeat';
  readonly count: number;
  readonly items: readonly Item[];
}

/** What a part is made of. */
export type Item = Step | Repeat;

/** One session as its three parts. Warm-up and cool-down may be empty; main never is. */
export type Plan = Readonly<Record<Part, readonly Item[]>>;

/** Effort that an activity stands for, which is also its height in the landscape strip. */
export const DEFAULT_EFFORT: Readonly<Record<Activity, Percent>> = {
  stand: 0,
  stretch: 10,
  'slow walk': 20,
  'easy walk': 25,
  walk: 30,
  'brisk walk': 45,
  'easy jog': 50,
  jog: 55,
  run: 65,
  'steady run': 65,
  'strong run': 80,
  'fast run': 90,
};

/** Jog and faster: what `runSeconds` counts. */
export const isRunning = (activity: Activity): boolean =>
  activity.endsWith('jog') || activity.endsWith('run');
