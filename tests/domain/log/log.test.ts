import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { entryOf } from '../../../src/domain/log/entry-of.ts';
import { localDate } from '../../../src/domain/log/local-date.ts';
import {
  ENTRY_MIGRATIONS,
  type EntryMigration,
  LOG_FORMAT,
  readEntry,
} from '../../../src/domain/log/read-entry.ts';
import { Phone } from '../../drivers/player.ts';
import { ABOUT, EASY_DAY, scoreOf } from '../../drivers/sessions.ts';

/** An entry as some version left it: frozen, never written anew. */
const frozen = (version: number): object =>
  JSON.parse(readFileSync(new URL(`../../fixtures/log/v${version}.json`, import.meta.url), 'utf8'));

describe('log entries', () => {
  it('LOG-1 tells what was gone through, not what was planned', () => {
    const phone = new Phone(scoreOf(EASY_DAY)).start().pass(70).say('skip').pass(40.4).say('end');
    expect(entryOf(phone.session)).toMatchObject({
      id: ABOUT.id,
      outcome: 'ended-early',
      doneSeconds: 110,
      activeSeconds: 110,
      covered: [
        [0, 70],
        [90, 130],
      ],
      plan: ABOUT.plan,
      feeling: {},
    });
  });

  it('LOG-1 stretches that meet are one, and their seconds never exceed the done seconds by more than rounding', () => {
    fc.assert(
      fc.property(
        fc.array(
          fc.tuple(
            fc.constantFrom('skip', 'back', 'hold', 'go-on', 'undo'),
            fc.integer({ min: 100, max: 40_000 }),
          ),
          { maxLength: 12 },
        ),
        (acts) => {
          const phone = new Phone(scoreOf(EASY_DAY)).start();
          for (const [wish, wait] of acts) phone.pass(wait / 1000, 0.5).say(wish as 'skip');
          const { covered, doneSeconds } = entryOf(phone.session);
          let sum = 0;
          covered.forEach(([from, to], i) => {
            expect(from).toBeLessThan(to);
            expect(from).toBeGreaterThan(covered[i - 1]?.[1] ?? -1);
            sum += to - from;
          });
          expect(Math.abs(sum - doneSeconds)).toBeLessThanOrEqual(covered.length + 1);
        },
      ),
    );
  });

  it('LOG-2 the date is the one at the place of the start, on both sides of midnight and of UTC', () => {
    // Worked by hand; offsets are those of the zones named (IANA time zone database).
    const at = Date.UTC(2027, 2, 7, 23, 30);
    expect(localDate(at, 0)).toBe('2027-03-07');
    expect(localDate(at, 60)).toBe('2027-03-08');
    expect(localDate(at, 345)).toBe('2027-03-08');
    expect(localDate(at, -300)).toBe('2027-03-07');
    expect(localDate(Date.UTC(2027, 2, 8, 4, 59), -300)).toBe('2027-03-07');
    expect(localDate(Date.UTC(2027, 2, 8, 5, 0), -300)).toBe('2027-03-08');
    expect(localDate(Date.UTC(2026, 11, 31, 10, 0), 840)).toBe('2027-01-01');
  });

  it('LOG-2 the date agrees with the one that the zone database gives', () => {
    const date = new Intl.DateTimeFormat('en-CA', {
      timeZone: 'Europe/London',
      dateStyle: 'short',
    });
    fc.assert(
      fc.property(fc.integer({ min: Date.UTC(2026, 0), max: Date.UTC(2029, 0) }), (utc) => {
        const [offset] = [0, 60].filter((minutes) => londonTime(utc) === clockAt(utc, minutes));
        expect(localDate(utc, offset ?? Number.NaN)).toBe(date.format(utc));
      }),
    );
  });

  it('LOG-3 an entry of this format is read as it is, one of a newer format is not shown', () => {
    const entry = entryOf(new Phone(scoreOf(EASY_DAY)).start().pass(391).session);
    expect(readEntry(entry)).toBe(entry);
    expect(readEntry({ ...entry, format: 'towpath-log/3' })).toBeUndefined();
    for (const odd of [undefined, null, 5, 'x', {}]) expect(readEntry(odd)).toBeUndefined();
  });

  it('LOG-3 an entry of the first shape was led by the app, and says so from now on', () => {
    const first = frozen(1);
    const read = readEntry(first);
    expect(read).toEqual({ ...first, format: 'towpath-log/2', how: 'app' });
    expect(readEntry(read)).toBe(read);
  });

  it('LOG-3 an entry of the second shape is read as it was written', () => {
    const second = frozen(2);
    expect(readEntry(second)).toBe(second);
    expect(second).toMatchObject({
      how: 'there',
      distanceM: 3100,
      feeling: { effortLater: 5, soreness: true, niggle: { severity: 2 } },
    });
  });

  it('LOG-3 each step has a name of its own and begins where the one before ended', () => {
    expect(new Set(ENTRY_MIGRATIONS.map(({ name }) => name)).size).toBe(ENTRY_MIGRATIONS.length);
    const path = ENTRY_MIGRATIONS.flatMap(({ from, to }) => [from, to]);
    const expected = ENTRY_MIGRATIONS.flatMap((_, i) => [
      `towpath-log/${i + 1}`,
      `towpath-log/${i + 2}`,
    ]);
    expect(path).toEqual(expected);
    expect(path.at(-1)).toBe(LOG_FORMAT);
  });

  it('LOG-3 an older entry is carried over step by step, each step once and in order', () => {
    const steps: EntryMigration[] = [
      {
        name: 'minutes-to-seconds',
        from: 'x/1',
        to: 'x/2',
        up: (e) => ({ ...e, s: Number(e.m) * 60 }),
      },
      {
        name: 'seconds-doubled',
        from: 'x/2',
        to: 'x/3',
        up: (e) => ({ ...e, s: Number(e.s) * 2 }),
      },
    ];
    expect(readEntry({ format: 'x/1', m: 2 }, steps, 'x/3')).toEqual({
      format: 'x/3',
      m: 2,
      s: 240,
    });
    expect(readEntry({ format: 'x/2', s: 5 }, steps, 'x/3')).toEqual({ format: 'x/3', s: 10 });
    expect(readEntry({ format: 'x/4' }, steps, 'x/3')).toBeUndefined();
  });
});

const londonTime = (utc: number): string =>
  new Intl.DateTimeFormat('en-GB', {
    timeZone: 'Europe/London',
    hour: '2-digit',
    minute: '2-digit',
  }).format(utc);

const clockAt = (utc: number, offset: number): string =>
  new Date(utc + offset * 60_000).toISOString().slice(11, 16);
