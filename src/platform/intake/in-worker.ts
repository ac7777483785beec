/// <reference types="trusted-types" />
import type { IntakeBatch, IntakeSource } from '../../app/intake-contract.ts';
import { fail, ok, type Result } from '../../domain/result.ts';
import type { SealPair } from '../keys/seal.ts';
import type { FromWorker, ToWorker } from './messages.ts';
import address from './worker.ts?worker&url';

type Taking = (batch: IntakeBatch) => Promise<void>;

/** Made once: a policy of one name may be made once only. */
let policy: { createScriptURL(asked: string): unknown } | undefined;

/** The one worker that a page of ours may name: Trusted Types refuse all others. */
function ownAddress(): string {
  policy ??= window.trustedTypes?.createPolicy('app-intake', {
    createScriptURL: (asked) => {
      if (asked !== address) throw new TypeError(`not our worker: ${asked}`);
      return asked;
    },
  });
  return (policy?.createScriptURL(address) ?? address) as string;
}

function start(): Worker | undefined {
  try {
    return new Worker(ownAddress(), { type: 'module' });
  } catch {
    return undefined;
  }
}

/**
 * Opens answers in a worker of its own, which is gone afterwards.
 *
 * @returns `no-worker`: none can be had here, and nothing was opened; `lost`: it ended by itself
 */
export function openInWorker(
  sources: readonly IntakeSource[],
  pair: SealPair,
  take: Taking,
  signal: AbortSignal,
): Promise<Result<void, 'no-worker' | 'lost'>> {
  const worker = start();
  if (worker === undefined) return Promise.resolve(fail('no-worker'));
  return new Promise((resolve, reject) => {
    let isReady = false;
    /** While the page takes a batch in, what was cancelled waits for it. */
    let isTaking = false;
    const say = (message: ToWorker): void => worker.postMessage(message);
    const end = (result: Result<void, 'no-worker' | 'lost'>): void => {
      signal.removeEventListener('abort', cancel);
      worker.terminate();
      resolve(result);
    };
    const cancel = (): void => {
      if (!isTaking) end(ok(undefined));
    };
    signal.addEventListener('abort', cancel);
    worker.addEventListener('error', () => end(fail(isReady ? 'lost' : 'no-worker')));
    worker.addEventListener('messageerror', () => end(fail('lost')));
    worker.addEventListener('message', ({ data }: MessageEvent<FromWorker>) => {
      if (data.kind === 'ready') {
        isReady = true;
        say({ kind: 'open', sources, pair });
      } else if (data.kind === 'batch') {
        isTaking = true;
        take(data.batch)
          .then(() => {
            isTaking = false;
            if (signal.aborted) end(ok(undefined));
            else say({ kind: 'next' });
          })
          .catch((error: unknown) => {
            worker.terminate();
            reject(error);
          });
      } else end(data.kind === 'done' ? ok(undefined) : fail('lost'));
    });
  });
}
