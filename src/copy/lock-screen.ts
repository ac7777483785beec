import type { Segment } from '../domain/timeline/timeline.ts';
import { type Ms, ms } from '../domain/units.ts';
import { lower } from './grammar.ts';
import { left } from './times.ts';
import { turns } from './words.ts';

const lengthOf = (segment: Segment): Ms => ms(segment.end - segment.start);

const named = (segment: Segment): string =>
  `${segment.activity.toUpperCase()} ${left(lengthOf(segment))}`;

const counted = (segment: Segment): string => {
  const said = turns(segment.set, segment.round);
  return said === '' ? '' : ` · ${lower(said)}`;
};

/** What the lock screen says of a session, one title for each segment. */
export const lockScreen = {
  /** "RUN 1:30 · set 3 of 7". */
  segment: (segment: Segment): string => `${named(segment)}${counted(segment)}`,
  oneMore: (segment: Segment): string => `ONE MINUTE MORE · ${segment.activity}`,
  /** "then WALK 1:00". */
  next: (next: Segment | undefined): string => (next ? `then ${named(next)}` : 'then the end'),
  /** While a start that was agreed ahead is waited for. */
  startsAt: (time: string): string => `Starts at ${time}`,
  holding: 'ON HOLD',
  waiting: 'WAITING',
  /** What comes when the hold is over. */
  goesOn: (segment: Segment): string => `then ${segment.activity} goes on`,
  finished: 'DONE',
  ended: 'ENDED',
  pocketCheck: 'SOUND CHECK',
} as const;
