import { describe, expect, it } from 'vitest';
import { agreedStartOf, placeByClock } from '../../../src/domain/lead/cut-off.ts';
import { ms } from '../../../src/domain/units.ts';
import { NINE_O_CLOCK } from '../../drivers/sessions.ts';

const HOUR = 3_600_000;
const total = ms(HOUR);
const mark = { place: ms(60_000), wall: NINE_O_CLOCK, holding: false };

describe('where groups are that nobody leads any more', () => {
  it('DAY-7 they go on by the clock, to the end and no further', () => {
    expect(placeByClock(mark, total, NINE_O_CLOCK)).toBe(60_000);
    expect(placeByClock(mark, total, NINE_O_CLOCK + 90_000)).toBe(150_000);
    expect(placeByClock(mark, total, NINE_O_CLOCK + HOUR - 60_001)).toBe(HOUR - 1);
    expect(placeByClock(mark, total, NINE_O_CLOCK + HOUR - 60_000)).toBeUndefined();
  });

  it('DAY-7 on hold they stand where they were, for some hours', () => {
    const held = { ...mark, holding: true };
    expect(placeByClock(held, total, NINE_O_CLOCK + 2 * HOUR)).toBe(60_000);
    expect(placeByClock(held, total, NINE_O_CLOCK + 4 * HOUR)).toBeUndefined();
  });

  it('DAY-7 a clock that was put back tells nothing', () => {
    expect(placeByClock(mark, total, NINE_O_CLOCK - 1)).toBeUndefined();
  });

  it('DAY-7 they wait for a start that is ahead, and for none that is further ahead than one can be', () => {
    const start = { ...mark, place: ms(0) };
    expect(agreedStartOf(start, NINE_O_CLOCK - 1)).toBe(NINE_O_CLOCK);
    expect(agreedStartOf(start, NINE_O_CLOCK - HOUR / 2)).toBe(NINE_O_CLOCK);
    expect(agreedStartOf(start, NINE_O_CLOCK - HOUR / 2 - 1)).toBeUndefined();
    expect(agreedStartOf(start, NINE_O_CLOCK)).toBeUndefined();
    expect(placeByClock(start, total, NINE_O_CLOCK)).toBe(0);
  });

  it('DAY-7 who was under way or stood does not wait for a start, whatever the clock says', () => {
    expect(agreedStartOf(mark, NINE_O_CLOCK - 1000)).toBeUndefined();
    const held = { ...mark, place: ms(0), holding: true };
    expect(agreedStartOf(held, NINE_O_CLOCK - 1000)).toBeUndefined();
  });
});
