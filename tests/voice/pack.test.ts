import { createHash } from 'node:crypto';
import { statSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { pauseBetween } from '../../src/domain/cues/phrases.ts';
import { CLIPS } from '../../src/domain/cues/vocabulary.ts';
import { audibleFrames } from '../drivers/sound/audible.ts';
import { clipsAlone } from '../drivers/sound/clip-sounds.ts';
import { decodeFfmpeg, decodeMpg123, decodeMpg123Binary, RATE } from '../drivers/sound/decode.ts';
import { levelDb, soundIn } from '../drivers/sound/level.ts';
import { voicePack } from '../drivers/sound/voice-pack.ts';

const { manifest, audio } = voicePack();
const clips = Object.entries(manifest.clips);
const FRAME = { bytes: 96, samples: 576, ms: 24 };

/** Reads numbers of so many bits from the start of some bytes. */
function bitsOf(bytes: Uint8Array): (count: number) => number {
  let at = 0;
  return (count) => {
    let value = 0;
    for (let i = 0; i < count; i += 1, at += 1)
      value = 2 * value + (((bytes[at >> 3] ?? 0) >> (7 - (at & 7))) & 1);
    return value;
  };
}

/** The fields of a frame that ISO/IEC 11172-3 (2.4.1.3, 2.4.1.7) and 13818-3 (low rates) define. */
function fieldsOf(frame: Uint8Array): Record<string, number> {
  const bits = bitsOf(frame);
  const fields: Record<string, number> = {};
  const read = (name: string, count: number): void => {
    fields[name] = bits(count);
  };
  for (const [name, count] of [
    ...[
      ['sync', 11],
      ['version', 2],
      ['layer', 2],
      ['unprotected', 1],
      ['bitrate', 4],
    ],
    ...[
      ['rate', 2],
      ['padding', 1],
      ['private', 1],
      ['mode', 2],
      ['extension', 2],
    ],
    ...[
      ['copyright', 1],
      ['original', 1],
      ['emphasis', 2],
    ],
    // Side information of one channel at a low rate.
    ...[
      ['mainDataBegin', 8],
      ['privateBits', 1],
      ['part23Length', 12],
    ],
  ] as [string, number][])
    read(name, count);
  return fields;
}

describe('frames', () => {
  it('VOICE-6 every frame has the one header that the pack is made of, and stands alone', () => {
    const kinds = new Map<string, number>();
    for (let at = 0; at < audio.length; at += FRAME.bytes) {
      const { part23Length = 0, ...fields } = fieldsOf(audio.subarray(at, at + FRAME.bytes));
      const kind = JSON.stringify(fields);
      kinds.set(kind, (kinds.get(kind) ?? 0) + 1);
      // Main data fits into its own frame: 4 bytes of header and 9 of side information come first.
      expect(part23Length, `frame ${at / FRAME.bytes}`).toBeLessThanOrEqual(8 * (FRAME.bytes - 13));
    }
    expect([...kinds.keys()].map((kind) => JSON.parse(kind))).toEqual([
      {
        ...{ sync: 0x7ff, version: 0b10, layer: 0b01, unprotected: 1 },
        // 32 kbit/s is the fourth rate of MPEG-2 Layer III, 24 kHz its second: 72 x 32000 / 24000 = 96.
        ...{ bitrate: 4, rate: 1, padding: 0, private: 0, mode: 0b11, extension: 0 },
        ...{ copyright: 0, original: 1, emphasis: 0, mainDataBegin: 0, privateBits: 0 },
      },
    ]);
    expect([...kinds.values()]).toEqual([manifest.frames]);
  });

  it('VOICE-6 quiet and clips lie one after another and make up the whole', () => {
    let next = manifest.quiet.firstFrame + manifest.quiet.frames;
    expect(manifest.quiet.firstFrame).toBe(0);
    for (const [id, { firstFrame, frames }] of clips) {
      expect(firstFrame, id).toBe(next);
      next += frames;
    }
    expect(next).toBe(manifest.frames);
    expect(next * FRAME.bytes).toBe(audio.length);
  });

  it('VOICE-7 ffmpeg and two builds of mpg123 give 576 samples for every frame', async () => {
    const heard = await Promise.all([
      decodeFfmpeg(audio),
      decodeMpg123(audio),
      decodeMpg123Binary(audio),
    ]);
    expect(heard.map(({ length }) => length)).toEqual(
      Array(3).fill(manifest.frames * FRAME.samples),
    );
  });

  it('VOICE-7 the hash is that of the audio', () => {
    expect(createHash('sha256').update(audio).digest('hex')).toBe(manifest.sha256);
  });

  it('VOICE-8 audio and manifest have at most 1 MB', () => {
    const file = (name: string): number =>
      statSync(fileURLToPath(new URL(`../../src/voice/pack/${name}`, import.meta.url))).size;
    expect(file('voice.bin') + file('manifest.json')).toBeLessThanOrEqual(1_000_000);
  });
});

describe('what is heard of a clip', () => {
  it('VOICE-7 begins and ends where the manifest says, to 4 ms', async () => {
    for (const [id, samples] of await clipsAlone({ manifest, audio })) {
      // What is 33 dB below the loudest is surely heard; 39 dB below, surely no word is left.
      // A tick is soft: the quiet around it is less far below, and so is what is told from it.
      const softer = id === 'tone.tick' ? 20 : 0;
      const sure = soundIn(samples, 33 - softer);
      const most = soundIn(samples, 39 - softer);
      const { onsetMs = 0, lengthMs = 0 } = manifest.clips[id] ?? {};
      const inMs = (place: number): number => (1000 * place) / RATE;
      expect(onsetMs, `onset of ${id}`).toBeGreaterThanOrEqual(inMs(most.start) - 4);
      expect(onsetMs, `onset of ${id}`).toBeLessThanOrEqual(inMs(sure.start) + 4);
      expect(onsetMs + lengthMs, `end of ${id}`).toBeGreaterThanOrEqual(inMs(sure.end) - 4);
      expect(onsetMs + lengthMs, `end of ${id}`).toBeLessThanOrEqual(inMs(most.end) + 4);
    }
  });

  it('VOICE-7 a clip has no more than two and a half frames before its sound and four and a half after', () => {
    for (const [id, { onsetMs, lengthMs, frames }] of clips) {
      expect(onsetMs, id).toBeGreaterThanOrEqual(40);
      expect(onsetMs, id).toBeLessThanOrEqual(60);
      expect(frames * FRAME.ms - onsetMs - lengthMs, id).toBeGreaterThanOrEqual(0);
      expect(frames * FRAME.ms - onsetMs - lengthMs, id).toBeLessThanOrEqual(108);
    }
  });

  it('VOICE-12 frames of joined clips never meet where they sound, however their places are rounded', () => {
    const joined = clips.filter(([id]) => /^(word|number|hours-and)\./.test(id));
    for (const [left, a] of joined) {
      const over = audibleFrames(a).end * FRAME.ms - (a.onsetMs + a.lengthMs);
      for (const [right, b] of joined) {
        const lead = b.onsetMs - audibleFrames(b).first * FRAME.ms;
        const room = pauseBetween(left, right) - FRAME.ms;
        expect(over + lead, `${left} ${right}`).toBeLessThanOrEqual(room);
      }
    }
  });

  it('VOICE-13 the quiet is even, near -60 dBFS, and longer than an ear remembers', async () => {
    const { frames } = manifest.quiet;
    const samples = (await decodeFfmpeg(audio)).subarray(0, frames * FRAME.samples);
    expect(frames * FRAME.ms).toBeGreaterThanOrEqual(4000);
    const second = RATE / 2;
    const levels = Array.from({ length: Math.floor(samples.length / second) }, (_, i) =>
      levelDb(samples, i * second, (i + 1) * second),
    );
    expect(Math.min(...levels)).toBeGreaterThan(-62);
    expect(Math.max(...levels)).toBeLessThan(-58);
  });
});

describe('the list', () => {
  it('VOICE-7 tones have no text and words have one', () => {
    for (const [id, { text }] of clips) expect(text === '', id).toBe(id.startsWith('tone.'));
    expect(Object.keys(CLIPS)).toHaveLength(clips.length);
  });
});
