import { beforeEach, describe, expect, it } from 'vitest';
import type { Store } from '../../src/app/ports.ts';
import { withFeeling } from '../../src/domain/log/by-hand.ts';
import { fail } from '../../src/domain/result.ts';
import { settle } from '../drivers/clock.ts';
import { asks, prepared, reopened, TOTAL, view } from '../drivers/own-session.ts';
import type { Tab } from '../drivers/phone.ts';

let isFull = false;
const refusal = async () => fail({ code: 'full', detail: '' } as const);

/** A phone whose journal finds no room for some time, while the log does. */
const oftenFull = (real: Store): Store => ({
  ...real,
  append: (...given) => (isFull ? refusal() : real.append(...given)),
  closeSession: (...given) => (isFull ? refusal() : real.closeSession(...given)),
});

/** A session that ended while its journal could not be written, and of which was said how it was. */
async function felt(): Promise<Tab> {
  const tab = await prepared({ store: oftenFull });
  asks(tab).start();
  await tab.clock.pass(TOTAL - 30);
  isFull = true;
  await tab.clock.pass(31);
  const [entry] = tab.app.log.getState().entries;
  if (entry === undefined) throw new Error('not finished');
  await tab.app.log.getState().write(withFeeling(entry, { effort: 6 }, undefined, tab.clock.now()));
  await settle();
  return tab;
}

const journalsOf = async ({ store }: Tab): Promise<number | false> => {
  const journals = await store.journals();
  return journals.ok && journals.value.length;
};

describe('a session of which the entry is written before its last events', () => {
  beforeEach(() => {
    isFull = false;
  });

  it('JRNL-10 is closed when there is room again, and nobody is told of another tab', async () => {
    const tab = await felt();
    isFull = false;
    await tab.clock.pass(11);
    expect(await journalsOf(tab)).toBe(0);
    expect(view(tab)).toMatchObject({ state: 'finished', busyElsewhere: false, unsaved: false });
    expect(tab.app.log.getState().entries).toMatchObject([
      { outcome: 'finished', doneSeconds: TOTAL, feeling: { effort: 6 } },
    ]);
  });

  it('JRNL-10 is not offered to be gone on with after a kill, and its journal goes', async () => {
    const tab = await felt();
    tab.kill();
    const again = await reopened(tab);
    expect(asks(again).unfinished).toBeUndefined();
    await again.clock.pass(1);
    expect(await journalsOf(again)).toBe(0);
    expect(again.app.log.getState().entries).toMatchObject([
      { outcome: 'finished', doneSeconds: TOTAL, feeling: { effort: 6 } },
    ]);
  });
});
