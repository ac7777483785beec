/**
 * Composes one track in a process of its own, leaves the session without its lanes in a file and
 * prints what it took as one line of JSON. Peak memory is what Linux counts as the process's highest, set back just before;
 * the Blob that a player is given is part of it.
 *
 *   node --expose-gc --import tsx compose-once.ts MINUTES FILE
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { composeExport, composeTrack } from '../../src/domain/track/compose.ts';
import { sessionOfMinutes, trackOf } from '../drivers/sound/track-of.ts';
import { voicePack } from '../drivers/sound/voice-pack.ts';
import type { Composed } from './compose.ts';
import { median } from './table.ts';

const RUNS = 9;
const [minutes = '30', file = ''] = process.argv.slice(2);
const pack = voicePack();
const plan = trackOf(sessionOfMinutes(Number(minutes)), pack);

const kilobytesOf = (name: string): number =>
  Number(new RegExp(`${name}:\\s+(\\d+) kB`).exec(readFileSync('/proc/self/status', 'utf8'))?.[1]);

global.gc?.();
writeFileSync('/proc/self/clear_refs', '5');
const before = kilobytesOf('VmRSS');
const { bytes, layout } = composeTrack(plan, pack);
const peakBytes = (kilobytesOf('VmHWM') - before) * 1024;
const blob = new Blob([bytes], { type: 'audio/mpeg' });
const peakWithBlobBytes = (kilobytesOf('VmHWM') - before) * 1024;

const medianOf = (compose: () => unknown): number =>
  median(
    Array.from({ length: RUNS }, () => {
      const begun = performance.now();
      compose();
      return performance.now() - begun;
    }),
  );

if (file !== '') writeFileSync(file, composeExport(plan.cues, pack));
const composed: Composed = {
  trackSeconds: layout.total / 1000,
  trackBytes: blob.size,
  peakBytes,
  peakWithBlobBytes,
  trackMs: medianOf(() => composeTrack(plan, pack)),
  sessionMs: medianOf(() => composeExport(plan.cues, pack)),
};
console.log(JSON.stringify(composed));
