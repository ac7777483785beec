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

interface Phone {
  readonly from: number;
  readonly to: number;
}

/** Phones as flite prints them, "pau:0.164 r:0.261 ... pau:1.325" by their ends, without pauses. */
function phonesIn(printed: string): Phone[] {
  const marks = [...printed.matchAll(/(\S+):([\d.]+)/g)];
  return marks.flatMap(([, name, end], i) =>
    name === 'pau' ? [] : [{ from: Number(marks[i - 1]?.[2] ?? 0), to: Number(end) }],
  );
}

function flite(text: string, wav: string, { voice, stretch }: VoiceSettings): Phone[] {
  const how = ['-voice', voice, '--setf', `duration_stretch=${stretch}`, '-psdur'];
  return phonesIn(run('flite', [...how, '-t', text, '-o', wav]).out.toString());
}

/** Points of the compressor's curve as sox wants them: straight to the knee, then one in `ratio`. */
const curve = (kneeDb: number, ratio: number): string =>
  `6:-90,-90,${kneeDb},${kneeDb},0,${kneeDb - kneeDb / ratio}`;

/** The filters that make speech carry outdoors, in the order in which they act. */
export const outdoors = (s: VoiceSettings): string[] => [
  ...['gain', '-n', '-20'],
  ...['highpass', '-2', String(s.highPassHz)],
  ...(s.trebleDb === 0 ? [] : ['treble', String(s.trebleDb), String(s.trebleHz)]),
  ...(s.softenDb === 0 ? [] : ['treble', String(s.softenDb), String(s.softenHz)]),
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
    const phones = flite(text, wav, settings);
    const [first, last] = [phones[0], phones.at(-1)];
    if (first === undefined || last === undefined) throw new Error(`nothing was said: ${text}`);
    const shaped = join(folder, 'shaped.raw');
    run('sox', [
      ...['-D', wav, ...soxRaw(RATE), shaped],
      ...['speed', String(settings.deepen)],
      ...['rate', '-h', String(RATE)],
      ...outdoors(settings),
      ...['gain', '-n', '-3'],
    ]);
    const slower = settings.deepen;
    return {
      samples: samplesOf(readFileSync(shaped)),
      from: first.from / slower,
      to: last.to / slower,
    };
  } finally {
    rmSync(folder, { recursive: true });
  }
}
