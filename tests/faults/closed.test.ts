import { describe, expect, it } from 'vitest';
import { closeUnder } from '../drivers/faults/closing.ts';
import { lead, ledAfter } from '../drivers/faults/leader.ts';
import { type Lived, liveThrough, thereAfter } from '../drivers/faults/participant.ts';
import { tellFault } from '../drivers/faults/tell.ts';
import type { Tab } from '../drivers/phone.ts';

const STORIES: readonly [string, () => Promise<Lived>, (tab: Tab) => Promise<unknown>][] = [
  ['a participant’s', liveThrough, thereAfter],
  ['a leader’s', lead, ledAfter],
];

describe('the connection closed under a whole story', () => {
  for (const [whose, live, found] of STORIES)
    it(`FAULT-3 ${whose}: before each transaction in turn it is opened anew, nothing is lost, and nobody is troubled`, async () => {
      const counting = closeUnder(() => false);
      const whole = await live();
      counting.stop();
      const wanted = await found(whole.tab);
      whole.tab.kill();
      for (let k = 1; k <= counting.asked; k += 1) {
        const closing = closeUnder((number) => number === k);
        const { tab, told } = await live();
        closing.stop();
        expect(closing.closed, `transaction ${k}`).toBe(1);
        expect(await found(tab), `transaction ${k}`).toEqual(wanted);
        expect(told, `transaction ${k}`).toEqual([]);
        tab.kill();
      }
      tellFault(
        `${whose} story, the connection closed before transaction k`,
        counting.asked,
        'nothing',
      );
    }, 180_000);
});
