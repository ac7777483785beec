import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { VoiceSettings } from './settings.ts';
import { RATE, run, samplesOf, soxRaw } from './tools.ts';

/** Samples at the track's rate, and where in them (in seconds) the first phone begins and the last ends. */
export interface Spoken {
  readonly samples: Float64Array;
  readonly from: number;
  readonly to: number;
}

/** Ends of phones as flite prints them: "pau:0.164 r:0.261 ... pau:1.325". */
function phones(printed: string): { from: number; to: number } {
  const ends = [...printed.matchAll(/(\S+):([\d.]+)/g)].map(([, name, end]) => ({
    pause: name === 'pau',
    end: Number(end),
  }));
  const first = ends.findIndex((phone) => !phone.pause);
  const last = ends.findLast((phone) => !phone.pause);
  if (first < 0 || last === undefined) throw new Error(`no phones in: ${printed}`);
  return { from: ends[first - 1]?.end ?? 0, to: last.end };
}

function flite(text: string, wav: string, { voice, stretch }: VoiceSettings): string {
  const features = ['--setf', `duration_stretch=${stretch}`];
  return run('flite', [
    '-voice',
    voice,
    ...features,
    '-psdur',
    '-t',
    text,
    '-o',
    wav,
  ]).out.toString();
}

/** Points of the compressor's curve as sox wants them: straight to the knee, then one in `ratio`. */
const curve = (kneeDb: number, ratio: number): string =>
  `6:-90,-90,${kneeDb},${kneeDb},0,${kneeDb - kneeDb / ratio}`;

/** The filters that make speech carry outdoors, in the order in which they act. */
export const outdoors = (s: VoiceSettings): string[] => [
  ...['gain', '-n', '-20'],
  ...['highpass', '-2', String(s.highPassHz)],
  ...(s.trebleDb === 0 ? [] : ['treble', String(s.trebleDb), String(s.trebleHz)]),
  ...(s.ratio === 1
    ? []
    : [
        'compand',
        `${s.attackS},${s.releaseS}`,
        curve(-40, s.ratio),
        '0',
        '-90',
        String(s.attackS),
      ]),
];

/** Speaks a text and makes it carry, the engine's silence still around it. */
export function speak(text: string, settings: VoiceSettings): Spoken {
  const folder = mkdtempSync(join(tmpdir(), 'voice-'));
  try {
    const wav = join(folder, 'spoken.wav');
    const { from, to } = phones(flite(text, wav, settings));
    const shaped = join(folder, 'shaped.raw');
    run('sox', [
      ...['-D', wav, ...soxRaw(RATE), shaped],
      ...['rate', '-h', String(RATE)],
      ...outdoors(settings),
      ...['gain', '-n', '-3'],
    ]);
    return { samples: samplesOf(readFileSync(shaped)), from, to };
  } finally {
    rmSync(folder, { recursive: true });
  }
}
