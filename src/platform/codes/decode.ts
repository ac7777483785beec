import jsQR from 'jsqr';

/** A picture as rows of red, green, blue and alpha, a byte each. */
export interface Pixels {
  readonly data: Uint8ClampedArray<ArrayBuffer>;
  readonly width: number;
  readonly height: number;
}

interface Corner {
  readonly x: number;
  readonly y: number;
}

/** Symbols that are looked for in one picture: all parts of a code on one sheet, and no more. */
const SYMBOLS_MAX = 4;

/**
 * Texts of the QR symbols in a picture. The reader finds one at a time: what was found is painted
 * over, and the rest looked at again.
 */
export function decodePixels(
  { data, width, height }: Pixels,
  most = SYMBOLS_MAX,
): readonly string[] {
  const left = new Uint8ClampedArray(data);
  const texts: string[] = [];
  while (texts.length < most) {
    const found = jsQR(left, width, height, { inversionAttempts: 'attemptBoth' });
    if (found === null || texts.includes(found.data)) break;
    texts.push(found.data);
    const { topLeftCorner, topRightCorner, bottomLeftCorner, bottomRightCorner } = found.location;
    cover(left, width, height, [
      topLeftCorner,
      topRightCorner,
      bottomRightCorner,
      bottomLeftCorner,
    ]);
  }
  return texts.filter((text) => text !== '');
}

/** Paints the box around some corners white. */
function cover(
  data: Uint8ClampedArray,
  width: number,
  height: number,
  corners: readonly Corner[],
): void {
  const xs = corners.map(({ x }) => x);
  const ys = corners.map(({ y }) => y);
  const [left, right] = [
    Math.max(0, Math.floor(Math.min(...xs))),
    Math.min(width, Math.ceil(Math.max(...xs))),
  ];
  const [top, bottom] = [
    Math.max(0, Math.floor(Math.min(...ys))),
    Math.min(height, Math.ceil(Math.max(...ys))),
  ];
  for (let y = top; y < bottom; y++)
    data.fill(255, 4 * (y * width + left), 4 * (y * width + right));
}
