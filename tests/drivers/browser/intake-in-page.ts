/** Built for the browser and put into a page by itself: the board and what is brought in, without screens. */
import { createStore } from 'zustand/vanilla';
import { createBoard } from '../../../src/app/board/board.ts';
import type { SettingsState } from '../../../src/app/contract.ts';
import { systemClock } from '../../../src/platform/clock.ts';
import { createExchangePorts } from '../../../src/platform/exchange.ts';
import { connect } from '../../../src/platform/store/connection.ts';

const ports = createExchangePorts(connect());
/** Monday, 12 April 2027: the day after the event. */
const MONDAY = Date.UTC(2027, 3, 12);

const board = createBoard({
  ports,
  clock: { ...systemClock, now: () => MONDAY },
  share: { give: async () => {} },
  newId: () => crypto.randomUUID(),
  settings: createStore<SettingsState>(() => ({ settings: {}, change: async () => {} }) as never),
});

/** The key for sealing of this page's leader, who has sent a programme. */
async function leaderKey(programme: string): Promise<string> {
  const wish = { passphrase: 'four herons by the gate', words: 'Backup.', at: 1 };
  const made = await ports.keys.make(wish);
  if (!made.ok) return made.error.code;
  const { id } = JSON.parse(programme) as { id: string };
  const sent = { id, revision: 1, text: programme, signature: 'A'.repeat(86), at: 1 };
  await ports.store.putSent(sent);
  await board.getState().load();
  return made.value.seal;
}

/**
 * Brings a file in.
 *
 * @param cancelAt share at which it is cancelled
 * @returns what was shown last, how often, and the page's longest task meanwhile, in ms
 */
async function bringIn(chat: string, cancelAt = 2) {
  const file = await (await fetch(chat)).blob();
  let views = 0;
  let longest = 0;
  const tasks = new PerformanceObserver((list) => {
    for (const { duration } of list.getEntries()) longest = Math.max(longest, duration);
  });
  tasks.observe({ entryTypes: ['longtask'] });
  const stop = board.subscribe(({ intake, cancelIntake }, before) => {
    if (intake === before.intake) return;
    views += 1;
    if (intake.name === 'reading' && intake.share >= cancelAt) cancelIntake();
  });
  const begun = performance.now();
  await board.getState().bringIn([{ name: 'chat.txt', content: file }]);
  const ms = performance.now() - begun;
  stop();
  // What the observer has not been told yet comes with the next task.
  await new Promise((done) => setTimeout(done, 100));
  tasks.disconnect();
  const kept = await ports.boards.boards();
  const people = kept.ok ? kept.value.heard.length : -1;
  return { last: board.getState().intake, views, people, ms, longest, bytes: file.size };
}

declare global {
  interface Window {
    intake: { leaderKey: typeof leaderKey; bringIn: typeof bringIn };
  }
}

window.intake = { leaderKey, bringIn };
