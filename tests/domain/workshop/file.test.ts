import { readFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import addFormats from 'ajv-formats';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { saysTheSame } from '../../../src/domain/exchange/compose.ts';
import { readProgramme } from '../../../src/domain/programme/read.ts';
import { applyEdit } from '../../../src/domain/workshop/apply-edit.ts';
import { blankSheet } from '../../../src/domain/workshop/blank.ts';
import { fileOf, sheetOf } from '../../../src/domain/workshop/file.ts';
import type { Sheet } from '../../../src/domain/workshop/sheet.ts';
import { newLeader, textBy } from '../../drivers/exchange/leader.ts';
import { marshProgramme } from '../../drivers/exchange/programmes.ts';
import { demo } from '../programme/files.ts';
import { demoSheet, edits } from './arbitraries.ts';

const schema = JSON.parse(
  readFileSync(new URL('../../../public/towpath-programme.schema.json', import.meta.url), 'utf8'),
);
const ajv = new Ajv2020({ strict: true, strictTypes: false });
addFormats.default(ajv);
const validate = ajv.compile(schema);

/** Only what a file carries: pins, what a cell said before and empty reminders stay on the phone. */
const spoken = (sheet: Sheet): Sheet => ({
  ...sheet,
  reminders: sheet.reminders.filter((reminder) => reminder.trim() !== ''),
  weeks: sheet.weeks.map((week) => ({
    ...week,
    sessions: Object.fromEntries(
      Object.entries(week.sessions).map(([id, cells]) => [id, cells.map(({ text }) => ({ text }))]),
    ),
  })),
});

describe('a sheet as a programme file', () => {
  it('SHOP-12 and back is the same sheet, whatever was done to it', () => {
    let valid = 0;
    fc.assert(
      fc.property(edits, (all) => {
        const sheet = spoken(all.reduce(applyEdit, demoSheet({ kept: { weather: [1, null] } })));
        const back = sheetOf(fileOf(sheet));
        if (!back.ok) return;
        valid += 1;
        expect(back.value).toEqual(sheet);
        expect(validate(JSON.parse(fileOf(sheet)))).toBe(true);
      }),
      { numRuns: 150 },
    );
    expect(valid).toBeGreaterThan(15);
  });

  it('SHOP-12 has its keys in the documented order, one session as one text', () => {
    const sheet = applyEdit(demoSheet({ kept: { weather: 'westerly' } }), {
      kind: 'add-session',
      week: 1,
      group: 'wren',
    });
    const file = JSON.parse(fileOf(sheet));
    expect(Object.keys(file)).toEqual([
      'format',
      'id',
      'revision',
      'title',
      'language',
      'startDate',
      'goal',
      'leader',
      'groups',
      'weeks',
      'reminders',
      'weather',
    ]);
    expect(file.weeks[0].sessions.wren).toBe(
      '5 min easy walk; 7 x (1 min walk, 2 min brisk walk); 5 min easy walk',
    );
    expect(file.weeks[1].sessions.wren).toHaveLength(2);
    expect(Object.keys(file.weeks[0].sessions)).toEqual(['wren', 'dunlin', 'curlew', 'swift']);
  });

  it('SHOP-12 keeps keys that it does not know, and leaves revision, keys and change to sending', () => {
    const key = 'B'.repeat(44);
    const sent = {
      ...demo(),
      revision: 7,
      change: 'Week 3 is easier.',
      leader: { name: 'Imogen', sign: key, seal: key, was: [] },
      weather: { wind: 'westerly' },
      proto: 1,
    };
    const text = JSON.stringify(sent).replace('"proto"', '"__proto__"');
    const sheet = sheetOf(text);
    if (!sheet.ok) throw new Error('not read');
    expect(Object.keys(sheet.value.kept ?? {})).toEqual(['weather', '__proto__']);
    expect(sheet.value).toMatchObject({
      leader: 'Imogen',
      kept: { weather: { wind: 'westerly' } },
    });
    const out = fileOf(sheet.value);
    expect(out).not.toContain('easier');
    expect(out).not.toContain(key);
    expect(out).toContain('"__proto__": 1');
    expect(readProgramme(out)).toMatchObject({ ok: true, value: { revision: 1 } });
  });

  it('SHOP-12 of a programme that was sent, and not changed since, is the same revision', () => {
    const leader = newLeader();
    for (const programme of [demo(), marshProgramme(8)]) {
      const text = textBy(leader, programme, { revision: 3, change: 'Week 3 is easier.' });
      const sheet = sheetOf(text);
      if (!sheet.ok) throw new Error('not read');
      expect(saysTheSame(text, fileOf(sheet.value))).toBe(true);
      const other = applyEdit(sheet.value, { kind: 'effort', week: 0, effort: 51 });
      expect(saysTheSame(text, fileOf(other))).toBe(false);
    }
  });

  it('SHOP-12 says what the demo says', () => {
    const out = readProgramme(fileOf(demoSheet()));
    const { text: _text, ...read } = out.ok ? out.value : { text: '' };
    const before = readProgramme(JSON.stringify(demo()));
    const { text: _other, ...expected } = before.ok ? before.value : { text: '' };
    expect(read).toEqual(expected);
  });

  it('SHOP-13 names every gap and every mistake with its place when it is read', () => {
    const sheet = [
      { kind: 'title', title: ' ' },
      { kind: 'cell', at: { week: 2, group: 'wren', session: 0 }, text: '5 m walk' },
      { kind: 'add-session', week: 3, group: 'swift' },
      { kind: 'cell', at: { week: 3, group: 'swift', session: 1 }, text: '' },
    ] as const;
    const read = readProgramme(fileOf(sheet.reduce<Sheet>(applyEdit, demoSheet())));
    expect(!read.ok && read.error.map(({ code, path }) => [code, path])).toEqual([
      ['text-empty', 'title'],
    ]);
    const titled = applyEdit(sheet.reduce<Sheet>(applyEdit, demoSheet()), {
      kind: 'title',
      title: 'x',
    });
    const plans = readProgramme(fileOf(titled));
    expect(!plans.ok && plans.error.map(({ path, plan }) => [path, plan?.code])).toEqual([
      ['weeks[2].sessions.wren[0]', 'unit-m'],
      ['weeks[3].sessions.swift[1]', 'empty'],
    ]);
  });

  it('SHOP-13 leaves out reminders without a word', () => {
    const sheet = applyEdit(demoSheet(), { kind: 'reminders', reminders: ['sip', ' ', ''] });
    expect(JSON.parse(fileOf(sheet)).reminders).toEqual(['sip']);
  });

  it('SHOP-14 a blank one has weeks and groups, and says what it still needs', () => {
    const sheet = blankSheet('marsh-a', 'en');
    const read = readProgramme(fileOf(sheet));
    expect(!read.ok && read.error.map(({ code, path }) => [code, path])).toEqual([
      ['text-empty', 'title'],
      ['text-empty', 'goal.name'],
      ['text-empty', 'leader.name'],
    ]);
    expect(sheet.weeks).toHaveLength(4);
    expect(sheet.groups).toHaveLength(2);
  });
});
