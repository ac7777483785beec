import { CLIPS } from '../../src/domain/cues/vocabulary.ts';
import type { ClipEntry, VoicePack } from '../../src/domain/track/pack.ts';
import { ms } from '../../src/domain/units.ts';

const FRAME = [0xff, 0xf3, 0x44, 0xc4];

/** A pack of silence in which every clip of the vocabulary lasts half a second. */
export function silentPack(): VoicePack {
  const ids = Object.keys(CLIPS);
  const quiet = { firstFrame: 0, frames: 100 };
  const clips: Record<string, ClipEntry> = {};
  ids.forEach((id, i) => {
    clips[id] = {
      firstFrame: quiet.frames + i * 26,
      frames: 26,
      onsetMs: ms(70),
      lengthMs: ms(500),
      text: CLIPS[id]?.text ?? '',
    };
  });
  const frames = quiet.frames + ids.length * 26;
  const audio = new Uint8Array(frames * 96);
  for (let frame = 0; frame < frames; frame++) audio.set(FRAME, frame * 96);
  return {
    manifest: { format: 'towpath-voice/1', sha256: '', frames, quiet, clips },
    audio,
  };
}
