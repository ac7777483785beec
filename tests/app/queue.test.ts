import { describe, expect, it } from 'vitest';
import { createQueue } from '../../src/app/queue.ts';
import { fail, ok } from '../../src/domain/result.ts';
import { HandClock, settle } from '../drivers/clock.ts';

const FULL = fail({ code: 'full', detail: '' } as const);
const done = ok(undefined);

describe('what is to be written', () => {
  it('JRNL-4 is written one after another, however long one takes', async () => {
    const queue = createQueue(new HandClock(), () => {});
    const order: string[] = [];
    const slow = (name: string, turns: number) => async () => {
      order.push(`${name} begins`);
      for (let i = 0; i < turns; i++) await Promise.resolve();
      order.push(`${name} ends`);
      return done;
    };
    queue.push(slow('a', 5));
    queue.push(slow('b', 0));
    await settle();
    expect(order).toEqual(['a begins', 'a ends', 'b begins', 'b ends']);
  });

  it('LOG-12 lets whoever waits for it go on when it is written', async () => {
    const queue = createQueue(new HandClock(), () => {});
    let written = false;
    const pushed = queue.push(async () => {
      await Promise.resolve();
      written = true;
      return done;
    });
    expect(written).toBe(false);
    await pushed;
    expect(written).toBe(true);
  });

  it('LOG-12 lets whoever waits go on when it failed once, or waits behind one that did', async () => {
    const queue = createQueue(new HandClock(), () => {});
    const first = queue.push(async () => FULL);
    const second = queue.push(async () => done);
    await expect(Promise.all([first, second])).resolves.toEqual([undefined, undefined]);
  });

  it('LOG-12 holds nobody up for more than two seconds, and nothing overtakes what still waits', async () => {
    const clock = new HandClock();
    const queue = createQueue(clock, () => {});
    let answer: (result: typeof done) => void = () => {};
    let [gone, answered] = [false, false];
    const pushed = queue
      .push(() => new Promise((resolve) => (answer = resolve)))
      .then(() => {
        gone = true;
      });
    await clock.pass(1);
    expect(gone).toBe(false);
    await clock.pass(2);
    await pushed;
    let overtook = true;
    const next = queue.push(async () => {
      overtook = answered === false;
      return done;
    });
    answered = true;
    answer(done);
    await next;
    expect(overtook).toBe(false);
  });

  it('LOG-12 lets go on who waits for what was dropped', async () => {
    const queue = createQueue(new HandClock(), () => {});
    const dropped = queue.push(() => new Promise(() => {}));
    queue.drop();
    await dropped;
  });

  it('JRNL-4 that fails stays first, is tried again, and nothing overtakes it', async () => {
    const clock = new HandClock();
    const told: boolean[] = [];
    const queue = createQueue(clock, (trouble) => told.push(trouble));
    const written: string[] = [];
    let full = true;
    let tries = 0;
    queue.push(async () => {
      tries++;
      if (full) return FULL;
      written.push('first');
      return done;
    });
    queue.push(async () => {
      written.push('second');
      return done;
    });
    await settle();
    await clock.pass(11);
    expect(written).toEqual([]);
    expect(tries).toBeGreaterThanOrEqual(3);
    expect(told.every((trouble) => trouble)).toBe(true);
    full = false;
    await clock.pass(5);
    expect(written).toEqual(['first', 'second']);
    expect(told.at(-1)).toBe(false);
  });

  it('JRNL-4 that breaks has failed, and the queue goes on', async () => {
    const clock = new HandClock();
    const told: boolean[] = [];
    const queue = createQueue(clock, (trouble) => told.push(trouble));
    let breaks = true;
    queue.push(async () => {
      if (breaks) throw new TypeError('something broke');
      return done;
    });
    await settle();
    expect(told).toEqual([true]);
    breaks = false;
    await clock.pass(6);
    expect(told.at(-1)).toBe(false);
  });

  it('JRNL-8 that another tab has the right to write is dropped, with all that waits', async () => {
    let refused = 0;
    const queue = createQueue(
      new HandClock(),
      () => {},
      () => refused++,
    );
    let later = 0;
    queue.push(async () => fail({ code: 'not-ours', detail: '' } as const));
    queue.push(async () => {
      later++;
      return done;
    });
    await settle();
    expect({ refused, later }).toEqual({ refused: 1, later: 0 });
  });
});
