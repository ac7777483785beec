import type { PlayerPorts } from '../../app/ports.ts';
import { systemClock } from '../clock.ts';
import { createLeadNote } from '../store/lead-note.ts';
import { createLockScreen } from './lock-screen.ts';
import { listenToPage } from './page.ts';
import { createScreenClock } from './screen.ts';
import { createSound } from './sound.ts';

/** The sound of this page, the clock of a session without sound, and the lock screen. */
export const createPlayerPorts = (
  artwork: Parameters<typeof createLockScreen>[0],
): PlayerPorts => ({
  sound: createSound(),
  screen: createScreenClock(systemClock, listenToPage),
  lockScreen: createLockScreen(artwork),
  leadNote: createLeadNote(),
});
