import { describe, expect, it } from 'vitest';
import { datesOfWeek } from '../../../src/domain/programme/calendar.ts';

describe('the dates of a week', () => {
  /**
   * Weeks of ISO 8601 with the year's end in them: 2008-12-29 is 2009-W01-1 and 2020-12-31 is
   * 2020-W53-4, as Python's `isocalendar` has it (see the project's list of references, section 11).
   */
  it('PAPER-2 are its Monday and its Sunday, over the end of a month and of a year', () => {
    expect(datesOfWeek('2008-12-22', 2)).toEqual({ monday: '2008-12-29', sunday: '2009-01-04' });
    expect(datesOfWeek('2020-12-28', 1)).toEqual({ monday: '2020-12-28', sunday: '2021-01-03' });
    // The demo's last week ends on the day of its event.
    expect(datesOfWeek('2027-03-01', 6)).toEqual({ monday: '2027-04-05', sunday: '2027-04-11' });
  });

  it('PAPER-2 are not made up where the start is not known', () => {
    expect(datesOfWeek(undefined, 1)).toBeUndefined();
    expect(datesOfWeek('2027-02-30', 1)).toBeUndefined();
  });
});
