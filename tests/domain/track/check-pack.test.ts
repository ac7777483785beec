import { describe, expect, test } from 'vitest';
import { checkPack } from '../../../src/domain/track/check-pack.ts';
import { FRAME_BYTES } from '../../../src/domain/track/frame.ts';
import { ms } from '../../../src/domain/units.ts';
import { syntheticPack } from '../../drivers/sound/synthetic-pack.ts';

const make = () => {
  const { manifest, audio } = syntheticPack([
    { frames: 10, onsetMs: ms(96), lengthMs: ms(120) },
    { frames: 40, onsetMs: ms(96), lengthMs: ms(700) },
  ]);
  return { manifest: JSON.parse(JSON.stringify(manifest)), audio };
};

const clipWith = (change: object) => ({
  firstFrame: 0,
  frames: 10,
  onsetMs: 96,
  lengthMs: 120,
  text: '',
  ...change,
});

describe('a voice pack before it is used', () => {
  test('TRACK-11 a right one is handed on', () => {
    const { manifest, audio } = make();
    const result = checkPack(manifest, audio, ['clip.1', 'clip.2']);
    expect(result).toEqual({ ok: true, value: { manifest, audio } });
  });

  test.each([
    ['nothing', null, ''],
    ['another format', { format: 'towpath-voice/2' }, 'format'],
    ['no hash', { sha256: 5 }, 'sha256'],
    ['no frames', { frames: 0 }, 'frames'],
    ['no quiet', { quiet: null }, 'quiet'],
    [
      'a quiet loop that is heard to repeat',
      { quiet: { firstFrame: 0, frames: 12 } },
      'quiet.frames',
    ],
    ['a quiet loop past the end', { quiet: { firstFrame: 100, frames: 97 } }, 'quiet.frames'],
    [
      'a quiet loop from before the start',
      { quiet: { firstFrame: -1, frames: 97 } },
      'quiet.firstFrame',
    ],
    ['no clips', { clips: [] }, 'clips'],
    ['clips in words', { clips: 'clip.1' }, 'clips'],
    ['a clip that is none', { clips: { a: null } }, 'clips.a'],
    [
      'a clip from before the start',
      { clips: { a: clipWith({ firstFrame: -1 }) } },
      'clips.a.firstFrame',
    ],
    ['a clip that is never heard', { clips: { a: clipWith({ lengthMs: 0 }) } }, 'clips.a.lengthMs'],
    ['a clip without words', { clips: { a: clipWith({ text: undefined }) } }, 'clips.a.text'],
    ['a clip without onset', { clips: { a: { firstFrame: 0, frames: 1 } } }, 'clips.a.onsetMs'],
    [
      'a clip with half a frame',
      { clips: { a: { firstFrame: 0, frames: 1.5 } } },
      'clips.a.frames',
    ],
  ])('TRACK-11 a manifest that is wrong is told by its path: %s', (_, change, path) => {
    const { manifest, audio } = make();
    const wrong = change === null ? null : { ...manifest, ...change };
    const error = { code: 'manifest-wrong', path };
    expect(checkPack(wrong, audio)).toEqual({ ok: false, error });
  });

  test('TRACK-11 audio that was cut off is told with what was expected', () => {
    const { manifest, audio } = make();
    const found = audio.length - 1000;
    const error = { code: 'audio-length', expected: audio.length, found };
    expect(checkPack(manifest, audio.subarray(0, found))).toEqual({ ok: false, error });
  });

  test('TRACK-11 a frame with a damaged header, or one that leans on another, is told', () => {
    for (const [byte, value] of [
      [1, 0xfb],
      [4, 3],
    ] as const) {
      const { manifest, audio } = make();
      audio[120 * FRAME_BYTES + byte] = value;
      const error = { code: 'frame-wrong', frame: 120 };
      expect(checkPack(manifest, audio)).toEqual({ ok: false, error });
    }
  });

  test('TRACK-11 a clip that lies outside the audio, or is said to sound after its end, is told', () => {
    for (const change of [{ firstFrame: 140 }, { lengthMs: 950 }]) {
      const { manifest, audio } = make();
      Object.assign(manifest.clips['clip.2'], change);
      const error = { code: 'entry-outside', clip: 'clip.2' };
      expect(checkPack(manifest, audio)).toEqual({ ok: false, error });
    }
  });

  test('TRACK-11 a clip and a loop may reach to the very end of the audio, and no farther', () => {
    const { manifest, audio } = make();
    // Forty frames of 24 ms from the clip's first, and one that the filter holds back.
    manifest.clips['clip.2'].lengthMs = 41 * 24 - 96;
    expect(checkPack(manifest, audio).ok).toBe(true);
    manifest.clips['clip.2'].lengthMs += 1;
    expect(checkPack(manifest, audio).ok).toBe(false);
    const { manifest: other } = make();
    other.quiet = { firstFrame: other.frames - 97, frames: 97 };
    expect(checkPack(other, audio).ok).toBe(true);
  });

  test('TRACK-11 a clip that may be asked for and is not there is told', () => {
    const { manifest, audio } = make();
    const error = { code: 'clip-missing', clip: 'tone.wake' };
    expect(checkPack(manifest, audio, ['clip.1', 'tone.wake'])).toEqual({ ok: false, error });
  });
});
