import type { Session } from '../../domain/session/session.ts';
import { ms } from '../../domain/units.ts';
import type { Clock, LockScreen, Signal } from '../ports.ts';
import type { SessionView } from '../session-contract.ts';
import { nowPlaying } from './now-playing.ts';
import { looksSame } from './view.ts';

/** Tells the screens and the lock screen, and no oftener than something shown changes. */
export interface Teller {
  /** Something may have changed; `signal` is what the phone said. */
  refresh(signal?: Signal): void;
  /** The lock screen is somebody else's again. */
  clear(): void;
}

interface Needs {
  readonly clock: Clock;
  readonly lockScreen: LockScreen;
  current(): { readonly view: SessionView; readonly session: Session | undefined };
  shown(): SessionView;
  show(view: SessionView): void;
}

/** While another lane than the session's is heard, the lock screen's own clock runs on wrongly. */
const PLACE_AGAIN_MS = 5000;

/** Tells what has changed since it was told last; nothing has been yet. */
export function createTeller(needs: Needs): Teller {
  const { clock, lockScreen } = needs;
  let hidden = false;
  let title = '';
  let placedAt = 0;

  function tellScreens(view: SessionView): void {
    const before = needs.shown();
    // Nobody looks: only what the lock screen says is worth the work.
    if (hidden && sameStretch(before, view)) return;
    if (!looksSame(before, view)) needs.show(view);
  }

  function tellLockScreen(view: SessionView, session: Session): void {
    if (session.name === 'ready' || session.medium === 'screen') return;
    const now = nowPlaying(view);
    const next = JSON.stringify([now, view.state, view.lane]);
    const elsewhere = session.name === 'holding' || session.lane !== 'session';
    if (next === title && !(elsewhere && clock.now() - placedAt >= PLACE_AGAIN_MS)) return;
    if (next !== title) lockScreen.show(now);
    title = next;
    placedAt = clock.now();
    // A wait is shown as a length of its own, so that what is left of it is what is left.
    const { leadIn } = session.score.layout;
    if (view.wait !== undefined && leadIn !== undefined) {
      const waited = ms(leadIn.length - view.wait.left);
      lockScreen.place(waited, leadIn.length, session.name === 'waiting');
      return;
    }
    lockScreen.place(view.position, session.score.timeline.total, session.name === 'running');
  }

  return {
    refresh(signal) {
      if (signal === 'hidden') hidden = true;
      if (signal === 'woke') hidden = false;
      const { view, session } = needs.current();
      tellScreens(view);
      if (session !== undefined) tellLockScreen(view, session);
    },
    clear() {
      title = '';
      lockScreen.clear();
    },
  };
}

const sameStretch = (a: SessionView, b: SessionView): boolean =>
  a.state === b.state &&
  a.lane === b.lane &&
  a.segment?.index === b.segment?.index &&
  a.gap === b.gap &&
  a.unsaved === b.unsaved;
