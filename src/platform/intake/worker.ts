/// <reference lib="webworker" />
import type { IntakeBatch } from '../../app/intake-contract.ts';
import type { FromWorker, ToWorker } from './messages.ts';
import { openAnswers } from './open-answers.ts';

declare const self: DedicatedWorkerGlobalScope;

const say = (message: FromWorker): void => self.postMessage(message);
let batches: AsyncGenerator<IntakeBatch> | undefined;

/** One batch for each time that the page asks: none is made before the last was taken. */
async function next(): Promise<void> {
  const step = await batches?.next();
  say(step === undefined || step.done ? { kind: 'done' } : { kind: 'batch', batch: step.value });
}

self.addEventListener('message', ({ data }: MessageEvent<ToWorker>) => {
  if (data.kind === 'open') batches = openAnswers(data.sources, data.pair);
  next().catch(() => say({ kind: 'failed' }));
});
say({ kind: 'ready' });
