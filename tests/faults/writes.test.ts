import { describe, expect, it } from 'vitest';
import { failWrites, type Reason } from '../drivers/faults/failing-writes.ts';
import { lead, ledAfter } from '../drivers/faults/leader.ts';
import { type Lived, liveThrough, thereAfter } from '../drivers/faults/participant.ts';
import { tellFault } from '../drivers/faults/tell.ts';
import type { Tab } from '../drivers/phone.ts';

interface Way {
  readonly says: string;
  readonly reason: Reason;
  /** How many writes in a row fail: the store itself tries a broken one twice. */
  readonly row: number;
}

const WAYS: readonly Way[] = [
  { says: 'breaks once', reason: 'UnknownError', row: 1 },
  { says: 'breaks, and again when it is tried anew', reason: 'UnknownError', row: 2 },
  { says: 'finds the storage full', reason: 'QuotaExceededError', row: 1 },
  { says: 'and the nine after it find the storage full', reason: 'QuotaExceededError', row: 10 },
];

/** A tab's sign of life: nothing of a person's is in it, and it comes again in a moment. */
const SIGNS = ['meta', 'log+meta'];

interface Story {
  readonly whose: string;
  live(): Promise<Lived>;
  found(tab: Tab): Promise<unknown>;
}

const STORIES: readonly Story[] = [
  { whose: 'a participant’s', live: liveThrough, found: thereAfter },
  { whose: 'a leader’s', live: lead, found: ledAfter },
];

for (const { whose, live, found } of STORIES) {
  describe(`${whose} whole story`, () => {
    for (const { says, reason, row } of WAYS) {
      it(`FAULT-2 each write of it in turn ${says}: nothing is lost, and trouble is told`, async () => {
        const counting = failWrites(() => false);
        const whole = await live();
        counting.stop();
        expect(whole.told).toEqual([]);
        const wanted = await found(whole.tab);
        whole.tab.kill();
        for (let k = 1; k <= counting.written; k += 1) {
          const failing = failWrites((number) => number >= k && number < k + row, reason);
          const { tab, told } = await live();
          failing.stop();
          const which = `write ${k}, ${failing.stores[0]}`;
          expect(failing.failed, which).toBeGreaterThan(0);
          expect(await found(tab), which).toEqual(wanted);
          // What the store mends by itself within the moment is nobody's trouble.
          const mended = reason === 'UnknownError' && row === 1;
          const isSign = failing.stores.every((stores) => SIGNS.includes(stores));
          if (!mended && !isSign) expect(told, which).not.toEqual([]);
          tab.kill();
        }
        tellFault(`${whose} story, write k ${says}`, counting.written, 'nothing');
      }, 180_000);
    }
  });
}
