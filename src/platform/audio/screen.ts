import type { Clock, Signal, Transport } from '../../app/ports.ts';
import { type Ms, ms } from '../../domain/units.ts';

const TICK_MS = 250;

/**
 * A session that is seen: the monotonic clock moves along the same track. While the phone sleeps
 * that clock may stand; the wall clock then shows a gap, as it does for sound.
 *
 * @param listenToPage tells of the page's sleeping and waking
 */
export function createScreenClock(
  clock: Clock,
  listenToPage: (say: (signal: Signal) => void) => void,
): Transport {
  const listeners = new Set<(signal: Signal) => void>();
  const say = (signal: Signal): void => {
    for (const listener of [...listeners]) listener(signal);
  };
  let total = ms(0);
  let from = ms(0);
  let since: number | undefined;
  let stopTicks: (() => void) | undefined;

  const place = (): Ms =>
    since === undefined ? from : ms(Math.min(total, from + clock.monotonic() - since));

  function pause(): void {
    from = place();
    since = undefined;
    stopTicks?.();
    stopTicks = undefined;
  }

  function seek(to: Ms): void {
    from = to;
    if (since !== undefined) since = clock.monotonic();
  }

  function play(): void {
    if (since !== undefined) return;
    since = clock.monotonic();
    stopTicks = clock.every(TICK_MS, () => say('tick'));
    say('playing');
  }

  listenToPage(say);
  return {
    load(track) {
      pause();
      total = track.total;
      from = ms(0);
    },
    play,
    pause,
    seek,
    rebuild(at) {
      seek(at);
      play();
    },
    place,
    close() {
      pause();
      from = ms(0);
    },
    listen(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };
}
