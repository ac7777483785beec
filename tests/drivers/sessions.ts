import type { Activity, Part } from '../../src/domain/programme/plan.ts';
import { DEFAULT_EFFORT } from '../../src/domain/programme/plan.ts';
import { screenLayout } from '../../src/domain/session/screen-layout.ts';
import type { About, Score } from '../../src/domain/session/session.ts';
import type { Segment, Timeline } from '../../src/domain/timeline/timeline.ts';
import { ms } from '../../src/domain/units.ts';

/** A timeline from parts, activities and seconds. */
export function timelineOf(...rows: readonly [Part, Activity, number][]): Timeline {
  let at = 0;
  const segments = rows.map(([part, activity, seconds], index): Segment => {
    const start = ms(at);
    at += seconds * 1000;
    return { index, start, end: ms(at), part, activity, effort: DEFAULT_EFFORT[activity] };
  });
  return { segments, total: ms(at) };
}

/** Warm-up 60 s; three times run 30 s and walk 60 s; cool-down 60 s: 390 s in all. */
export const EASY_DAY = timelineOf(
  ['warm-up', 'easy walk', 60],
  ['main', 'run', 30],
  ['main', 'walk', 60],
  ['main', 'run', 30],
  ['main', 'walk', 60],
  ['main', 'run', 30],
  ['main', 'walk', 60],
  ['cool-down', 'easy walk', 60],
);

/** No warm-up, no cool-down: walk 60 s, run 60 s. */
export const BARE_DAY = timelineOf(['main', 'walk', 60], ['main', 'run', 60]);

export const scoreOf = (timeline: Timeline): Score => ({
  timeline,
  layout: screenLayout(timeline),
});

/** The same behind a wait: ten minutes of lead-in, words for five seconds at five minutes and at one. */
export const waitScoreOf = (timeline: Timeline): Score => ({
  timeline,
  layout: screenLayout(timeline, {
    length: ms(600_000),
    sounds: [-300, -60].map((s) => ({ start: ms(s * 1000), end: ms((s + 5) * 1000) })),
  }),
});

/** 7 March 2027, 09:00 UTC, a Sunday. */
export const NINE_O_CLOCK = Date.UTC(2027, 2, 7, 9);

export const ABOUT: About = {
  id: 'heron-1',
  purpose: 'session',
  programme: { id: 'heron-loop-spring', revision: 1, title: 'Six weeks to the Heron Loop' },
  group: { id: 'wren', name: 'Wren' },
  week: 1,
  session: 1,
  plan: '1 min easy walk; 3 x (30 s run, 1 min walk); 1 min easy walk',
  target: 50,
  startedAt: NINE_O_CLOCK,
  offsetMinutes: 0,
  zone: 'Europe/London',
  localDate: '2027-03-07',
};
