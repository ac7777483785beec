import { createHash } from 'node:crypto';
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { ClipId, ClipSpec } from '../../domain/cues/vocabulary.ts';
import { CLIPS } from '../../domain/cues/vocabulary.ts';
import type { ClipEntry, VoiceManifest, VoicePack } from '../../domain/track/pack.ts';
import { msOfSeconds } from '../../domain/units.ts';
import { decode, encodeClip, encodeQuiet } from './encode.ts';
import type { VoiceSettings } from './settings.ts';
import { level, makeCall, makeQuiet, makeTone, soundIn, trim } from './shape.ts';
import { speak } from './speak.ts';
import { FRAME_BYTES, FRAME_SAMPLES, RATE } from './tools.ts';

/** Six seconds: long enough that its period is not heard. */
const QUIET_FRAMES = 250;
const QUIET_DB = -60;

/** A sound this far below a clip's loudest is its beginning or its end; less for one that is soft. */
const HEARD_DB = 36;

interface Made {
  readonly id: ClipId;
  readonly spec: ClipSpec;
  readonly frames: Uint8Array;
}

/** A clip before it is levelled: its sound alone. */
function soundOf({ say }: ClipSpec, settings: VoiceSettings): Float64Array {
  if (typeof say === 'string') return trim(speak(say, settings));
  return 'pips' in say ? makeCall(say) : makeTone(say);
}

/** What a decoder hears of each clip from its first frame, with quiet on both sides. */
function listen(clips: readonly Uint8Array[], quiet: Uint8Array): Float64Array[] {
  const around = 4;
  const edge = quiet.slice(0, around * FRAME_BYTES);
  const heard = decode(Buffer.concat(clips.flatMap((frames) => [edge, frames, edge])));
  let at = 0;
  return clips.map((frames) => {
    const length = (frames.length / FRAME_BYTES) * FRAME_SAMPLES;
    const first = at + around * FRAME_SAMPLES;
    at = first + length + around * FRAME_SAMPLES;
    return heard.subarray(first, first + length + FRAME_SAMPLES);
  });
}

const peakDbOf = (samples: Float64Array): number =>
  20 * Math.log10(samples.reduce((peak, s) => Math.max(peak, Math.abs(s)), 0));

/**
 * Levels and encodes a clip. The encoder adds to peaks by what only its decoder tells, so the
 * ceiling is lowered until the decoded peak is where it should be.
 */
function makeFrames(spec: ClipSpec, settings: VoiceSettings, quiet: Uint8Array): Uint8Array {
  const sound = soundOf(spec, settings);
  const full = typeof spec.say === 'string' ? settings.speechLufs : settings.toneLufs;
  const lufs = full - (spec.softer ?? 0);
  let ceilingDb = settings.peakDb - 1;
  for (let turn = 0; turn < 6; turn += 1) {
    const frames = encodeClip(level(sound, lufs, ceilingDb));
    const over = peakDbOf(listen([frames], quiet)[0] ?? sound) - settings.peakDb;
    if (over <= 0) return frames;
    ceilingDb -= over + 0.2;
  }
  throw new Error(`too loud to be held: ${JSON.stringify(spec.say)}`);
}

function list(made: readonly Made[], quiet: Uint8Array): VoiceManifest['clips'] {
  const heard = listen(
    made.map(({ frames }) => frames),
    quiet,
  );
  const entries: Record<ClipId, ClipEntry> = {};
  let firstFrame = QUIET_FRAMES;
  made.forEach(({ id, spec, frames }, i) => {
    const count = frames.length / FRAME_BYTES;
    const { start, end } = soundIn(heard[i] ?? new Float64Array(), HEARD_DB - (spec.softer ?? 0));
    entries[id] = {
      firstFrame,
      frames: count,
      onsetMs: msOfSeconds(start / RATE),
      lengthMs: msOfSeconds((end - start) / RATE),
      text: spec.text,
    };
    firstFrame += count;
  });
  return entries;
}

/** Speaks, shapes, encodes and measures every clip, in their order. The same settings give the same bytes. */
export function buildPack(
  settings: VoiceSettings,
  clips: Readonly<Record<ClipId, ClipSpec>> = CLIPS,
): VoicePack {
  const noise = makeQuiet((QUIET_FRAMES + 10) * (FRAME_SAMPLES / RATE), QUIET_DB, 20_270_411);
  const quiet = encodeQuiet(noise, QUIET_FRAMES);
  const made = Object.entries(clips).map(([id, spec]) => ({
    id,
    spec,
    frames: makeFrames(spec, settings, quiet),
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
