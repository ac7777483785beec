/**
 * Against what is published. Each check names its source; "worked here" is arithmetic on a
 * published formula.
 */
import { describe, expect, it } from 'vitest';
import { againstGuidance, asModerate, GUIDANCE } from '../../../src/domain/back/guidance.ts';
import { ENERGY, intensityOf } from '../../../src/domain/back/intensity.ts';
import { metresOfMix, speedOfMix } from '../../../src/domain/back/mix.ts';
import { kmPerHour, MILE_M, milesPerHour, paceOf, speedOf } from '../../../src/domain/back/pace.ts';
import { riegel } from '../../../src/domain/back/riegel.ts';
import { isoDate, mondayOf } from '../../../src/domain/programme/calendar.ts';
import { dayOf } from '../../../src/domain/programme/dates.ts';
import { ACTIVITIES } from '../../../src/domain/programme/plan.ts';
import { ms } from '../../../src/domain/units.ts';

const min = (minutes: number) => ms(minutes * 60_000);
const counted = (moderate: number, vigorous: number): number =>
  asModerate({ moderate: min(moderate), vigorous: min(vigorous) }) / 60_000;

describe('the Compendium of Physical Activities', () => {
  // Herrmann et al. 2024, doi 10.1016/j.jshs.2023.10.010, by code (five copies of it agree).
  const OF_2024: Readonly<Record<string, number>> = {
    '17170': 3.0,
    '17190': 3.8,
    '17200': 4.8,
    '17220': 5.5,
    '12020': 7.5,
    '12028': 6.5,
    '12029': 7.8,
    '12030': 8.5,
    '12050': 9.3,
  };

  it('BACK-7 every activity has the MET of its code in 2024, or says that it is from elsewhere', () => {
    for (const activity of ACTIVITIES) {
      const { met, code, from } = ENERGY[activity];
      if (/2024/.test(from)) expect({ code, met }).toEqual({ code, met: OF_2024[code ?? ''] });
      // 2011, doi 10.1249/MSS.0b013e31821ece12; stretching and standing from memory.
      else expect(from).toMatch(/2011|from memory/);
    }
    expect(ENERGY['slow walk']).toMatchObject({ code: '17152', met: 2.8 });
  });

  it('BACK-7 12 minutes at 12030 and 18 at 17190 are 170.4 MET-minutes', () => {
    // Worked here on the MET of 2024.
    expect(12 * ENERGY['strong run'].met + 18 * ENERGY.walk.met).toBeCloseTo(170.4, 6);
  });

  it('BACK-7 no activity counts as walking and running mixed, 12010, at the edge of vigorous', () => {
    expect(ACTIVITIES.map((activity) => ENERGY[activity].code)).not.toContain('12010');
  });
});

describe('WHO guidelines 2020', () => {
  // Bull et al. 2020, Br J Sports Med 54:1451-62: moderate 3.0 to 5.9 MET, vigorous from 6.0.
  it('BACK-7 moderate begins at 3.0 and vigorous at 6.0', () => {
    expect([2.9, 3, 5.9, 6].map(intensityOf)).toEqual([
      'light',
      'moderate',
      'moderate',
      'vigorous',
    ]);
  });

  it('BACK-8 a vigorous minute counts as two: 90 and 30 are 150, 40 and 54 are 148', () => {
    expect(counted(90, 30)).toBe(150);
    expect(againstGuidance(min(counted(90, 30)))).toBe('within');
    expect(counted(40, 54)).toBe(148);
    expect(againstGuidance(min(counted(40, 54)))).toBe('below');
  });

  it('BACK-8 30 moderate minutes are worth 15 vigorous ones', () => {
    // Physical Activity Guidelines for Americans, 2nd edition, 2018.
    expect(counted(30, 0)).toBe(counted(0, 15));
  });

  it('BACK-8 the ends are 150 to 300 moderate, 75 to 150 vigorous, and belong to it', () => {
    expect([GUIDANCE.from / 60_000, GUIDANCE.to / 60_000]).toEqual([150, 300]);
    expect([counted(0, 75), counted(0, 150)]).toEqual([150, 300]);
    const standing = [149, 150, 300, 301].map((minutes) => againstGuidance(min(minutes)));
    expect(standing).toEqual(['below', 'within', 'within', 'above']);
  });

  it('BACK-8 both ways of meeting it are 495 MET-minutes, within the 500 to 1,000 it stands for', () => {
    // US guidelines 2018, appendix 1: 150 x 3.3 = 75 x 6.6.
    expect(counted(150, 0) * 3.3).toBeCloseTo(495, 9);
    expect((counted(0, 75) / 2) * 6.6).toBeCloseTo(495, 9);
  });
});

describe('ISO 8601 weeks', () => {
  // Python's date.isocalendar: year, week and weekday of the date; the Monday is worked here.
  it.each([
    ['2005-01-01', 6, '2004-12-27'],
    ['2008-12-29', 1, '2008-12-29'],
    ['2020-12-31', 4, '2020-12-28'],
    ['2021-01-01', 5, '2020-12-28'],
    ['2026-12-31', 4, '2026-12-28'],
  ])('BACK-1 %s is day %i of the week from %s', (date, weekday, monday) => {
    const day = dayOf(date) as number;
    expect(isoDate(mondayOf(day))).toBe(monday);
    expect(day - mondayOf(day) + 1).toBe(weekday);
  });
});

describe('pace', () => {
  // Pace tables: 3600 / s per km; 5 km in five times the pace; the mile is 1.609344 km.
  it.each([
    ['5:00', 300, 12.0, 3.333, '25:00', 7.456],
    ['6:00', 360, 10.0, 2.778, '30:00', 6.214],
    ['7:00', 420, 8.571, 2.381, '35:00', 5.326],
    ['7:30', 450, 8.0, 2.222, '37:30', 4.971],
    ['8:00', 480, 7.5, 2.083, '40:00', 4.66],
    ['9:00', 540, 6.667, 1.852, '45:00', 4.142],
    ['10:00', 600, 6.0, 1.667, '50:00', 3.728],
    ['12:00', 720, 5.0, 1.389, '60:00', 3.107],
  ])('EVENT-1 %s per km', (_said, pace, kmh, metresPerSecond, five, mph) => {
    expect(kmPerHour(pace)).toBeCloseTo(kmh, 3);
    expect(speedOf(pace)).toBeCloseTo(metresPerSecond, 3);
    expect(milesPerHour(pace)).toBeCloseTo(mph, 3);
    const [minutes = 0, seconds = 0] = five.split(':').map(Number);
    expect(5000 / speedOf(pace)).toBeCloseTo(minutes * 60 + seconds, 9);
    expect(paceOf(speedOf(pace))).toBeCloseTo(pace, 9);
  });

  it('EVENT-1 the mile is exactly 1,609.344 m', () => {
    // International yard and pound agreement, 1959.
    expect(MILE_M).toBe(1609.344);
  });
});

describe('walking and running speeds', () => {
  it('EVENT-2 two minutes at 2.5 m/s and one at 1.5 m/s are 390 m, 2.167 m/s', () => {
    // Worked here; speeds on either side of the change from walking to running (PMC8629136).
    const mix = { run: min(2), walk: min(1) };
    const speeds = { run: 2.5, walk: 1.5 };
    expect(metresOfMix(mix, speeds)).toBe(390);
    expect(speedOfMix(mix, speeds)).toBeCloseTo(2.167, 3);
  });

  it('EVENT-2 people change from walking to running near 2.0 m/s, 7.2 km/h, 8:20 per km', () => {
    // PMC8629136.
    expect(paceOf(2.0)).toBe(500);
    expect(kmPerHour(500)).toBeCloseTo(7.2, 9);
  });
});

describe('Riegel 1981', () => {
  const time = (text: string): number =>
    text.split(':').reduce((sum, part) => sum * 60 + Number(part), 0);

  // Worked here on American Scientist 69(3):285-90, to the second.
  it.each([
    [5000, '25:00', 10_000, '52:07.4'],
    [5000, '30:00', 10_000, '1:02:32.9'],
    [3000, '20:00', 5000, '34:22.3'],
    [1609.344, '10:00', 5000, '33:15.3'],
    [5000, '18:52', 10_000, '39:20.1'],
  ])('EVENT-3 %i m in %s are %i m in %s', (from, given, to, expected) => {
    const found = riegel(ms(time(given) * 1000), from, to);
    expect(found.ok && Math.abs(found.value / 1000 - time(expected))).toBeLessThan(1);
  });

  it('EVENT-3 the factors are 2.08493 for twice the distance and 1.71854 from 3 to 5 km', () => {
    const factor = (from: number, to: number) => {
      const found = riegel(ms(1_000_000), from, to);
      return found.ok ? found.value / 1_000_000 : Number.NaN;
    };
    expect(factor(5000, 10_000)).toBeCloseTo(2.08493, 5);
    expect(factor(3000, 5000)).toBeCloseTo(1.71854, 5);
  });

  it('EVENT-3 it is refused outside of 210 to 13,800 s, before and after', () => {
    const at = (seconds: number, from = 5000, to = 5000) => {
      const found = riegel(ms(seconds * 1000), from, to);
      return found.ok ? 'ok' : found.error;
    };
    expect([209, 210, 13_800, 13_801].map((seconds) => at(seconds))).toEqual([
      'trial-time',
      'ok',
      'ok',
      'trial-time',
    ]);
    expect(at(7200, 10_000, 42_195)).toBe('event-time');
    expect(at(300, 1000, 400)).toBe('event-time');
    expect([at(1500, 0), at(1500, 5000, -1), at(1500, Number.NaN)]).toEqual([
      'distance',
      'distance',
      'distance',
    ]);
    expect(at(Number.NaN)).toBe('trial-time');
  });
});
