import { spawn } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { rawOf } from '../tools.ts';
import { activeLevelDb } from './level.ts';
import { pinkNoise } from './noise.ts';
import { sayActivities, sayDurations } from './phrases.ts';
import { HEARD_RATE } from './sound.ts';

const MODEL = '/usr/share/pocketsphinx/model/en-us';

/** Every activity for every duration: what the recogniser chooses from. */
export function grammar(): string {
  const either = (phrases: readonly { words: string }[]): string =>
    [...new Set(phrases.map(({ words }) => words))].join(' | ');
  return [
    '#JSGF V1.0;',
    'grammar cues;',
    'public <cue> = <activity> <duration>;',
    `<activity> = ${either(sayActivities())};`,
    `<duration> = ${either(sayDurations())};`,
    '',
  ].join('\n');
}

/** Speech with pink noise below its active level by so many decibels; peaks are kept below full scale. */
export function inNoise(speech: Float64Array, snrDb: number, seed: number): Float64Array {
  if (snrDb === Number.POSITIVE_INFINITY) return speech;
  const noise = pinkNoise(speech.length, seed);
  const gain = 10 ** ((activeLevelDb(speech, HEARD_RATE) - snrDb) / 20);
  return speech.map((s, i) => 0.25 * (s + gain * (noise[i] ?? 0)));
}

async function batch(folder: string, list: readonly string[], name: string): Promise<string> {
  writeFileSync(join(folder, `${name}.ctl`), `${list.join('\n')}\n`);
  const hyp = join(folder, `${name}.hyp`);
  const args = [
    ...['-hmm', join(MODEL, 'en-us'), '-dict', join(MODEL, 'cmudict-en-us.dict')],
    ...['-jsgf', join(folder, 'cues.gram'), '-adcin', 'yes', '-cepdir', folder, '-cepext', '.raw'],
    ...['-ctl', join(folder, `${name}.ctl`), '-hyp', hyp, '-cmn', 'batch', '-logfn', '/dev/null'],
  ];
  await new Promise<void>((resolve, reject) => {
    const child = spawn('pocketsphinx_batch', args, { stdio: 'ignore' });
    child.on('error', reject);
    child.on('exit', (code) => (code === 0 ? resolve() : reject(new Error(`recogniser: ${code}`))));
  });
  return readFileSync(hyp, 'utf8');
}

/** What pocketsphinx makes of some sounds, in their order; an empty text where it heard nothing. */
export async function recognise(
  sounds: readonly Float64Array[],
  text = grammar(),
): Promise<string[]> {
  const folder = mkdtempSync(join(tmpdir(), 'hear-'));
  try {
    writeFileSync(join(folder, 'cues.gram'), text);
    sounds.forEach((sound, i) => {
      writeFileSync(join(folder, `u${i}.raw`), rawOf(sound));
    });
    const names = sounds.map((_, i) => `u${i}`);
    const half = Math.ceil(names.length / 2);
    const answers = await Promise.all([
      batch(folder, names.slice(0, half), 'a'),
      batch(folder, names.slice(half), 'b'),
    ]);
    const heard = new Map<string, string>();
    for (const line of answers.join('\n').split('\n')) {
      const found = /^(.*?)\s*\((u\d+) -?\d+\)$/.exec(line);
      if (found?.[2] !== undefined) heard.set(found[2], found[1] ?? '');
    }
    return names.map((name) => heard.get(name) ?? '');
  } finally {
    rmSync(folder, { recursive: true });
  }
}
