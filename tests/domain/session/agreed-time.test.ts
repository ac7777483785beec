import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { offsetIn } from '../../../src/domain/log/local-time.ts';
import { agreedTime, usualStart } from '../../../src/domain/session/agreed-time.ts';

const MINUTE = 60_000;
const london = offsetIn('Europe/London') ?? (() => Number.NaN);
const at = (...moment: [number, number, number, number, number]): number => Date.UTC(...moment);

describe('the time that a group agrees on', () => {
  it('WAIT-9 the usual one is at a full five minutes, two to seven minutes ahead', () => {
    expect(usualStart(at(2027, 2, 6, 9, 1))).toBe(at(2027, 2, 6, 9, 5));
    expect(usualStart(at(2027, 2, 6, 9, 3))).toBe(at(2027, 2, 6, 9, 5));
    expect(usualStart(at(2027, 2, 6, 9, 3) + 1)).toBe(at(2027, 2, 6, 9, 10));
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 4e12 }), (now) => {
        const ahead = usualStart(now) - now;
        expect(ahead).toBeGreaterThanOrEqual(2 * MINUTE);
        expect(ahead).toBeLessThan(7 * MINUTE);
      }),
    );
  });

  it('WAIT-9 is the next at which the local clocks show it, within half an hour', () => {
    const now = at(2027, 2, 6, 9, 1);
    expect(agreedTime('09:05', now, london)).toEqual({ ok: true, at: at(2027, 2, 6, 9, 5) });
    expect(agreedTime('09:31', now, london)).toEqual({ ok: true, at: at(2027, 2, 6, 9, 31) });
    expect(agreedTime('09:32', now, london)).toEqual({ ok: false, code: 'too-far' });
    expect(agreedTime('09:01', now, london)).toEqual({ ok: false, code: 'too-far' });
    expect(agreedTime('', now, london)).toEqual({ ok: false, code: 'no-time' });
    expect(agreedTime('9:5', now, london)).toEqual({ ok: false, code: 'no-time' });
  });

  it('WAIT-9 around midnight it is tomorrow’s', () => {
    const late = at(2027, 2, 6, 23, 50);
    expect(agreedTime('00:05', late, london)).toEqual({ ok: true, at: at(2027, 2, 7, 0, 5) });
  });

  /* Summer time in the EU and the UK begins on the last Sunday of March and ends on that of October
     at 01:00 UTC (Directive 2000/84/EC; The Summer Time Order 2002): here 28 March and 31 October. */
  it('WAIT-9 where the clocks are changed it is the next moment that they show, and none that they leave out', () => {
    const spring = at(2027, 2, 28, 0, 50);
    expect(agreedTime('02:05', spring, london)).toEqual({ ok: true, at: at(2027, 2, 28, 1, 5) });
    expect(agreedTime('01:05', spring, london)).toEqual({ ok: false, code: 'too-far' });
    // 1:40 summer time, then 1:05 by winter's clocks, 25 minutes later.
    const autumn = at(2027, 9, 31, 0, 40);
    expect(agreedTime('01:05', autumn, london)).toEqual({ ok: true, at: at(2027, 9, 31, 1, 5) });
  });
});
