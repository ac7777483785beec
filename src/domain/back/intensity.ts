import type { Activity } from '../programme/plan.ts';

/** How hard an activity counts against the guidance. `light` counts for nothing there. */
export type Intensity = 'light' | 'moderate' | 'vigorous';

/**
 * Moderate is 3.0 to 5.9 MET, vigorous 6.0 and more. A MET is the energy that sitting still takes.
 * Source: WHO guidelines on physical activity 2020 (Bull et al. 2020, Br J Sports Med 54:1451-62,
 * doi 10.1136/bjsports-2020-102955).
 */
export function intensityOf(met: number): Intensity {
  if (met >= 6) return 'vigorous';
  return met >= 3 ? 'moderate' : 'light';
}

/** The energy that an activity takes, by the Compendium. */
export interface Energy {
  readonly met: number;
  /** Code in the Compendium of Physical Activities; none for standing. */
  readonly code?: string;
  /** What the Compendium says there. */
  readonly description: string;
  readonly from: string;
}

const OF_2024 =
  'Herrmann et al. 2024, Adult Compendium of Physical Activities, J Sport Health Sci 13(1):6-12, ' +
  'doi 10.1016/j.jshs.2023.10.010';
const OF_2011 =
  'Ainsworth et al. 2011, Compendium of Physical Activities, Med Sci Sports Exerc 43(8):1575-81';

const energy = (met: number, code: string, description: string, from = OF_2024): Energy => ({
  met,
  code,
  description,
  from,
});

/**
 * Which activity counts as what: the one place where that is written down. The Compendium goes by
 * speed and a plan does not say one, so which code a word stands for is common practice, no
 * source; the paces that are assumed elsewhere (12:00 and 8:00 per km) are those of `walk` and
 * `run`. Walking and running are never counted as one mixed activity: 12010, jogging and walking
 * in turn, stands at 6.0 on the edge of vigorous and would count every walking minute twice.
 */
export const ENERGY: Readonly<Record<Activity, Energy>> = {
  stand: {
    met: 1.3,
    description: 'standing',
    from: 'Below 3 by any table; the figure from memory',
  },
  stretch: energy(2.3, '02101', 'stretching, mild', `${OF_2011}; from memory`),
  'slow walk': energy(2.8, '17152', 'walking, 2.0 mph', OF_2011),
  'easy walk': energy(3.0, '17170', 'walking, 2.5 mph, firm level'),
  walk: energy(3.8, '17190', 'walking, 2.8-3.4 mph'),
  'brisk walk': energy(4.8, '17200', 'walking, 3.5-3.9 mph, brisk'),
  'easy jog': energy(6.5, '12028', 'running, 4-4.2 mph'),
  jog: energy(7.5, '12020', 'jogging, at one’s own pace'),
  run: energy(7.8, '12029', 'running, 4.3-4.8 mph'),
  'steady run': energy(7.8, '12029', 'running, 4.3-4.8 mph'),
  'strong run': energy(8.5, '12030', 'running, 5.0-5.2 mph'),
  'fast run': energy(9.3, '12050', 'running, 6-6.3 mph'),
};
