import { useEffect } from 'react';
import type { App } from '../../app/contract.ts';
import { useApp, usePublishing } from '../app-context.tsx';
import { useToday } from '../now/use-now.ts';

/** When the page has nothing to do; Safari cannot tell. */
const idle = (): Promise<void> =>
  new Promise((done) => {
    if ('requestIdleCallback' in window) requestIdleCallback(() => done(), { timeout: 3000 });
    else setTimeout(done, 300);
  });

async function readAhead(app: Pick<App, 'board'>, today: string): Promise<void> {
  await idle();
  const [store, { inputOf, madeOf }] = await Promise.all([
    app.board(),
    import('./board-made.ts'),
    import('./index.ts'),
  ]);
  await idle();
  await store.getState().load();
  for (const { id } of store.getState().programmes) {
    await idle();
    const input = inputOf(store.getState(), id, today);
    if (input !== undefined) madeOf(store, input);
  }
}

/**
 * While a leader is on a page that leads to the boards, they are fetched, read and reckoned, so
 * that they stand as soon as they are asked for. Nothing is shown of it, a failure neither.
 */
export function useBoardsAhead(): void {
  const app = useApp();
  const today = useToday();
  const hasSent = usePublishing(({ sent }) => Object.keys(sent).length > 0);
  useEffect(() => {
    if (hasSent) readAhead(app, today).catch(() => undefined);
  }, [app, today, hasSent]);
}
