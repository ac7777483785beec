/** What the running screen says at one moment, from the session's view. Pure. */
import type { SessionView } from '../../app/session-contract.ts';
import { running } from '../../copy/running.ts';
import { inWords, left, length, place } from '../../copy/times.ts';
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

/** A rest of a segment as short as this is not worth telling: the change after it is. */
const REST_MS = 10_000;

/** The line below the countdown: "then WALK 1:00"; or that the sound is waited for. */
export function thenLine(view: SessionView): string {
  const { segment, next, lane } = view;
  if (view.late) return running.late;
  if (lane === 'cool-down') return running.nextEnd;
  const rest = segment === undefined ? 0 : segment.end - view.position;
  if (lane === 'one-more' && segment !== undefined && rest >= REST_MS)
    return running.next(segment.activity, left(ms(rest)));
  if (next === undefined) return running.nextEnd;
  return running.next(next.activity, left(ms(next.end - next.start)));
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

/**
 * What a screen reader is to say by itself: only what no voice says. It would talk over a cue,
 * so with sound it speaks of trouble alone; without sound it is the voice.
 */
export function announcement(view: SessionView): string {
  if (view.state === 'interrupted') return `${running.interruptedTitle}.`;
  if (view.state === 'stalled') return `${running.stalledTitle}.`;
  if (view.late) return `${running.late}.`;
  if (view.medium === 'sound') return '';
  if (view.state === 'holding') return running.holding;
  const { segment } = view;
  if (segment === undefined) return '';
  return `${segment.activity}, ${inWords(ms(segment.end - segment.start))}`;
}

/**
 * Widths of bold capitals in thousandths of the type size, as the browser measures them in our
 * typeface (Atkinson Hyperlegible Next).
 */
const CAPITALS: Readonly<Record<string, number>> = {
  ...{ A: 678, B: 643, C: 658, D: 688, E: 597, F: 566, G: 718, H: 701, I: 424, J: 561, K: 663 },
  ...{ L: 552, M: 858, N: 717, O: 746, P: 629, Q: 756, R: 650, S: 610, T: 607, U: 686, V: 644 },
  ...{ W: 886, X: 685, Y: 650, Z: 618 },
};
const WIDEST = 886;

/** Width of a headline's longest word in units of the type size: it decides how large it can be. */
export const emsOf = (headline: string): number =>
  Math.max(
    1,
    ...headline.split(' ').map((word) => {
      const widths = [...word].map((letter) => CAPITALS[letter] ?? WIDEST);
      return widths.reduce((sum, width) => sum + width, 0) / 1000;
    }),
  );
