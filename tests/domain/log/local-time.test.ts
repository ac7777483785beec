import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  beganAt,
  clockOf,
  momentsOf,
  type OffsetAt,
  offsetIn,
} from '../../../src/domain/log/local-time.ts';

const zone = (name: string): OffsetAt => {
  const found = offsetIn(name);
  if (found === undefined) throw new Error(`no zone ${name}`);
  return found;
};
const utc = (text: string): number => Date.parse(text);
const at = (name: string, date: string, time: string): readonly string[] =>
  momentsOf(date, time, zone(name)).map((moment) => new Date(moment).toISOString().slice(0, 16));

/** Zones with whole, half and quarter hours, both hemispheres, and changes at odd times. */
const ZONES = [
  'Europe/London',
  'Europe/Amsterdam',
  'America/New_York',
  'America/St_Johns',
  'Asia/Kathmandu',
  'Asia/Tokyo',
  'Australia/Lord_Howe',
  'Pacific/Apia',
  'Pacific/Chatham',
  'Africa/Casablanca',
  'America/Santiago',
] as const;

describe('times by the clocks of a place', () => {
  it('LOG-6 offsets are those of the zone database', () => {
    // IANA time zone database, 2024 and later rules.
    expect(zone('Europe/London')(utc('2027-03-07T09:00Z'))).toBe(0);
    expect(zone('Europe/London')(utc('2027-07-07T09:00Z'))).toBe(60);
    expect(zone('Asia/Kathmandu')(utc('2027-03-07T09:00Z'))).toBe(345);
    expect(zone('America/St_Johns')(utc('2027-01-07T09:00Z'))).toBe(-210);
    expect(zone('Australia/Lord_Howe')(utc('2027-01-07T09:00Z'))).toBe(660);
    expect(zone('Australia/Lord_Howe')(utc('2027-07-07T09:00Z'))).toBe(630);
    expect(zone('Pacific/Apia')(utc('2027-07-07T09:00Z'))).toBe(780);
    expect(offsetIn('Marsh/Heron_Loop')).toBeUndefined();
  });

  it('LOG-6 an hour that was left out in spring has no moment, one that came twice has two', () => {
    // Directive 2000/84/EC: 01:00 UTC on the last Sunday of March and of October.
    expect(at('Europe/Amsterdam', '2027-03-28', '01:59')).toEqual(['2027-03-28T00:59']);
    expect(at('Europe/Amsterdam', '2027-03-28', '02:30')).toEqual([]);
    expect(at('Europe/Amsterdam', '2027-03-28', '03:00')).toEqual(['2027-03-28T01:00']);
    expect(at('Europe/Amsterdam', '2027-10-31', '02:30')).toEqual([
      '2027-10-31T00:30',
      '2027-10-31T01:30',
    ]);
    // Energy Policy Act of 2005: 02:00 local on the second Sunday of March, the first of November.
    expect(at('America/New_York', '2027-03-14', '02:30')).toEqual([]);
    expect(at('America/New_York', '2027-11-07', '01:30')).toEqual([
      '2027-11-07T05:30',
      '2027-11-07T06:30',
    ]);
    // Lord Howe Island moves its clocks by half an hour (IANA time zone database).
    expect(at('Australia/Lord_Howe', '2027-10-03', '02:15')).toEqual([]);
    expect(at('Australia/Lord_Howe', '2027-10-03', '02:30')).toEqual(['2027-10-02T15:30']);
  });

  it('LOG-6 a day that a place left out has no moments', () => {
    // Samoa went from 29 to 31 December 2011 (IANA time zone database).
    expect(at('Pacific/Apia', '2011-12-29', '12:00')).toEqual(['2011-12-29T22:00']);
    expect(at('Pacific/Apia', '2011-12-30', '12:00')).toEqual([]);
    expect(at('Pacific/Apia', '2011-12-31', '12:00')).toEqual(['2011-12-30T22:00']);
  });

  it('LOG-6 what is no date or time has no moments', () => {
    for (const [date, time] of [
      ['2027-02-30', '12:00'],
      ['2027-13-01', '12:00'],
      ['', '12:00'],
      ['2027-03-01', '25:00'],
      ['2027-03-01', ''],
    ] as const)
      expect(
        momentsOf(date, time, () => 0),
        `${date} ${time}`,
      ).toEqual([]);
  });

  it('LOG-6 every moment is found again from the date and time that the clocks showed', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...ZONES),
        fc.integer({ min: utc('2012-01-01T00:00Z') / 60_000, max: utc('2032-01-01') / 60_000 }),
        (name, minute) => {
          const offsetAt = zone(name);
          const moment = minute * 60_000;
          const began = beganAt(moment, { zone: name, offsetMinutes: offsetAt(moment) });
          const shown = clockOf(began);
          expect(shown.date).toBe(began.localDate);
          const found = momentsOf(shown.date, shown.time, offsetAt);
          expect(found).toContain(moment);
          expect(found.length).toBeLessThanOrEqual(2);
        },
      ),
      { numRuns: 300 },
    );
  });

  it('LOG-6 the date and time agree with what the zone database shows on every clock', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...ZONES),
        fc.date({ min: new Date('2012-01-01'), max: new Date('2032-01-01'), noInvalidDate: true }),
        (name, moment) => {
          const began = beganAt(moment.getTime(), {
            zone: name,
            offsetMinutes: zone(name)(moment.getTime()),
          });
          const { date, time } = clockOf(began);
          // Swedish dates are written as ISO 8601 writes them (CLDR).
          const shown = new Intl.DateTimeFormat('sv-SE', {
            timeZone: name,
            dateStyle: 'short',
            timeStyle: 'short',
          }).format(moment);
          expect(`${date} ${time}`).toBe(shown);
        },
      ),
      { numRuns: 300 },
    );
  });
});
