import type { ExchangeCode } from '../../domain/exchange/problem.ts';
import { fail, ok, type Result } from '../../domain/result.ts';
import { decodePicture, type Pixels } from './decode.ts';

/** Largest picture file that is opened. */
const PICTURE_MAX_BYTES = 30 * 1024 * 1024;
/** Edges to which a picture is brought, in turn: a reader wants modules of a few pixels. */
const EDGES = [1200, 2000, 700] as const;

/** A picture drawn so that its longer edge has about so many pixels. */
export function pixelsOf(
  source: ImageBitmap | HTMLVideoElement,
  size: { readonly width: number; readonly height: number },
  edge: number,
): Pixels | undefined {
  const scale = Math.min(edge / Math.max(size.width, size.height), 2);
  const canvas = document.createElement('canvas');
  canvas.width = Math.max(1, Math.round(size.width * scale));
  canvas.height = Math.max(1, Math.round(size.height * scale));
  const context = canvas.getContext('2d', { willReadFrequently: true });
  if (context === null) return undefined;
  // What is transparent counts as paper.
  context.fillStyle = '#fff';
  context.fillRect(0, 0, canvas.width, canvas.height);
  context.drawImage(source, 0, 0, canvas.width, canvas.height);
  const { data, width, height } = context.getImageData(0, 0, canvas.width, canvas.height);
  return { data: new Uint8ClampedArray(data), width, height };
}

/** Texts of the codes in a picture file, tried at several sizes. */
export async function readPicture(picture: Blob): Promise<Result<readonly string[], ExchangeCode>> {
  if (picture.size > PICTURE_MAX_BYTES) return fail('too-large');
  let bitmap: ImageBitmap;
  try {
    bitmap = await createImageBitmap(picture);
  } catch {
    return fail('picture');
  }
  const texts = new Set<string>();
  for (const edge of EDGES) {
    const pixels = pixelsOf(bitmap, bitmap, edge);
    for (const text of pixels === undefined ? [] : await decodePicture(pixels)) texts.add(text);
    if (texts.size > 0) break;
  }
  bitmap.close();
  return texts.size === 0 ? fail('code-none') : ok([...texts]);
}
