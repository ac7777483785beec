import { decodeQR, decodeQRBatch } from 'qr/decode.js';

/** A picture as rows of red, green, blue and alpha, a byte each. */
export interface Pixels {
  readonly data: Uint8ClampedArray<ArrayBuffer>;
  readonly width: number;
  readonly height: number;
}

/** Texts of all QR symbols in a picture, so that one photograph of a sheet gives every part. */
export async function decodePicture(pixels: Pixels): Promise<readonly string[]> {
  const [found = []] = await decodeQRBatch([pixels]);
  return found.filter((text) => typeof text === 'string').filter((text) => text !== '');
}

/** The text of a QR symbol in one frame of the camera, fast enough to be asked again and again. */
export function decodeFrame(pixels: Pixels): string | undefined {
  try {
    return decodeQR(pixels) || undefined;
  } catch {
    // Most frames show no symbol: the reader throws to say so.
    return undefined;
  }
}
