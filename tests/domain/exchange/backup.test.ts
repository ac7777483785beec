import { crc32 } from 'node:zlib';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { DEMO_PROGRAMME_TEXT } from '../../../src/app/demo/demo.ts';
import { backedUp, type Stores, writeBackup } from '../../../src/domain/exchange/backup.ts';
import { BACKUP_MAX, readBackup } from '../../../src/domain/exchange/backup-read.ts';
import { toCalendar } from '../../../src/domain/exchange/calendar.ts';
import { logExport } from '../../../src/domain/exchange/log-export.ts';
import { logTable } from '../../../src/domain/exchange/log-table.ts';
import { entry } from '../../drivers/records/entries.ts';

const AT = Date.UTC(2027, 3, 12, 18);

const STORES: Stores = {
  programmes: [['marsh', { id: 'marsh', text: '{"a":"}\\n]"}', cameAt: 1 }]],
  choices: [['marsh', 'wren']],
  log: ['a', 'b', 'c'].map((id) => [id, entry({ id, feeling: { note: '"],\n[' } })]),
};

const FILE = writeBackup(STORES, 'Everything Towpath keeps.', AT);

const read = (text: string) => {
  const result = readBackup(text);
  return result.ok ? result.value : result.error;
};

describe('a backup file', () => {
  it('REC-7 is JSON that says what it is, when it was made, and holds every record', () => {
    expect(JSON.parse(FILE)).toMatchObject({
      format: 'towpath-backup/1',
      about: 'Everything Towpath keeps.',
      madeAt: AT,
      stores: STORES,
    });
  });

  it('REC-7 keeps stores and keys that this version does not know, and nothing that JSON would change', () => {
    const strange: Stores = {
      tides: [['today', { high: [1, null, true], low: 'x' }]],
      pictures: [['me', { made: new Uint8Array(3) }]],
      moments: [['now', { at: new Date(0) }]],
    };
    expect(backedUp(strange)).toEqual({ tides: strange.tides, pictures: [], moments: [] });
    // A database may have numbers for keys; JSON rows of them would be others.
    const numbered = { log: [[7, 'x']] } as unknown as Stores;
    expect(backedUp(numbered)).toEqual({ log: [] });
  });

  it('REC-7 its check is the CRC-32 that another implementation counts (zlib)', () => {
    const file = JSON.parse(
      writeBackup({ log: [['a', { note: 'é, 鹭, \u{1f99a}' }]], sent: [] }, '', AT),
    ) as { check: string };
    const lines = ['log', '["a",{"note":"\\u00e9, \\u9e6d, \\ud83e\\udd9a"}]', 'sent'];
    expect(file.check).toBe(crc32(lines.join('\n')).toString(16).padStart(8, '0'));
  });

  it('REC-7 laid out anew by another program it is still whole', () => {
    expect(read(JSON.stringify(JSON.parse(FILE), null, 4))).toMatchObject({ damage: 'none' });
    expect(read(`\ufeff${FILE.replaceAll('\n', '\r\n')}`)).toMatchObject({ damage: 'none' });
  });

  it('REC-13 a changed one is told from one that is as it was written', () => {
    const changed = FILE.replace('"doneSeconds":1860', '"doneSeconds":1861');
    expect(read(changed)).toMatchObject({ damage: 'changed', newer: false });
  });

  it('REC-13 one that is cut off gives the records that are whole, and only as they were', () => {
    const all = Object.entries(STORES).flatMap(([name, rows]) => rows.map((row) => [name, row]));
    fc.assert(
      fc.property(fc.integer({ min: 0, max: FILE.length - 3 }), (end) => {
        const found = read(FILE.slice(0, end));
        if (typeof found === 'string') return;
        expect(found.damage).toBe('cut');
        const kept = Object.entries(found.stores).flatMap(([name, rows]) =>
          rows.map((row) => [name, row]),
        );
        expect(all.slice(0, kept.length)).toEqual(kept);
      }),
    );
    const most = read(FILE.slice(0, -40));
    expect(most).toMatchObject({ kind: 'backup', madeAt: AT });
    const timeless = read(FILE.slice(0, -40).replace(/"madeAt.*\n/, ''));
    expect(timeless).toMatchObject({ kind: 'backup', damage: 'cut' });
    expect(timeless).not.toHaveProperty('madeAt');
    expect(read(FILE)).toMatchObject({ kind: 'backup', madeAt: AT });
    expect(typeof most === 'string' ? 0 : most.stores.log?.length).toBe(2);
    expect(read(FILE.slice(0, 60))).toBe('damaged');
  });

  it('REC-13 one of a later version is read as far as it is known', () => {
    const later = FILE.replace('towpath-backup/1', 'towpath-backup/2').replace(/"check".*\n/, '');
    expect(read(later)).toMatchObject({ newer: true, damage: 'none', stores: STORES });
  });

  it('REC-13 the log as JSON can be taken in too', () => {
    const log = [entry({ id: 'a' }), { no: 'id' }];
    expect(read(logExport(log, AT))).toEqual({
      kind: 'log',
      stores: { log: [['a', log[0]]] },
      madeAt: AT,
      newer: false,
      damage: 'none',
    });
  });

  it('REC-13 of every other file it is said what it is', () => {
    expect(read('')).toBe('empty');
    expect(read(' \n')).toBe('empty');
    expect(read(DEMO_PROGRAMME_TEXT)).toBe('programme');
    expect(read('{"format":"towpath-keys/1"}')).toBe('keys');
    expect(read(logTable([]))).toBe('table');
    expect(read(toCalendar([], AT))).toBe('calendar');
    expect(read('{"format":"towpath-backup/1"')).toBe('damaged');
    for (const foreign of ['[]', '{}', 'null', 'Dear Imogen', '%PDF-1.4', '['.repeat(100_000)])
      expect([foreign.slice(0, 9), read(foreign)]).toEqual([foreign.slice(0, 9), 'foreign']);
    expect(read('x'.repeat(BACKUP_MAX + 1))).toBe('too-large');
  });

  it('REC-13 whatever the text, nothing is thrown', () => {
    fc.assert(
      fc.property(
        fc.oneof(
          fc.string(),
          fc.json(),
          fc.json().map((json) => `{"format":"towpath-backup/1","stores":${json}}`),
        ),
        (text) => {
          expect(() => readBackup(text)).not.toThrow();
        },
      ),
    );
  });
});
