/** What the running screen says at one moment, from the session's view. Pure. */
import type { SessionView } from '../../app/contract.ts';
import { running } from '../../copy/running.ts';
import { left, length, place } from '../../copy/times.ts';
import { PART, turns } from '../../copy/words.ts';
import { ms } from '../../domain/units.ts';

/** The great word: the activity, or what stands in its way. */
export function headline(view: SessionView): string {
  if (view.state === 'finished') return running.finishedTitle;
  if (view.state === 'ended-early') return running.endedTitle;
  if (view.state === 'interrupted') return running.interruptedTitle;
  if (view.state === 'stalled') return running.stalledTitle;
  if (view.state === 'holding') return running.holdingTitle;
  if (view.lane === 'one-more') return running.oneMoreTitle;
  if (view.lane === 'cool-down') return running.coolDownTitle;
  return (view.segment?.activity ?? '').toUpperCase();
}

/** The line below the countdown: "then WALK 1:00". */
export function thenLine(view: SessionView): string {
  if (view.lane === 'cool-down') return running.nextEnd;
  const after = view.lane === 'one-more' ? view.segment : view.next;
  if (after === undefined) return running.nextEnd;
  const upTo =
    view.lane === 'one-more' ? ms(after.end - view.position) : ms(after.end - after.start);
  return running.next(after.activity, left(upTo));
}

/** Part and turn: "Main set. Set 3 of 7". */
export function whereLine(view: SessionView): string {
  const segment = view.segment;
  if (segment === undefined) return '';
  const turn = turns(segment.set, segment.round);
  return turn === '' ? PART[segment.part] : `${PART[segment.part]}. ${turn}`;
}

/** "12:31 of 31 min". */
export const placeLine = (view: SessionView): string =>
  running.of(place(view.position), length(view.timeline?.total ?? ms(0)));

/** What a hold waits with: "Then RUN, 0:48 left of it." */
export function holdingLine(view: SessionView): string {
  const segment = view.segment;
  if (segment === undefined) return '';
  return running.holdingBody(segment.activity, left(ms(segment.end - view.position)));
}

/** Longest word of a headline, in letters: it decides how large the headline can be. */
export const widestWord = (text: string): number =>
  Math.max(1, ...text.split(' ').map((word) => word.length));
