import { useState } from 'react';
import type { BoardProblem } from '../../app/board-contract.ts';
import { boardProblem, keep as words } from '../../copy/keep.ts';
import type { Result } from '../../domain/result.ts';

interface Job {
  /** How it goes or went, in a sentence; empty before the first. */
  readonly said: string;
  readonly isBusy: boolean;
  /** @returns whether it was done */
  readonly run: (job: Promise<Result<unknown, BoardProblem>>, done: string) => Promise<boolean>;
}

/** Does one thing at a time and says how it went. */
export function useJob(): Job {
  const [state, setState] = useState({ said: '', isBusy: false });
  return {
    ...state,
    async run(job, done) {
      setState({ said: words.working, isBusy: true });
      const result = await job;
      setState({ said: result.ok ? done : boardProblem(result.error), isBusy: false });
      return result.ok;
    },
  };
}
