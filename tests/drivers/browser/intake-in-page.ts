/** Built for the browser and put into a page by itself: bringing answers in, without screens. */
import { createBringIn } from '../../../src/app/board/intake.ts';
import type { IntakeView } from '../../../src/app/board-contract.ts';
import { type Heard, heardKey } from '../../../src/domain/board/heard.ts';
import { takeIn } from '../../../src/domain/board/take.ts';
import { ownId } from '../../../src/domain/exchange/decide.ts';
import { createCodes } from '../../../src/platform/codes/index.ts';
import { createIntake } from '../../../src/platform/intake/index.ts';
import { createKeys } from '../../../src/platform/keys/index.ts';
import { connect } from '../../../src/platform/store/connection.ts';

const connection = connect();

/** The key for sealing of this page's leader, made when there is none yet. */
async function leaderKey(): Promise<string> {
  const wish = { passphrase: 'four herons by the gate', words: 'Backup.', at: 1 };
  const made = await createKeys(connection).make(wish);
  return made.ok ? made.value.seal : made.error.code;
}

interface Asked {
  /** Where the chat is fetched from, and the programme that was sent from here. */
  readonly chat: string;
  readonly programme: string;
  /** Cancelled when so much was seen. */
  readonly cancelAt?: number;
}

/** Brings a file in, over a memory. @returns what was shown last, and what happened meanwhile */
async function bringIn({ chat, programme, cancelAt = 2 }: Asked) {
  const file = await (await fetch(chat)).blob();
  const here = new Map<string, Heard>();
  const views: IntakeView[] = [];
  let longest = 0;
  const tasks = new PerformanceObserver((list) => {
    for (const { duration } of list.getEntries()) longest = Math.max(longest, duration);
  });
  tasks.observe({ entryTypes: ['longtask'] });
  const bringing = createBringIn({
    intake: createIntake(connection, createCodes()),
    async take(responses) {
      const keys = responses.map((each) => heardKey(ownId(each.programme.id), each.secret));
      const heard = keys.map((key) => here.get(key)).filter((each) => each !== undefined);
      const taken = takeIn({ heard, setups: [] }, responses, {
        now: Date.UTC(2028, 0, 1),
        programmes: new Set([programme]),
        people: new Map([[programme, here.size]]),
        digests: new Map(),
      });
      for (const each of taken.heard) here.set(each.key, each);
      return taken.outcomes;
    },
    show: (view) => {
      views.push(view);
      if (view.name === 'reading' && view.share >= cancelAt) bringing.cancel();
    },
  });
  const begun = performance.now();
  await bringing.bringIn([{ name: 'chat.txt', content: file }]);
  const ms = performance.now() - begun;
  // What the observer has not been told yet comes with the next task.
  await new Promise((done) => setTimeout(done, 100));
  tasks.disconnect();
  return { last: views.at(-1), views: views.length, people: here.size, ms, longest };
}

declare global {
  interface Window {
    intake: { leaderKey: typeof leaderKey; bringIn: typeof bringIn };
  }
}

window.intake = { leaderKey, bringIn };
