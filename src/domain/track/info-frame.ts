import { FRAME_BYTES, FRAME_HEADER, HEADER_BYTES, SIDE_INFO_BYTES } from './frame.ts';

/**
 * The name that encoders give to this frame in a file of constant bit rate, and the two fields
 * that players need for exact length and seeking. A seek table makes constant-rate seeking worse
 * in some players and its absence never does, so there is none.
 */
const NAME = 'Info';
const HAS_FRAMES = 1;
const HAS_BYTES = 2;
const NAME_AT = HEADER_BYTES + SIDE_INFO_BYTES;

/** What the first frame tells a player of the rest. */
export interface Info {
  /** Frames of sound, this one left out. */
  readonly frames: number;
  /** Bytes of those frames. */
  readonly bytes: number;
}

/**
 * Write the first frame of a track at the start of `target`: a frame of silence that players read
 * the number of frames and bytes from and do not play.
 *
 * The bytes leave this frame out, as the frames do: players seek by their ratio, counted from the
 * frame after this one. With the whole file's bytes, every place in the second half of a track was
 * one frame off (measured in Chromium).
 *
 * @param frames frames of sound that follow
 */
export function writeInfoFrame(target: Uint8Array, frames: number): void {
  target.fill(0, 0, FRAME_BYTES);
  target.set(FRAME_HEADER, 0);
  for (let i = 0; i < NAME.length; i++) target[NAME_AT + i] = NAME.charCodeAt(i);
  const view = new DataView(target.buffer, target.byteOffset, FRAME_BYTES);
  view.setUint32(NAME_AT + 4, HAS_FRAMES | HAS_BYTES);
  view.setUint32(NAME_AT + 8, frames);
  view.setUint32(NAME_AT + 12, frames * FRAME_BYTES);
}

/** Read what {@link writeInfoFrame} wrote; nothing for a file that begins otherwise. */
export function readInfoFrame(bytes: Uint8Array): Info | undefined {
  if (bytes.length < FRAME_BYTES) return undefined;
  const view = new DataView(bytes.buffer, bytes.byteOffset, FRAME_BYTES);
  for (let i = 0; i < NAME.length; i++) {
    if (bytes[NAME_AT + i] !== NAME.charCodeAt(i)) return undefined;
  }
  if (view.getUint32(NAME_AT + 4) !== (HAS_FRAMES | HAS_BYTES)) return undefined;
  return { frames: view.getUint32(NAME_AT + 8), bytes: view.getUint32(NAME_AT + 12) };
}
