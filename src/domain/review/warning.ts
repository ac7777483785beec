import type { Detail } from '../programme/problem.ts';
import type { LimitName } from './limits.ts';

/** What can be worth another look, and the thresholds that decide it. */
export const WARNING_LIMITS = {
  'warm-up-none': ['easyWalk'],
  'warm-up-short': ['easyWalk'],
  'cool-down-none': ['easyWalk'],
  'cool-down-short': ['easyWalk'],
  'main-short': ['mainShare'],
  'no-recovery': [],
  'sessions-over': [],
  'ends-apart': ['together'],
  'session-longer': ['sessionGrowth', 'sessionFloor', 'lookBack'],
  'run-longer': ['stretchGrowth', 'stretchFloor'],
  'run-first': ['stretchFloor'],
  behind: ['behind'],
  'target-jump': ['targetRise', 'lookBack'],
  'step-jump': ['stepRise', 'hardFrom'],
  'not-lighter': ['lighter', 'lookBack', 'arrivalWeeks'],
  'never-continuous': [
    'continuous',
    'mostlyRunning',
    'nearlyAllRunning',
    'lastWeeks',
    'arrivalWeeks',
  ],
  'distance-short': [
    'eventGrowth',
    'eventGrowthWalking',
    'mostlyRunning',
    'runningPace',
    'walkingPace',
    'arrivalWeeks',
  ],
} as const satisfies Readonly<Record<string, readonly LimitName[]>>;

/** What may be worth another look. */
export type WarningCode = keyof typeof WARNING_LIMITS;
/** All of them. */
export const WARNING_CODES = Object.keys(WARNING_LIMITS) as readonly WarningCode[];

/** Something to look at again; the programme can be used as it is. */
export interface ProgrammeWarning {
  readonly code: WarningCode;
  /** `weeks[1].sessions.wren[0]`, `weeks[1].effort` or `weeks[1]`: places in lists from 0. */
  readonly path: string;
  readonly detail?: Detail;
}

/** A warning whose place is known by who asked. */
export type Found = Omit<ProgrammeWarning, 'path'>;
