/** A session as a leader hears it before it is sent, and as files. Fetched when it is asked for. */
import type { ClipLengths, CuePlan, Talk } from '../domain/cues/cue.ts';
import { planCues } from '../domain/cues/plan-cues.ts';
import { type Squeezed, squeeze } from '../domain/cues/squeeze.ts';
import { type Stop, stopsOf } from '../domain/cues/stops.ts';
import { toWebVtt } from '../domain/exchange/captions.ts';
import { composeExport } from '../domain/track/compose.ts';
import { clipLengths, type VoicePack } from '../domain/track/pack.ts';
import { ms } from '../domain/units.ts';
import type { Exporter, PieceToHear, ProgrammesState } from './contract.ts';
import type { ExporterNeeds } from './exporter.ts';
import { draftOf } from './session/draft.ts';
import { readingLengths } from './session/reading-lengths.ts';
import type { Choice } from './session-contract.ts';

/** What there is to hear of a session, from cue to cue. */
export interface Hearing {
  readonly short: Squeezed;
  readonly stops: readonly Stop[];
  /** A short MP3 file; without a voice there is none, and the words are there all the same. */
  readonly sound?: Uint8Array<ArrayBuffer>;
}

/** What a file is called, its kind and what is in it. */
interface OutgoingFile {
  readonly name: string;
  readonly type: string;
  readonly content: Uint8Array<ArrayBuffer> | string;
}

/** Everything that the exporter does, over what it needs. */
export function exporterOver({ programmes, settings, pack, share }: ExporterNeeds): Exporter {
  const save: Exporter['save'] = async (piece, talk, what) => {
    const voice = pack.current();
    if (voice === undefined) return;
    const { name, type, content } = filePiece(piece, talk, what, voice);
    await share.give(name, type, content);
  };
  return {
    save,
    async track(choice, what) {
      const piece = pieceOf(choice, programmes.getState().programmes);
      if (piece !== undefined) await save(piece, settings.getState().settings.talk, what);
    },
    hear: async (piece, talk) => hearPiece(piece, talk, pack.current()),
  };
}

/** After the last word, so that a player does not cut it off. */
const TAIL = ms(500);

/** A session from cue to cue, skipping the quiet. */
export function hearPiece(piece: PieceToHear, talk: Talk, voice: VoicePack | undefined): Hearing {
  const lengths = voice === undefined ? readingLengths : clipLengths(voice.manifest);
  const short = squeeze(cuesOf(piece, talk, lengths));
  const stops = stopsOf(short);
  return voice === undefined
    ? { short, stops }
    : { short, stops, sound: composeExport(short.plan, voice, TAIL) };
}

/** The whole session as sound or captions for any player, by the plan that it is run by. */
function filePiece(
  piece: PieceToHear,
  talk: Talk,
  what: 'mp3' | 'vtt',
  voice: VoicePack,
): OutgoingFile {
  const cues = cuesOf(piece, talk, clipLengths(voice.manifest));
  // Signs that every file system takes.
  const name = `${piece.fileName.replace(/[^\w-]+/g, '_')}.${what}`;
  return what === 'mp3'
    ? { name, type: 'audio/mpeg', content: composeExport(cues, voice) }
    : { name, type: 'text/vtt', content: toWebVtt(cues) };
}

const cuesOf = (
  { timeline, reminders, target }: PieceToHear,
  talk: Talk,
  lengths: ClipLengths,
): CuePlan => planCues(timeline, { talk, reminders, target, lengths });

/** A session of a programme on this phone; nothing for an unknown one. */
function pieceOf(
  choice: Choice,
  programmes: ProgrammesState['programmes'],
): PieceToHear | undefined {
  const draft = draftOf(programmes, choice);
  if (draft === undefined) return undefined;
  const { timeline, reminders, about } = draft;
  return { timeline, reminders, target: about.target, fileName: fileNameOf(choice) };
}

/** `heron-loop-spring-w1-wren-2` */
const fileNameOf = ({ programmeId, groupId, week, session }: Choice): string =>
  `${programmeId}-w${week}-${groupId}-${session}`;
