/** Codes as pictures, for decoders that are not the app's. */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Code } from '../../../src/app/exchange-contract.ts';
import type { Pixels } from '../../../src/platform/codes/decode.ts';

export interface Grey {
  readonly data: Uint8Array;
  readonly width: number;
  readonly height: number;
}

/** Dark modules as the path draws them: every run is `Mx yhLv1h-Lz`. */
function darkModules({ path, size }: Code): Uint8Array {
  const dark = new Uint8Array(size * size);
  const runs = path.match(/M\d+ \d+h\d+v1h-\d+z/g) ?? [];
  if (runs.join('') !== path) throw new Error('the path has something else in it');
  for (const run of runs) {
    const [x = 0, y = 0, length = 0, back = 0] = (run.match(/\d+/g) ?? [])
      .map(Number)
      .toSpliced(3, 1);
    if (length !== back) throw new Error('a run that is no rectangle');
    dark.fill(1, y * size + x, y * size + x + length);
  }
  return dark;
}

/** A code on paper, each module so many pixels wide. */
export function printed(code: Code, scale: number): Grey {
  const dark = darkModules(code);
  const width = code.size * scale;
  const data = Uint8Array.from({ length: width * width }, (_, at) => {
    const [x, y] = [Math.floor((at % width) / scale), Math.floor(at / width / scale)];
    return dark[y * code.size + x] ? 0 : 255;
  });
  return { data, width, height: width };
}

/** Pictures side by side on one sheet. */
export function sheet(pictures: readonly Grey[], gap: number): Grey {
  const height = Math.max(...pictures.map((each) => each.height));
  const width = pictures.reduce((sum, each) => sum + each.width + gap, gap);
  const data = new Uint8Array(width * height).fill(255);
  let left = gap;
  for (const each of pictures) {
    for (let y = 0; y < each.height; y++)
      data.set(each.data.subarray(y * each.width, (y + 1) * each.width), y * width + left);
    left += each.width + gap;
  }
  return { data, width, height };
}

export function colours({ data, width, height }: Grey): Pixels {
  const out = new Uint8ClampedArray(data.length * 4).fill(255);
  for (const [at, grey] of data.entries()) out.fill(grey, 4 * at, 4 * at + 3);
  return { data: out, width, height };
}

/** Netpbm's grey format: a line of words, then a byte for each pixel. */
export const toPgm = ({ data, width, height }: Grey): Buffer =>
  Buffer.concat([Buffer.from(`P5 ${width} ${height} 255\n`), data]);

/** Blurred as a hand that is not quite still blurs: Gaussian, by ImageMagick, sigma in pixels. */
export function blurred(picture: Grey, sigma: number): Grey {
  const args = ['pgm:-', '-blur', `0x${sigma}`, '-depth', '8', 'gray:-'];
  const data = execFileSync('convert', args, { input: toPgm(picture), maxBuffer: 1 << 28 });
  return { ...picture, data: new Uint8Array(data) };
}

/** What zbar reads in a picture (Debian package zbar-tools), QR symbols only. */
export function zbarReads(picture: Grey): readonly string[] {
  const folder = mkdtempSync(join(tmpdir(), 'codes-'));
  try {
    const file = join(folder, 'code.pgm');
    writeFileSync(file, toPgm(picture));
    const args = ['--quiet', '--raw', '-Sdisable', '-Sqrcode.enable', file];
    const out = execFileSync('zbarimg', args, {
      encoding: 'utf8',
      stdio: ['ignore', 'pipe', 'ignore'],
    });
    return out.split('\n').filter(Boolean);
  } catch {
    return [];
  } finally {
    rmSync(folder, { recursive: true });
  }
}
