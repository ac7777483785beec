import { expect, it } from 'vitest';
import { CLIPS } from '../../src/domain/cues/vocabulary.ts';
import { buildPack } from '../../src/voice/build/pack.ts';
import { SETTINGS } from '../../src/voice/build/settings.ts';
import { voicePack } from '../drivers/sound/voice-pack.ts';

const EVERY = 11;

it('VOICE-11 speaking every eleventh clip again gives the bytes that are committed', () => {
  const { manifest, audio } = voicePack();
  const some = Object.fromEntries(Object.entries(CLIPS).filter((_, i) => i % EVERY === 0));
  const again = buildPack(SETTINGS, some);
  const bytes = (pack: typeof again, at: number, frames: number): string =>
    Buffer.from(pack.audio.subarray(96 * at, 96 * (at + frames))).toString('base64');
  expect(bytes(again, 0, again.manifest.quiet.frames)).toBe(
    bytes({ manifest, audio }, 0, manifest.quiet.frames),
  );
  for (const [id, clip] of Object.entries(again.manifest.clips)) {
    const before = manifest.clips[id];
    expect(before, id).toEqual({ ...clip, firstFrame: before?.firstFrame });
    expect(bytes(again, clip.firstFrame, clip.frames), id).toBe(
      bytes({ manifest, audio }, before?.firstFrame ?? 0, clip.frames),
    );
  }
});
