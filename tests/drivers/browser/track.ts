/** The track that a page plays, taken out of it and decoded by ffmpeg. */
import { spawnSync } from 'node:child_process';
import type { Page } from 'playwright-core';

const RATE = 24_000;

interface Keeper {
  keptTrack?: Blob;
}

/** From the next page on, remembers the track that the app makes. Call it before a visit. */
export async function keepTrack(page: Page): Promise<void> {
  await page.addInitScript(() => {
    const make = URL.createObjectURL.bind(URL);
    URL.createObjectURL = (what: Blob | MediaSource) => {
      if (what instanceof Blob) (window as Keeper).keptTrack = what;
      return make(what);
    };
  });
}

/** The remembered track as samples from -1 to 1 at 24 kHz. */
export async function trackOf(page: Page): Promise<Float32Array> {
  const base64 = await page.evaluate(async () => {
    const blob = (window as Keeper).keptTrack;
    if (blob === undefined) throw new Error('no track was made');
    return new Promise<string>((resolve) => {
      const reader = new FileReader();
      reader.onload = () => resolve(String(reader.result).replace(/^[^,]*,/, ''));
      reader.readAsDataURL(blob);
    });
  });
  const decoded = spawnSync(
    'ffmpeg',
    ['-v', 'error', '-f', 'mp3', '-i', '-', '-f', 'f32le', '-ar', `${RATE}`, '-ac', '1', '-'],
    { input: Buffer.from(base64, 'base64'), maxBuffer: 2 ** 31 - 1 },
  );
  if (decoded.status !== 0) throw new Error(`ffmpeg: ${decoded.stderr.toString()}`);
  const { stdout } = decoded;
  return new Float32Array(stdout.buffer, stdout.byteOffset, Math.floor(stdout.byteLength / 4));
}

/** The highest peak between two places in seconds, in dB below full scale. */
export function loudest(samples: Float32Array, from: number, to: number): number {
  let peak = 0;
  for (const sample of samples.subarray(Math.round(from * RATE), Math.round(to * RATE))) {
    peak = Math.max(peak, Math.abs(sample));
  }
  return 20 * Math.log10(peak);
}
