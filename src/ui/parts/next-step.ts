import type { PackState, Settings } from '../../app/contract.ts';
import type { Medium, PlayerState } from '../../app/session-contract.ts';

/** The one thing that a session waits for before it can start. */
export type NextStep =
  | { readonly name: 'cautions' | 'pocket-check' | 'elsewhere' | 'composing' | 'start' }
  | { readonly name: 'voice-coming'; readonly percent: number }
  | { readonly name: 'voice-missing' | 'voice-damaged' | 'app-missing' };

/** How the session is to be gone through, from the settings: watching needs no sound. */
export const mediumOf = (settings: Settings): Medium =>
  settings.mode === 'watch' ? 'screen' : 'sound';

/**
 * What comes next on the session's page. Care comes first, then what the phone must be able to
 * do, then what must be here: a beginner is never shown more than one decision at a time.
 */
export function nextStep(
  settings: Settings,
  pack: PackState,
  view: {
    readonly state: PlayerState;
    readonly busyElsewhere: boolean;
    /** The piece of the app that composes could not be fetched. */
    readonly failed?: boolean;
  },
  medium: Medium,
): NextStep {
  if (view.busyElsewhere) return { name: 'elsewhere' };
  if (settings.cautionsReadOn === undefined) return { name: 'cautions' };
  if (medium === 'sound') {
    if (pack.name === 'coming') {
      const percent = pack.total > 0 ? Math.floor((pack.loaded / pack.total) * 100) : 0;
      return { name: 'voice-coming', percent: Math.min(99, percent) };
    }
    if (pack.name === 'missing') return { name: 'voice-missing' };
    if (pack.name === 'damaged') return { name: 'voice-damaged' };
    if (settings.pocketCheck === undefined && settings.pocketCheckSkipped !== true)
      return { name: 'pocket-check' };
  }
  if (view.failed) return { name: 'app-missing' };
  return { name: view.state === 'ready' ? 'start' : 'composing' };
}
