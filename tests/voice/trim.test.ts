import { describe, expect, it } from 'vitest';
import { CLIPS } from '../../src/domain/cues/vocabulary.ts';
import { SETTINGS } from '../../src/voice/build/settings.ts';
import { soundIn } from '../../src/voice/build/shape.ts';
import { speak } from '../../src/voice/build/speak.ts';
import { RATE } from '../../src/voice/build/tools.ts';
import { voicePack } from '../drivers/sound/voice-pack.ts';

const { manifest } = voicePack();
const spoken = Object.entries(CLIPS).flatMap(([id, { say }]) =>
  typeof say === 'string' ? [{ id, say }] : [],
);

/** As far below a word's loudest as the weakest "f" and "th" at its edges lie, lifted as they are. */
const WEAKEST_DB = 30;

describe('what is cut', () => {
  it('VOICE-9 nothing but silence is cut from what the engine said', () => {
    for (const { id, say } of spoken) {
      const { samples, from, to } = speak(say, SETTINGS);
      const { start, end } = soundIn(samples, WEAKEST_DB);
      const { lengthMs = 0 } = manifest.clips[id] ?? {};
      // The engine's own marks say which of it are phones: noise of its silence is none.
      const first = Math.max(start / RATE, from);
      const last = Math.min(end / RATE, to);
      expect(lengthMs, `${id}: "${say}"`).toBeGreaterThanOrEqual(1000 * (last - first) - 12);
      expect(lengthMs, `${id}: "${say}"`).toBeLessThanOrEqual(1000 * (to - from) + 60);
    }
  });
});
