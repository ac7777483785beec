import type { StoreApi } from 'zustand/vanilla';
import { planCues } from '../domain/cues/plan-cues.ts';
import { toWebVtt } from '../domain/exchange/captions.ts';
import { composeExport } from '../domain/track/compose.ts';
import type { Choice, Exporter, ProgrammesState, SettingsState } from './contract.ts';
import type { PackHolder } from './pack.ts';
import type { FileShare } from './ports.ts';
import { lengthsOf } from './session/clip-lengths.ts';
import { draftOf } from './session/draft.ts';

interface Needs {
  readonly programmes: StoreApi<ProgrammesState>;
  readonly settings: StoreApi<SettingsState>;
  readonly pack: PackHolder;
  readonly share: FileShare;
}

/** A session as sound and captions for any player, by the same plan as the session itself. */
export const createExporter = ({ programmes, settings, pack, share }: Needs): Exporter => ({
  async track(choice, what) {
    const voice = pack.current();
    const draft = draftOf(programmes.getState().programmes, choice);
    if (voice === undefined || draft === undefined) return;
    const { timeline, reminders, about } = draft;
    const { talk } = settings.getState().settings;
    const lengths = lengthsOf(voice);
    const cues = planCues(timeline, { talk, reminders, target: about.target, lengths });
    const name = `${nameOf(choice)}.${what}`;
    if (what === 'mp3') await share.give(name, 'audio/mpeg', composeExport(cues, voice));
    else await share.give(name, 'text/vtt', toWebVtt(cues));
  },
});

/** `heron-loop-spring-w1-wren-2`, of signs that every file system takes. */
const nameOf = ({ programmeId, groupId, week, session }: Choice): string =>
  `${programmeId}-w${week}-${groupId}-${session}`.replace(/[^\w-]+/g, '_');
