import { afterEach, describe, expect, it } from 'vitest';
import { beganAt, offsetIn } from '../../src/domain/log/local-time.ts';
import { systemClock } from '../../src/platform/clock.ts';

const before = process.env.TZ;
afterEach(() => {
  if (before === undefined) delete process.env.TZ;
  else process.env.TZ = before;
});

/** What the phone's clock says of a moment, in a zone. */
function said(zone: string, moment: string) {
  process.env.TZ = zone;
  const utc = Date.parse(moment);
  return beganAt(utc, systemClock.zoneTime(utc));
}

describe('the clock of the phone', () => {
  it('LOG-2 offset, zone and date are those of the place and of the moment, not of now', () => {
    // IANA time zone database; Directive 2000/84/EC: summer time ends at 01:00 UTC on 31 October.
    expect(said('Europe/Amsterdam', '2027-10-31T00:59:00Z')).toMatchObject({
      offsetMinutes: 120,
      zone: 'Europe/Amsterdam',
      localDate: '2027-10-31',
    });
    expect(said('Europe/Amsterdam', '2027-10-31T01:00:00Z').offsetMinutes).toBe(60);
    expect(said('Asia/Kathmandu', '2027-03-08T18:14:00Z')).toMatchObject({
      offsetMinutes: 345,
      localDate: '2027-03-08',
    });
    expect(said('Asia/Kathmandu', '2027-03-08T18:15:00Z').localDate).toBe('2027-03-09');
    expect(said('America/St_Johns', '2027-01-01T03:29:00Z').localDate).toBe('2026-12-31');
    expect(said('America/St_Johns', '2027-01-01T03:30:00Z').localDate).toBe('2027-01-01');
  });

  it('LOG-6 the phone and the zone database agree on every clock change of a year', () => {
    for (const zone of [
      'Europe/London',
      'America/New_York',
      'Australia/Lord_Howe',
      'Pacific/Chatham',
      'Asia/Tokyo',
    ]) {
      process.env.TZ = zone;
      const offsetAt = offsetIn(zone);
      for (let hour = 0; hour < 365 * 24; hour++) {
        const utc = Date.UTC(2027, 0, 1, hour, 30);
        if (systemClock.zoneTime(utc).offsetMinutes !== offsetAt?.(utc))
          expect.fail(`${zone} at ${new Date(utc).toISOString()}`);
      }
    }
  });
});
