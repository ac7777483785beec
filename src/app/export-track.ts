import { planCues } from '../domain/cues/plan-cues.ts';
import { toWebVtt } from '../domain/exchange/captions.ts';
import { composeExport } from '../domain/track/compose.ts';
import { clipLengths, type VoicePack } from '../domain/track/pack.ts';
import type { Choice, ProgrammesState, Settings } from './contract.ts';
import { draftOf } from './session/draft.ts';

/** What a session's file is called, its kind and what is in it; nothing for an unknown session. */
export interface ExportFile {
  readonly name: string;
  readonly type: string;
  readonly content: Uint8Array<ArrayBuffer> | string;
}

/** A session as sound or captions for any player, by the same plan as the session itself. */
export function exportTrack(
  choice: Choice,
  what: 'mp3' | 'vtt',
  programmes: ProgrammesState['programmes'],
  { talk }: Settings,
  voice: VoicePack,
): ExportFile | undefined {
  const draft = draftOf(programmes, choice);
  if (draft === undefined) return undefined;
  const { timeline, reminders, about } = draft;
  const lengths = clipLengths(voice.manifest);
  const cues = planCues(timeline, { talk, reminders, target: about.target, lengths });
  const name = `${nameOf(choice)}.${what}`;
  return what === 'mp3'
    ? { name, type: 'audio/mpeg', content: composeExport(cues, voice) }
    : { name, type: 'text/vtt', content: toWebVtt(cues) };
}

/** `heron-loop-spring-w1-wren-2`, of signs that every file system takes. */
const nameOf = ({ programmeId, groupId, week, session }: Choice): string =>
  `${programmeId}-w${week}-${groupId}-${session}`.replace(/[^\w-]+/g, '_');
