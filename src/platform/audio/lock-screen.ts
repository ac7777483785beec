import type { LockScreen } from '../../app/ports.ts';
import { secondsOf } from '../../domain/units.ts';

/**
 * @param artwork address and size of the picture beside the title
 */
export function createLockScreen(
  artwork: readonly { readonly src: string; readonly sizes: string; readonly type: string }[],
): LockScreen {
  const session = navigator.mediaSession as MediaSession | undefined;
  if (session === undefined || typeof MediaMetadata === 'undefined') {
    return { show: () => {}, place: () => {}, clear: () => {} };
  }
  return {
    show({ title, artist, album }) {
      session.metadata = new MediaMetadata({ title, artist, album, artwork: [...artwork] });
    },
    place(at, total, going) {
      session.playbackState = going ? 'playing' : 'paused';
      // It throws on a place beyond the length, and on lengths that are no numbers.
      const position = Math.min(secondsOf(at), secondsOf(total));
      session.setPositionState?.({ duration: secondsOf(total), position, playbackRate: 1 });
    },
    clear() {
      session.metadata = null;
      session.playbackState = 'none';
      session.setPositionState?.();
    },
  };
}
