import type { Outcome } from '../../domain/board/take.ts';
import type { Response } from '../../domain/exchange/response.ts';
import type { Intake, IntakeSource, IntakeView } from '../board-contract.ts';
import { createTally } from './intake-report.ts';

/** What bringing in is done with. */
export interface BringInNeeds {
  readonly intake: Intake;
  /**
   * Takes some answers in and keeps what changed: see `takeIn`. Settles when it is kept.
   *
   * @returns one outcome for each, in their order; `store`: it could not be kept
   */
  readonly take: (responses: readonly Response[]) => Promise<readonly Outcome[] | 'store'>;
  readonly show: (view: IntakeView) => void;
}

/** Bringing in, one lot after another. */
export interface BringIn {
  /** One at a time: what is asked for meanwhile waits its turn. Never rejects. */
  bringIn(sources: readonly IntakeSource[]): Promise<void>;
  /** Ends what is under way and what waits; what was taken so far stays. */
  cancel(): void;
}

/** Brings answers in: shows how far it is, counts what was taken, and names why what was left was. */
export function createBringIn({ intake, take, show }: BringInNeeds): BringIn {
  let turn: Promise<void> = Promise.resolve();
  let stop = new AbortController();

  async function run(sources: readonly IntakeSource[], signal: AbortSignal): Promise<void> {
    const tally = createTally();
    const own = new AbortController();
    const end = (): void => own.abort();
    signal.addEventListener('abort', end);
    if (signal.aborted) end();
    let isLost = false;
    show({ name: 'reading', share: 0, report: tally.report() });
    try {
      const opened = await intake.open(
        sources,
        async (batch) => {
          if (isLost) return;
          const outcomes = batch.responses.length === 0 ? [] : await take(batch.responses);
          if (outcomes === 'store') {
            // Nothing more is opened that could not be kept.
            isLost = true;
            own.abort();
            return;
          }
          tally.add(batch, outcomes);
          show({ name: 'reading', share: batch.share, report: tally.report() });
        },
        own.signal,
      );
      if (isLost) show({ name: 'refused', why: 'store' });
      else if (!opened.ok) show({ name: 'refused', why: opened.error });
      else show({ name: 'done', cancelled: signal.aborted, report: tally.report() });
    } catch {
      show({ name: 'refused', why: isLost ? 'store' : 'not-loaded' });
    } finally {
      signal.removeEventListener('abort', end);
    }
  }

  return {
    bringIn(sources) {
      const { signal } = stop;
      turn = turn.then(() => run(sources, signal));
      return turn;
    },
    cancel() {
      stop.abort();
      stop = new AbortController();
    },
  };
}
