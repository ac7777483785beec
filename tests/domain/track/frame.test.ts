import { describe, expect, test } from 'vitest';
import {
  FRAME_BYTES,
  FRAME_HEADER,
  isOurFrame,
  readHeader,
  standsAlone,
} from '../../../src/domain/track/frame.ts';
import { readInfoFrame, writeInfoFrame } from '../../../src/domain/track/info-frame.ts';

const header = (...bytes: number[]) => readHeader(Uint8Array.from(bytes), 0);
const frame = (side: number[]) => {
  const bytes = new Uint8Array(FRAME_BYTES);
  bytes.set(FRAME_HEADER, 0);
  bytes.set(side, 4);
  return bytes;
};

/**
 * Source of the values: ISO/IEC 11172-3 and 13818-3, tables of 2.4.2.3 (bit rate, sampling
 * frequency) and the frame length of 2.4.3.1, as worked in two published tables of frame headers.
 */
describe('frame headers by the standard', () => {
  test.each([
    ['MPEG-1, 128 kbit/s at 44.1 kHz, no padding', [0xff, 0xfb, 0x90, 0x00], 417],
    ['MPEG-1, 128 kbit/s at 44.1 kHz, padded', [0xff, 0xfb, 0x92, 0x00], 418],
    ['MPEG-2, 48 kbit/s at 16 kHz: 72, not 144', [0xff, 0xf3, 0x68, 0xc0], 216],
    ['MPEG-2, 64 kbit/s at 24 kHz', [0xff, 0xf3, 0x84, 0xc0], 192],
    ['MPEG-2, 32 kbit/s at 24 kHz', [0xff, 0xf3, 0x44, 0xc0], 96],
  ])('TRACK-1 length of a frame: %s', (_, bytes, length) => {
    expect(header(...bytes)?.bytes).toBe(length);
  });

  test('TRACK-1 a frame of the track is MPEG-2 Layer III, one channel, 24 ms, without check word', () => {
    const read = header(...FRAME_HEADER);
    expect(read).toEqual({
      version: 2,
      checked: false,
      bitRate: 32_000,
      sampleRate: 24_000,
      padding: 0,
      channels: 1,
      bytes: 96,
      samples: 576,
    });
    expect((576 / 24_000) * 1000).toBe(24);
  });

  test.each([
    ['no sync', [0x00, 0xf3, 0x44, 0xc0]],
    ['Layer II', [0xff, 0xf5, 0x44, 0xc0]],
    ['version 2.5', [0xff, 0xe3, 0x44, 0xc0]],
    ['free bit rate', [0xff, 0xf3, 0x04, 0xc0]],
    ['forbidden bit rate', [0xff, 0xf3, 0xf4, 0xc0]],
    ['reserved sampling frequency', [0xff, 0xf3, 0x4c, 0xc0]],
    ['reserved emphasis', [0xff, 0xf3, 0x44, 0xc2]],
    ['cut off', [0xff, 0xf3, 0x44]],
  ])('TRACK-1 what is no header gives nothing: %s', (_, bytes) => {
    expect(header(...bytes)).toBeUndefined();
  });

  test('TRACK-1 the bits that mean nothing to a decoder may differ', () => {
    const marked = frame([]);
    marked[2] = 0x45;
    marked[3] = 0xcc;
    expect(isOurFrame(marked, 0)).toBe(true);
    marked[3] = 0x40;
    expect(isOurFrame(marked, 0)).toBe(false);
  });
});

describe('what else a header says', () => {
  test('TRACK-1 a check word, two channels, and the 1152 samples of MPEG-1', () => {
    expect(header(0xff, 0xfa, 0x90, 0x00)).toMatchObject({
      checked: true,
      channels: 2,
      samples: 1152,
    });
  });

  test.each([0, 1, 2, 3])(
    'TRACK-1 a frame that differs in byte %i is not one of the track',
    (at) => {
      const other = frame([]);
      other[at] = (other[at] ?? 0) ^ 0x10;
      expect(isOurFrame(other, 0)).toBe(false);
    },
  );
});

describe('the first frame', () => {
  const info = () => {
    const bytes = new Uint8Array(FRAME_BYTES).fill(7);
    writeInfoFrame(bytes, 0x010203);
    return bytes;
  };

  test('TRACK-2 is a frame of silence with its name and two fields behind the side information', () => {
    const bytes = info();
    expect(isOurFrame(bytes, 0)).toBe(true);
    // Four bytes of header and nine of side information: MPEG-2, one channel.
    expect(Buffer.from(bytes.subarray(13, 17)).toString('latin1')).toBe('Info');
    expect([...bytes.subarray(17, 25)]).toEqual([0, 0, 0, 3, 0, 1, 2, 3]);
    expect([...bytes.subarray(4, 13)]).toEqual(Array(9).fill(0));
    expect([...bytes.subarray(29)]).toEqual(Array(FRAME_BYTES - 29).fill(0));
    expect(readInfoFrame(bytes)).toEqual({ frames: 0x010203, bytes: 0x010203 * 96 });
  });

  test('TRACK-2 nothing is read from what is shorter, has another name or other fields', () => {
    expect(readInfoFrame(info().subarray(0, FRAME_BYTES - 1))).toBeUndefined();
    for (const [at, value] of [
      [13, 0x58],
      [16, 0x58],
      [20, 7],
    ] as const) {
      const bytes = info();
      bytes[at] = value;
      expect(readInfoFrame(bytes)).toBeUndefined();
    }
  });
});

describe('frames that stand alone', () => {
  test('TRACK-1 a frame whose main data begin in an earlier one does not stand alone', () => {
    expect(standsAlone(frame([0, 0, 0]), 0)).toBe(true);
    expect(standsAlone(frame([1, 0, 0]), 0)).toBe(false);
  });

  test('TRACK-1 a frame with more main data than fits does not stand alone', () => {
    const bits = (n: number) => frame([0, (n >> 5) & 0x7f, (n & 31) << 3]);
    expect(standsAlone(bits(83 * 8), 0)).toBe(true);
    expect(standsAlone(bits(83 * 8 + 1), 0)).toBe(false);
  });
});
