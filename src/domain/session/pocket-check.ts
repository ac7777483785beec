import type { Moment } from './session.ts';

/** What a pocket check has seen so far. Places are the track's, times the wall clock's. */
export interface PocketWatch {
  readonly startedAt: number;
  readonly moved: Moment;
  readonly longestSilenceMs: number;
  readonly hiddenSince?: number;
  readonly hiddenMs: number;
  /** "12.3 hidden": seconds from the start, and what the phone did. */
  readonly events: readonly string[];
}

const EVENTS_KEPT = 60;

/** A check that begins at a moment, nothing seen yet. */
export const beginWatch = (at: Moment): PocketWatch => ({
  startedAt: at.wall,
  moved: at,
  longestSilenceMs: 0,
  hiddenMs: 0,
  events: [],
});

/**
 * One more moment of a pocket check.
 *
 * @param signal what the phone did; `tick` is only time passing
 */
export function watchPocket(watch: PocketWatch, signal: string, at: Moment): PocketWatch {
  const forward = at.track - watch.moved.track;
  const silence = at.wall - watch.moved.wall - Math.max(0, forward);
  const next: PocketWatch = {
    ...watch,
    moved: forward > 0 ? at : watch.moved,
    longestSilenceMs: Math.max(watch.longestSilenceMs, silence),
  };
  const noted = signal === 'tick' ? next : note(next, signal, at);
  if (signal === 'hidden') return { ...noted, hiddenSince: watch.hiddenSince ?? at.wall };
  return signal === 'woke' ? shown(noted, at.wall) : noted;
}

/** How long the page was hidden until now. */
export const hiddenFor = (watch: PocketWatch, now: number): number =>
  watch.hiddenMs + (watch.hiddenSince === undefined ? 0 : now - watch.hiddenSince);

function shown(watch: PocketWatch, wall: number): PocketWatch {
  const { hiddenSince: _, ...rest } = watch;
  return { ...rest, hiddenMs: hiddenFor(watch, wall) };
}

function note(watch: PocketWatch, signal: string, at: Moment): PocketWatch {
  if (watch.events.length >= EVENTS_KEPT) return watch;
  const seconds = ((at.wall - watch.startedAt) / 1000).toFixed(1);
  return { ...watch, events: [...watch.events, `${seconds} ${signal}`] };
}
