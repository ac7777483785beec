/**
 * The one kind of frame that a track is made of, and a reader of frame headers.
 * Source of every table and rule here: ISO/IEC 11172-3 clause 2.4 and ISO/IEC 13818-3 clause 2.4.
 */

/** MPEG-2 Layer III at 24 kHz and 32 kbit/s: 72 x 32000 / 24000, never padded. */
export const FRAME_BYTES = 96;
/** Samples that one frame decodes to, at 24 kHz: 24 ms. */
export const FRAME_SAMPLES = 576;

/** Sync, MPEG-2, Layer III, no check word; 32 kbit/s, 24 kHz, no padding; one channel. */
export const FRAME_HEADER = [0xff, 0xf3, 0x44, 0xc0] as const;
/** Bytes of a frame's header. */
export const HEADER_BYTES = 4;
/** Side information of a frame of MPEG-2 Layer III with one channel. */
export const SIDE_INFO_BYTES = 9;

/** What a frame's header says; rates in bits and samples a second. */
export interface FrameHeader {
  readonly version: 1 | 2;
  readonly checked: boolean;
  readonly bitRate: number;
  readonly sampleRate: number;
  readonly padding: 0 | 1;
  readonly channels: 1 | 2;
  /** Length of the whole frame, header included. */
  readonly bytes: number;
  readonly samples: number;
}

const KBITS: Readonly<Record<1 | 2, readonly number[]>> = {
  1: [32, 40, 48, 56, 64, 80, 96, 112, 128, 160, 192, 224, 256, 320],
  2: [8, 16, 24, 32, 40, 48, 56, 64, 80, 96, 112, 128, 144, 160],
};
const RATES: Readonly<Record<1 | 2, readonly number[]>> = {
  1: [44_100, 48_000, 32_000],
  2: [22_050, 24_000, 16_000],
};

/**
 * Read the header of a Layer III frame of MPEG-1 or MPEG-2.
 * Nothing is returned for what is not such a header (free format and reserved values included).
 */
export function readHeader(bytes: Uint8Array, at: number): FrameHeader | undefined {
  const [b0, b1, b2, b3] = [bytes[at], bytes[at + 1], bytes[at + 2], bytes[at + 3]];
  if (b0 !== 0xff || b1 === undefined || b2 === undefined || b3 === undefined) return undefined;
  const version = (b1 & 0xf8) === 0xf8 ? 1 : (b1 & 0xf8) === 0xf0 ? 2 : undefined;
  const layerThree = (b1 & 0x06) === 0x02;
  if (version === undefined || !layerThree) return undefined;
  const kbits = KBITS[version][(b2 >> 4) - 1];
  const sampleRate = RATES[version][(b2 >> 2) & 3];
  const emphasisReserved = (b3 & 3) === 2;
  if (kbits === undefined || sampleRate === undefined || emphasisReserved) return undefined;
  const padding = (b2 & 2) === 0 ? 0 : 1;
  return {
    version,
    checked: (b1 & 1) === 0,
    bitRate: kbits * 1000,
    sampleRate,
    padding,
    channels: b3 >> 6 === 3 ? 1 : 2,
    bytes: Math.floor(((version === 1 ? 144 : 72) * kbits * 1000) / sampleRate) + padding,
    samples: version === 1 ? 1152 : 576,
  };
}

/** Whether a frame header is the one of {@link FRAME_HEADER} (private, copyright and original bits are free). */
export function isOurFrame(bytes: Uint8Array, at: number): boolean {
  return (
    bytes[at] === FRAME_HEADER[0] &&
    bytes[at + 1] === FRAME_HEADER[1] &&
    ((bytes[at + 2] ?? 0) & 0xfe) === FRAME_HEADER[2] &&
    ((bytes[at + 3] ?? 0) & 0xf3) === FRAME_HEADER[3]
  );
}

/**
 * Whether a frame can be decoded wherever it is put: its main data begin in itself, not in an
 * earlier frame (`main_data_begin`, the first 8 bits of the side information in MPEG-2, is 0),
 * and end in itself (`part2_3_length`, the 12 bits after 8 + 1 private bit, fits).
 */
export function standsAlone(bytes: Uint8Array, at: number): boolean {
  const side = at + HEADER_BYTES;
  const [s0 = 0, s1 = 0, s2 = 0] = [bytes[side], bytes[side + 1], bytes[side + 2]];
  const mainBits = ((s1 & 0x7f) << 5) | (s2 >> 3);
  return s0 === 0 && mainBits <= (FRAME_BYTES - HEADER_BYTES - SIDE_INFO_BYTES) * 8;
}
