import { createHash } from 'node:crypto';
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { ClipId, ClipSpec } from '../../domain/cues/vocabulary.ts';
import { CLIPS } from '../../domain/cues/vocabulary.ts';
import type { ClipEntry, VoiceManifest, VoicePack } from '../../domain/track/pack.ts';
import { msOfSeconds } from '../../domain/units.ts';
import { decode, encodeClip, encodeQuiet } from './encode.ts';
import type { VoiceSettings } from './settings.ts';
import { level, makeQuiet, makeTone, soundIn, trim } from './shape.ts';
import { speak } from './speak.ts';
import { FRAME_BYTES, FRAME_SAMPLES, RATE } from './tools.ts';

/** Six seconds: long enough that its period is not heard. */
const QUIET_FRAMES = 250;
const QUIET_DB = -60;

/** A sound this far below a clip's loudest is its beginning or its end. */
const HEARD_DB = 36;

/** Samples of a clip as it goes to the encoder. */
export function makeClip({ say }: ClipSpec, settings: VoiceSettings): Float64Array {
  if (typeof say !== 'string') return level(makeTone(say), settings.toneLufs, settings.ceilingDb);
  return level(trim(speak(say, settings)), settings.speechLufs, settings.ceilingDb);
}

interface Made {
  readonly id: ClipId;
  readonly spec: ClipSpec;
  readonly frames: Uint8Array;
}

/**
 * Where each clip's sound begins and ends, in seconds from its first frame, as an independent
 * decoder hears it with quiet on both sides.
 */
function measure(made: readonly Made[], quiet: Uint8Array): { onset: number; length: number }[] {
  const around = 4;
  const edge = quiet.slice(0, around * FRAME_BYTES);
  const heard = decode(Buffer.concat(made.flatMap(({ frames }) => [edge, frames, edge])));
  let at = 0;
  return made.map(({ frames }) => {
    const length = (frames.length / FRAME_BYTES) * FRAME_SAMPLES;
    const first = at + around * FRAME_SAMPLES;
    at = first + length + around * FRAME_SAMPLES;
    const { start, end } = soundIn(heard.subarray(first, first + length + FRAME_SAMPLES), HEARD_DB);
    return { onset: start / RATE, length: (end - start) / RATE };
  });
}

function list(made: readonly Made[], quiet: Uint8Array): VoiceManifest['clips'] {
  const measured = measure(made, quiet);
  const entries: Record<ClipId, ClipEntry> = {};
  let firstFrame = QUIET_FRAMES;
  made.forEach(({ id, spec, frames }, i) => {
    const count = frames.length / FRAME_BYTES;
    const { onset = 0, length = 0 } = measured[i] ?? {};
    entries[id] = {
      firstFrame,
      frames: count,
      onsetMs: msOfSeconds(onset),
      lengthMs: msOfSeconds(length),
      text: spec.text,
    };
    firstFrame += count;
  });
  return entries;
}

/** Speaks, shapes, encodes and measures every clip. The same settings give the same bytes. */
export function buildPack(
  settings: VoiceSettings,
  clips: Readonly<Record<ClipId, ClipSpec>> = CLIPS,
): VoicePack {
  const noise = makeQuiet((QUIET_FRAMES + 10) * (FRAME_SAMPLES / RATE), QUIET_DB, 20_270_411);
  const quiet = encodeQuiet(noise, QUIET_FRAMES);
  const made = Object.entries(clips).map(([id, spec]) => ({
    id,
    spec,
    frames: encodeClip(makeClip(spec, settings)),
  }));
  const audio = Buffer.concat([quiet, ...made.map(({ frames }) => frames)]);
  const manifest: VoiceManifest = {
    format: 'towpath-voice/1',
    sha256: createHash('sha256').update(audio).digest('hex'),
    frames: audio.length / FRAME_BYTES,
    quiet: { firstFrame: 0, frames: QUIET_FRAMES },
    clips: list(made, quiet),
  };
  return { manifest, audio };
}

/** Writes `voice.bin` and `manifest.json` into a folder. */
export function writePack({ manifest, audio }: VoicePack, folder: string): void {
  mkdirSync(folder, { recursive: true });
  writeFileSync(join(folder, 'voice.bin'), audio);
  const lines = Object.entries(manifest.clips).map(
    ([id, entry]) => `    ${JSON.stringify(id)}: ${JSON.stringify(entry)}`,
  );
  const head = JSON.stringify({ ...manifest, clips: undefined }, null, 2).slice(0, -2);
  writeFileSync(
    join(folder, 'manifest.json'),
    `${head},\n  "clips": {\n${lines.join(',\n')}\n  }\n}\n`,
  );
}
