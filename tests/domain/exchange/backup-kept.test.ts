import { crc32 } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { backedUp, type Stores, writeBackup } from '../../../src/domain/exchange/backup.ts';
import { BACKUP_MAX, readBackup } from '../../../src/domain/exchange/backup-read.ts';
import { LOG_COLUMNS } from '../../../src/domain/exchange/log-table.ts';
import { entry } from '../../drivers/records/entries.ts';

const AT = Date.UTC(2027, 3, 12, 18);

const read = (text: string) => {
  const result = readBackup(text);
  return result.ok ? result.value : result.error;
};

const storesIn = (text: string): Stores | string => {
  const found = read(text);
  return typeof found === 'string' ? found : found.stores;
};

/** A backup as another program might write it: its lines are ours to choose. */
const cut = (...lines: readonly string[]): string =>
  ['{', '"format": "towpath-backup/1",', ...lines].join('\n');

describe('what a backup keeps', () => {
  it('REC-7 nothing of the session under way, of the leader’s keys, or of what others told', () => {
    const row: Stores[string] = [['a', { told: 'in trust' }]];
    const all = ['journal', 'meta', 'keys', 'heard', 'days', 'boards', 'log'];
    const stores = Object.fromEntries(all.map((name) => [name, row]));
    expect(backedUp(stores)).toEqual({ log: row });
    expect(writeBackup(stores, '', AT).match(/in trust/g)).toHaveLength(1);
  });

  it('REC-7 settings without what is true of one phone only', () => {
    const ofThisPhone = { pocketCheck: {}, pocketCheckSkipped: true, boardsGoOn: '2027-07-01' };
    const settings: Stores = { settings: [['all', { vibration: false, ...ofThisPhone }]] };
    expect(backedUp(settings)).toEqual({ settings: [['all', { vibration: false }]] });
    // The same names mean nothing in another store, and a list is no settings.
    const others: Stores = { tides: [['now', ofThisPhone]], settings: [['all', ['boardsGoOn']]] };
    expect(backedUp(others)).toEqual(others);
  });

  it('REC-7 a part that is there without a value goes as if it were not there', () => {
    const stores: Stores = { log: [['a', { note: undefined, effort: 3 }]] };
    expect(read(writeBackup(stores, '', AT))).toMatchObject({
      damage: 'none',
      stores: { log: [['a', { effort: 3 }]] },
    });
    const odd: Stores = { log: [['a', { how: () => 3 }]] };
    expect(backedUp(odd)).toEqual({ log: [] });
  });

  it('REC-7 a check has eight digits also where it begins with a nought (zlib)', () => {
    const stores = (n: number): Stores => ({ log: [['a', n]] });
    const checkOf = (n: number): number => crc32(`log\n["a",${n}]`);
    const small = Array.from({ length: 1000 }, (_, n) => n).find((n) => checkOf(n) < 2 ** 28);
    const file = JSON.parse(writeBackup(stores(small ?? -1), '', AT)) as { check: string };
    expect(file.check).toMatch(/^0[0-9a-f]{7}$/);
    expect(Number.parseInt(file.check, 16)).toBe(checkOf(small ?? -1));
  });
});

describe('what a file is', () => {
  it('REC-13 a calendar and a table are told by their first letters, whatever space is before them', () => {
    const head = LOG_COLUMNS.slice(0, 3).join(',');
    expect(read('\n  begin:vcalendar\r\nVERSION:2.0')).toBe('calendar');
    expect(read('Re: BEGIN:VCALENDAR')).toBe('foreign');
    expect(read(`\r\n${head},and,others`)).toBe('table');
    expect(read(`my ${head}`)).toBe('foreign');
  });

  it('REC-13 JSON is told by its format, and is foreign with none that is known', () => {
    expect(read('{"format":"towpath-keys/7"}')).toBe('keys');
    expect(read('{"format":"towpath-programme/2"}')).toBe('programme');
    expect(read('{"format":"tides/1"}')).toBe('foreign');
    expect(read('{"format":7}')).toBe('foreign');
  });

  it('REC-13 as many characters as may be are read, and not one more', () => {
    expect(read(' '.repeat(BACKUP_MAX))).toBe('empty');
    expect(read(' '.repeat(BACKUP_MAX + 1))).toBe('too-large');
  });

  it('REC-13 a mark of the order of bytes is left out at the beginning, and only there', () => {
    const stores: Stores = { log: [['a', entry({ feeling: { note: 'one\ufefftwo' } })]] };
    const file = writeBackup(stores, '', AT);
    expect(read(file)).toMatchObject({ damage: 'none', stores });
    expect(read(`\ufeff${file}`)).toMatchObject({ damage: 'none', stores });
  });
});

describe('what is read from a backup', () => {
  it('REC-13 rows are pairs of a key and a record; what else stands among them is none', () => {
    const rows = [['a', 1], ['b'], ['c', 2, 3], [4, 'd'], 'ef', null, { 0: 'g', 1: 5 }];
    const file = JSON.stringify({ format: 'towpath-backup/1', stores: { log: rows, days: 7 } });
    expect(storesIn(file)).toEqual({ log: [['a', 1]], days: [] });
  });

  it('REC-13 one without stores, or with other things for them, has none and is not as it was written', () => {
    for (const stores of [undefined, null, 'log', [[['a', 1]]]])
      expect(read(JSON.stringify({ format: 'towpath-backup/1', stores }))).toMatchObject({
        damage: 'changed',
        stores: {},
      });
  });

  it('REC-13 a log whose entries are no list is empty', () => {
    expect(storesIn('{"format":"towpath-log-export/1","entries":{"id":"a"}}')).toEqual({ log: [] });
    expect(storesIn('{"format":"towpath-log-export/1","entries":[7,{"id":8},{"id":"a"}]}')).toEqual(
      { log: [['a', { id: 'a' }]] },
    );
  });

  it('REC-13 the time at which it was made is a number, or is not told', () => {
    const made = (json: string) => read(`{"format":"towpath-backup/1","madeAt":${json}}`);
    expect(made('7')).toHaveProperty('madeAt', 7);
    for (const json of ['"7"', '1e999', 'null'])
      expect([json, made(json)]).not.toHaveProperty('1.madeAt');
  });
});

describe('what is left of one that was cut off', () => {
  it('REC-13 rows count behind the name of their store, which stands among the stores', () => {
    const text = cut(
      '["lost",{}],',
      '"about": [',
      '["of no store",{}],',
      '"stores": {',
      '["of none yet",{}],',
      '"log": [',
      '["a",{"n":1}],',
      'words,',
      '["b",{"n":2}]',
      '],',
      '"choices": [',
      '["marsh","wren"],',
      '["torn',
    );
    expect(storesIn(text)).toEqual({
      log: [
        ['a', { n: 1 }],
        ['b', { n: 2 }],
      ],
      choices: [['marsh', 'wren']],
    });
  });

  it('REC-13 a store that comes twice has the rows of both', () => {
    const text = cut('"stores": {', '"log": [', '["a",1],', '"log": [', '["b",2],');
    expect(storesIn(text)).toEqual({
      log: [
        ['a', 1],
        ['b', 2],
      ],
    });
  });

  it('REC-13 a name is one only where it has a line for itself', () => {
    const text = cut('"stores": {', '"log": [', '["a",1],', 'in "days": [', '["b",2],');
    expect(Object.keys(storesIn(text))).toEqual(['log']);
    const more = cut('"stores": {', '"log": [', '["a",1],', '"days": [ ]', '["b",2],');
    expect(Object.keys(storesIn(more))).toEqual(['log']);
  });

  it('REC-13 without a whole row nothing is left of it', () => {
    expect(storesIn(cut('"stores": {', '"log": [', '["a"', ''))).toBe('damaged');
    expect(storesIn(cut('"stores": {', '"log": [', '["a"]', ''))).toBe('damaged');
  });

  it('REC-13 it tells when it was made where that stands on a line of its own', () => {
    const rows = ['"stores": {', '"log": [', '["a",1],'];
    expect(read(cut('"madeAt": 7,', ...rows))).toHaveProperty('madeAt', 7);
    expect(read(cut('"about": "madeAt": 7,', ...rows))).not.toHaveProperty('madeAt');
    expect(read(cut('"madeAt": 7, "x"', ...rows))).not.toHaveProperty('madeAt');
    expect(read(cut(...rows))).not.toHaveProperty('madeAt');
  });

  it('REC-13 it tells whether a later version wrote it', () => {
    const text = cut('"stores": {', '"log": [', '["a",1],');
    expect(read(text)).toMatchObject({ damage: 'cut', newer: false });
    expect(read(text.replace('backup/1', 'backup/2'))).toMatchObject({
      damage: 'cut',
      newer: true,
    });
  });
});
