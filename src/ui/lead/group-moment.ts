/** What the screen says of one group at one moment. Pure. */
import { leading as words } from '../../copy/lead-day.ts';
import { left } from '../../copy/times.ts';
import { turns } from '../../copy/words.ts';
import type { LeadNow } from '../../domain/lead/lead-at.ts';
import { ms } from '../../domain/units.ts';

/** Whether time goes on for all groups, and if not, why. */
export type Standing = 'going' | 'held' | 'trouble';

/** The lines of a group's block on the screen of a session that is led together. */
export interface GroupMoment {
  /** The great word: what the group does. One word, so that it is read from an arm's length. */
  readonly word: string;
  /** What goes before it, such as "easy". */
  readonly how: string;
  /** How long it lasts yet, what comes then. */
  readonly line: string;
  /** "Set 2 of 7", or nothing. */
  readonly turn: string;
}

/** A group in words: done, held up, yet to start, or in the middle of a step. */
export function groupMoment(now: LeadNow, standing: Standing): GroupMoment {
  if (now.state === 'done') return { word: words.done, how: '', line: '', turn: '' };
  if (standing !== 'going') return standingStill(now, standing);
  if (now.state === 'waits') {
    return { word: words.waits, how: '', line: words.startsIn(left(now.startsIn)), turn: '' };
  }
  const { segment, next } = now;
  const parts = segment.activity.split(' ');
  const time = left(now.left);
  const line =
    next === undefined
      ? words.last(time)
      : words.next(time, next.activity, left(ms(next.end - next.start)));
  return {
    word: (parts.at(-1) ?? '').toUpperCase(),
    how: parts.slice(0, -1).join(' '),
    line,
    turn: turns(segment.set, segment.round),
  };
}

/** Nobody is to read RUN while everyone stands. */
function standingStill(now: Exclude<LeadNow, { state: 'done' }>, standing: Standing): GroupMoment {
  const word = standing === 'held' ? words.hold : words.wait;
  if (now.state === 'waits') {
    return { word, how: '', line: words.startsLater(left(now.startsIn)), turn: '' };
  }
  const { segment } = now;
  return {
    word,
    how: '',
    line: words.heldAt(segment.activity, left(now.left)),
    turn: turns(segment.set, segment.round),
  };
}
