// @vitest-environment happy-dom
import { afterEach, describe, expect, it, vi } from 'vitest';
import { ms } from '../../../src/domain/units.ts';
import { createLockScreen } from '../../../src/platform/audio/lock-screen.ts';

const ARTWORK = [{ src: 'icon.png', sizes: '512x512', type: 'image/png' }];
const NOW = { title: 'RUN 1:30 · set 3 of 7', artist: 'then WALK 1:00', album: 'Heron Loop' };

function withSession() {
  const session = {
    metadata: null as unknown,
    playbackState: 'none',
    setPositionState: vi.fn((state?: MediaPositionState) => {
      if (state && (state.position ?? 0) > (state.duration ?? 0)) throw new TypeError('beyond');
    }),
  };
  vi.stubGlobal(
    'MediaMetadata',
    class {
      constructor(init: object) {
        Object.assign(this, init);
      }
    },
  );
  Object.defineProperty(navigator, 'mediaSession', { value: session, configurable: true });
  return session;
}

afterEach(() => {
  vi.unstubAllGlobals();
  Reflect.deleteProperty(navigator, 'mediaSession');
});

describe('the lock screen', () => {
  it('SND-9 shows title, what comes next, whose session it is, and a picture', () => {
    const session = withSession();
    createLockScreen(ARTWORK).show(NOW);
    expect(session.metadata).toMatchObject({ ...NOW, artwork: ARTWORK });
  });

  it('SND-9 shows place and length in seconds, never a place beyond the length', () => {
    const session = withSession();
    const screen = createLockScreen(ARTWORK);
    screen.place(ms(90_500), ms(1_860_000), true);
    expect(session.setPositionState).toHaveBeenLastCalledWith({
      duration: 1860,
      position: 90.5,
      playbackRate: 1,
    });
    expect(session.playbackState).toBe('playing');
    screen.place(ms(1_860_040), ms(1_860_000), false);
    expect(session.setPositionState).toHaveBeenLastCalledWith({
      duration: 1860,
      position: 1860,
      playbackRate: 1,
    });
    expect(session.playbackState).toBe('paused');
  });

  it('SND-9 is left alone when the session is closed, and missed nowhere it does not exist', () => {
    const session = withSession();
    const screen = createLockScreen(ARTWORK);
    screen.show(NOW);
    screen.clear();
    expect(session).toMatchObject({ metadata: null, playbackState: 'none' });
    Reflect.deleteProperty(navigator, 'mediaSession');
    const none = createLockScreen(ARTWORK);
    expect(() => {
      none.show(NOW);
      none.place(ms(0), ms(1), true);
      none.clear();
    }).not.toThrow();
  });
});
