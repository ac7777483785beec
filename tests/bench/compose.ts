import { spawn, spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { createMp3Encoder } from 'wasm-media-encoders';
import type { Table } from './table.ts';

/** What composing one track took. */
export interface Composed {
  /** Of the whole track, lanes included. */
  readonly trackSeconds: number;
  readonly trackBytes: number;
  readonly peakBytes: number;
  readonly peakWithBlobBytes: number;
  readonly trackMs: number;
  /** Of the session with its quiet end and without lanes. */
  readonly sessionMs: number;
}

const MINUTES = [15, 30, 60, 150];

/** Composing a track against encoding the very same sound with an MP3 encoder, in the same run. */
export async function composing(): Promise<Table> {
  const folder = mkdtempSync(join(tmpdir(), 'towpath-bench-'));
  const rows: string[][] = [];
  for (const minutes of MINUTES) {
    const file = join(folder, `${minutes}.mp3`);
    const composed = composeInProcess(minutes, file);
    const encodeMs = await encodeSame(file);
    rows.push(rowOf(minutes, composed, encodeMs));
  }
  rmSync(folder, { recursive: true });
  return {
    title: 'Composing a track',
    how:
      'A walk-and-run session and its quiet end, composed (median of nine), and the same sound ' +
      'encoded by LAME as WebAssembly at the same rate (once). Then the whole track with all its ' +
      'lanes, and peak memory against its size. Budgets: 50 times faster; 2.2 times the track.',
    head: [
      'Session',
      'Composed',
      'Encoded',
      'Times faster',
      'Whole track',
      'Composed',
      'Peak',
      'Peak with its Blob',
    ],
    rows,
  };
}

/** Run `compose-once.ts`. Throws with what it said when it fails. */
export function composeInProcess(minutes: number, file = ''): Composed {
  const script = fileURLToPath(new URL('./compose-once.ts', import.meta.url));
  const args = ['--expose-gc', '--import', 'tsx', script, String(minutes), file];
  const run = spawnSync(process.execPath, args, { encoding: 'utf8' });
  if (run.status !== 0) throw new Error(run.stderr);
  return JSON.parse(run.stdout);
}

function rowOf(minutes: number, composed: Composed, encodeMs: number): string[] {
  const { sessionMs, trackMs, trackSeconds, trackBytes } = composed;
  const times = (bytes: number) => `${(bytes / trackBytes).toFixed(2)} x`;
  return [
    `${minutes} min`,
    `${sessionMs.toFixed(0)} ms`,
    `${(encodeMs / 1000).toFixed(1)} s`,
    (encodeMs / sessionMs).toFixed(0),
    `${(trackSeconds / 60).toFixed(0)} min, ${(trackBytes / 1e6).toFixed(1)} MB`,
    `${trackMs.toFixed(0)} ms`,
    times(composed.peakBytes),
    times(composed.peakWithBlobBytes),
  ];
}

/** Milliseconds that the encoder alone works for; decoding happens in another process. */
async function encodeSame(file: string): Promise<number> {
  const encoder = await createMp3Encoder();
  encoder.configure({ sampleRate: 24_000, channels: 1, bitrate: 32 });
  const args = ['-v', 'error', '-i', file, '-f', 'f32le', '-'];
  const decoder = spawn('ffmpeg', args, { stdio: ['ignore', 'pipe', 'inherit'] });
  let spent = 0;
  let rest = Buffer.alloc(0);
  for await (const chunk of decoder.stdout) {
    rest = Buffer.concat([rest, chunk]);
    const whole = rest.length - (rest.length % 4);
    const samples = new Float32Array(Uint8Array.from(rest.subarray(0, whole)).buffer);
    rest = rest.subarray(whole);
    const begun = performance.now();
    encoder.encode([samples]);
    spent += performance.now() - begun;
  }
  const begun = performance.now();
  encoder.finalize();
  return spent + performance.now() - begun;
}
