import { promisify } from 'node:util';
import { parse } from 'csv-parse/sync';
import spectrum from 'csv-spectrum';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { harmless, toCsv } from '../../../src/domain/exchange/csv.ts';
import { logExport } from '../../../src/domain/exchange/log-export.ts';
import {
  inOrder,
  LOG_COLUMNS,
  logTable,
  momentText,
} from '../../../src/domain/exchange/log-table.ts';
import type { LogEntry } from '../../../src/domain/log/entry.ts';
import { entry, someEntry } from '../../drivers/records/entries.ts';

/*
 * Read back by csv-parse, a reader that shares no code with us; csv-spectrum is a set of files that
 * readers of tables are tried with.
 */

const rows = (text: string): string[][] => parse(text, { bom: true, record_delimiter: '\r\n' });

const files = await promisify(spectrum)();
const names = files.map(({ name }) => name);
const spectrumFile = (kind: 'csv' | 'json', name: string): string =>
  files.find((file) => file.name === name)?.[kind].toString('utf8') ?? '';

describe('comma-separated values', () => {
  it('REC-14 the examples of RFC 4180 come out as it prints them', () => {
    expect(
      toCsv([
        ['aaa', 'bbb', 'ccc'],
        ['zzz', 'yyy', 'xxx'],
      ]),
    ).toBe('aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n');
    // Spaces belong to a cell (2.4); no quotes but where something would be lost without.
    expect(toCsv([['a b', '', ' c', 'd '], ['']])).toBe('a b,," c","d "\r\n""\r\n');
    expect(toCsv([['alone']])).toBe('alone\r\n');
    // Sections 2.6 and 2.7: the RFC quotes all three, which it calls optional for the others.
    expect(toCsv([['aaa', 'b\r\nbb', 'ccc']])).toBe('aaa,"b\r\nbb",ccc\r\n');
    expect(toCsv([['aaa', 'b"bb', 'ccc']])).toBe('aaa,"b""bb",ccc\r\n');
    expect(rows('"aaa","b""bb","ccc"')).toEqual([['aaa', 'b"bb', 'ccc']]);
  });

  it('REC-14 what csv-spectrum holds is read back whole from how we write it', () => {
    expect(names.length).toBeGreaterThanOrEqual(10);
    for (const name of names) {
      // One of its files holds an object, the others a list.
      const objects = [JSON.parse(spectrumFile('json', name)) as unknown].flat() as readonly Record<
        string,
        string
      >[];
      const head = Object.keys(objects[0] ?? {});
      const table = [head, ...objects.map((object) => head.map((key) => object[key] ?? ''))];
      expect([name, rows(toCsv(table))]).toEqual([name, table]);
    }
    // Where its files quote only what must be quoted, ours is theirs to the letter.
    for (const name of ['simple_crlf', 'comma_in_quotes', 'escaped_quotes', 'utf8']) {
      const theirs = spectrumFile('csv', name)
        .replace(/\r?\n/g, '\r\n')
        .replace(/(\r\n)?$/, '\r\n');
      const table = parse(theirs, { record_delimiter: '\r\n' }) as string[][];
      expect([name, toCsv(table).replaceAll('"', '')]).toEqual([name, theirs.replaceAll('"', '')]);
    }
  });

  it('REC-14 whatever is in the cells, another reader finds it', () => {
    const table = fc.integer({ min: 1, max: 5 }).chain((width) =>
      fc.array(fc.array(fc.string({ unit: 'binary' }), { minLength: width, maxLength: width }), {
        minLength: 1,
        maxLength: 6,
      }),
    );
    fc.assert(
      fc.property(table, (cells) => {
        expect(parse(toCsv(cells), { record_delimiter: '\r\n' })).toEqual(cells);
      }),
    );
  });

  it('REC-16 no cell begins as a formula does, whatever is written (OWASP, CSV Injection)', () => {
    const rows: readonly (readonly [string, string])[] = [
      ['=1+1', "'=1+1"],
      ['+44 20', "'+44 20"],
      ['-5 degrees', "'-5 degrees"],
      ['@home', "'@home"],
      ['\t=1', "'\t'=1"],
      ['\r=1', "'\r'=1"],
      [' =1', "' =1"],
      ['"=1"', `'"=1"`],
      ['\uff1d1', "'\uff1d1"],
      ['fine;=1', "fine;'=1"],
      ['fine;=1|-2', "fine;'=1|'-2"],
      ['fine\n=1', "fine\n'=1"],
      ['wet, -2 degrees', 'wet, -2 degrees'],
      ['easy', 'easy'],
    ];
    for (const [given, cell] of rows) expect([given, harmless(given)]).toEqual([given, cell]);
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), fc.constantFrom(...'=+-@\t\r'), (text, sign) => {
        expect(harmless(sign + text)[0]).toBe("'");
        expect(harmless(harmless(text))).toBe(harmless(text));
      }),
    );
  });
});

describe('the log as a table', () => {
  it('REC-17 says every session in a row, oldest first, in columns that keep their places', () => {
    const table = logTable([
      entry({ id: 'b', startedAt: 2, note: 1 } as object),
      entry({
        id: 'a',
        startedAt: Date.UTC(2027, 2, 7, 23, 30),
        offsetMinutes: 345,
        localDate: '2027-03-08',
        feeling: {
          effort: 6,
          effortLater: 7,
          niggle: { place: 'shin', side: 'left', severity: 2 },
          soreness: true,
          warningSign: false,
          note: '=HYPERLINK("x"), wet\r\nwindy',
        },
        distanceM: 3100,
      }),
    ]);
    const [head, first, second] = rows(table);
    expect(head).toEqual(LOG_COLUMNS);
    expect(first?.at(-1)).toBe('b');
    expect(Object.fromEntries(LOG_COLUMNS.map((name, n) => [name, second?.[n]]))).toEqual({
      date: '2027-03-08',
      iso_week: '2027-W10',
      started: '2027-03-08T05:15:00+05:45',
      zone: 'Europe/London',
      programme: 'Six weeks to the Heron Loop',
      revision: '1',
      group: 'Wren',
      week: '2',
      session: '1',
      how: 'app',
      outcome: 'finished',
      done_seconds: '1860',
      active_seconds: '1860',
      distance_m: '3100',
      target_effort: '5',
      effort: '6',
      effort_later: '7',
      niggle: 'shin',
      niggle_side: 'left',
      niggle_severity: '2',
      soreness: 'yes',
      warning_sign: 'no',
      note: `'=HYPERLINK("x"), wet\r\nwindy`,
      plan: '5 min easy walk; 7 x (1 min walk, 2 min brisk walk); 5 min easy walk',
      id: 'a',
    });
  });

  it('REC-17 sessions that began at one moment stand by their ids, whichever was written first', () => {
    const [late, b, a] = [
      entry({ id: 'late', startedAt: 9 }),
      entry({ id: 'b', startedAt: 7 }),
      entry({ id: 'a', startedAt: 7 }),
    ] as const;
    const ids = (log: readonly LogEntry[]) => inOrder(log).map(({ id }) => id);
    for (const log of [
      [late, b, a],
      [late, a, b],
      [a, late, b],
      [b, a, late],
    ])
      expect(ids(log)).toEqual(['a', 'b', 'late']);
  });

  it('REC-17 what was not said is an empty cell', () => {
    const { feltAt: _, ...bare } = entry({ feeling: {} });
    const [, row = []] = rows(logTable([bare]));
    expect(row.join()).not.toContain('undefined');
    for (const unsaid of ['distance_m', 'effort', 'effort_later', 'niggle', 'soreness', 'note'])
      expect([unsaid, row[LOG_COLUMNS.indexOf(unsaid)]]).toEqual([unsaid, '']);
  });

  it('REC-17 moments are those of the place, and the day is never moved by whoever reads the file', () => {
    expect(momentText(Date.UTC(2027, 2, 8, 4, 59), -300)).toBe('2027-03-07T23:59:00-05:00');
    // RFC 3339, section 4.3: -00:00 says that the place is not known.
    expect(momentText(Date.UTC(2027, 2, 8, 4, 59), 0)).toBe('2027-03-08T04:59:00+00:00');
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 4e12 }),
        fc.integer({ min: -720, max: 840 }),
        (utc, offset) => {
          const second = Math.floor(utc / 1000) * 1000;
          expect(Date.parse(momentText(utc, offset))).toBe(second);
        },
      ),
    );
  });

  it('REC-17 begins with a byte order mark, for spreadsheets; the JSON does not, for programs', () => {
    expect(logTable([]).startsWith('\ufeffdate,iso_week')).toBe(true);
    expect(logExport([], 5).startsWith('{')).toBe(true);
  });

  it('REC-18 the log as JSON holds every entry as it is kept, those of a newer version too', () => {
    fc.assert(
      fc.property(fc.array(someEntry), (entries) => {
        const kept = [
          ...entries,
          { format: 'towpath-log/9', id: 'later', secret: [1, { a: null }] },
        ];
        expect(JSON.parse(logExport(kept, 7))).toEqual({
          format: 'towpath-log-export/1',
          madeAt: 7,
          entries: kept,
        });
      }),
    );
  });
});
