import { describe, expect, it } from 'vitest';
import { applyEdit, tryEdit } from '../../../src/domain/workshop/apply-edit.ts';
import { blankSheet } from '../../../src/domain/workshop/blank.ts';
import type { Edit } from '../../../src/domain/workshop/edit.ts';
import { groupId, programmeId } from '../../../src/domain/workshop/ids.ts';
import type { Sheet } from '../../../src/domain/workshop/sheet.ts';
import { demoSheet } from './arbitraries.ts';

const all = (sheet: Sheet, ...edits: readonly Edit[]): Sheet => edits.reduce(applyEdit, sheet);
const blank = blankSheet('marsh-a', 'en');
const first = { week: 0, group: 'a', session: 0 };
const cell = (sheet: Sheet, { week, group, session } = first) =>
  sheet.weeks[week]?.sessions[group]?.[session];
const refused = (sheet: Sheet, edit: Edit) => {
  const next = tryEdit(sheet, edit);
  return next.ok ? undefined : next.error.code;
};

describe('a session in writing', () => {
  it('SHOP-3 holds what was typed, and its last readable text while it cannot be read', () => {
    const typed = ['5 min walk', '5 min walk; ', '5 min walk; 10', '5 min walk; 10 min run'];
    const seen = typed.map((_, n) =>
      cell(
        all(
          blank,
          ...typed.slice(0, n + 1).map((t) => ({ kind: 'cell', at: first, text: t }) as const),
        ),
      ),
    );
    expect(seen).toEqual([
      { text: '5 min walk' },
      { text: '5 min walk; ' },
      { text: '5 min walk; 10', good: '5 min walk; ' },
      { text: '5 min walk; 10 min run' },
    ]);
  });

  it('SHOP-3 that never could be read has no last readable text', () => {
    expect(cell(all(blank, { kind: 'cell', at: first, text: 'hop' }))).toEqual({ text: 'hop' });
  });

  it('SHOP-3 stays pinned while it is typed into, until it is let go', () => {
    const pinned = all(
      blank,
      { kind: 'pin', at: first, pinned: true },
      { kind: 'cell', at: first, text: '9 m walk' },
    );
    expect(cell(pinned)).toEqual({ text: '9 m walk', pinned: true });
    expect(cell(all(pinned, { kind: 'pin', at: first, pinned: false }))).toEqual({
      text: '9 m walk',
    });
  });

  it('SHOP-3 is rewritten only when asked, and only when it can be read', () => {
    const rough = all(blank, { kind: 'cell', at: first, text: "walk 5'\n run for 90 sec" });
    expect(cell(all(rough, { kind: 'tidy', at: first }))?.text).toBe('5 min walk; 1 min 30 s run');
    const wrong = all(blank, { kind: 'cell', at: first, text: '5 m walk' });
    expect(all(wrong, { kind: 'tidy', at: first })).toBe(wrong);
  });

  it('SHOP-3 of more than 2,000 characters is refused; 2,000 of any script are not', () => {
    const text = `5 min walk "${'🐦'.repeat(60)}"`.padEnd(2000 + 60, ' ');
    expect(refused(blank, { kind: 'cell', at: first, text })).toBeUndefined();
    expect(tryEdit(blank, { kind: 'cell', at: first, text: `${text} ` })).toEqual({
      ok: false,
      error: { code: 'text-long', detail: { limit: 2000 } },
    });
  });
});

describe('sessions of a week', () => {
  it('SHOP-6 another one is a copy of the last, free to be changed', () => {
    const sheet = all(
      blank,
      { kind: 'cell', at: first, text: '20 min walk' },
      { kind: 'pin', at: first, pinned: true },
      { kind: 'add-session', week: 0, group: 'a' },
    );
    expect(sheet.weeks[0]?.sessions.a).toEqual([
      { text: '20 min walk', pinned: true },
      { text: '20 min walk' },
    ]);
    expect(sheet.weeks[0]?.sessions.b).toHaveLength(1);
  });

  it('SHOP-6 are seven at most and one at least', () => {
    const add: Edit = { kind: 'add-session', week: 0, group: 'a' };
    const seven = all(blank, ...Array.from({ length: 6 }, () => add));
    expect(seven.weeks[0]?.sessions.a).toHaveLength(7);
    expect(refused(seven, add)).toBe('sessions-full');
    expect(refused(blank, { kind: 'remove-session', at: first })).toBe('last-session');
    const six = all(seven, { kind: 'remove-session', at: { ...first, session: 6 } });
    expect(six.weeks[0]?.sessions.a).toHaveLength(6);
  });

  it('SHOP-6 one of them is done together, as long as there are that many times', () => {
    const together = all(blank, { kind: 'together', week: 1, session: 3 });
    expect(together.weeks[1]?.together).toBe(3);
    expect(refused(blank, { kind: 'together', week: 1, session: 4 })).toBe('number');
    const fewer = all(together, { kind: 'times', week: 1, min: 2, max: 2 });
    expect(fewer.weeks[1]).toMatchObject({ timesPerWeek: { min: 2, max: 2 }, together: 2 });
    expect(all(together, { kind: 'together', week: 1, session: 0 }).weeks[1]).not.toHaveProperty(
      'together',
    );
  });
});

describe('weeks', () => {
  const focus = (sheet: Sheet): readonly string[] => sheet.weeks.map((week) => week.focus);
  const named = all(
    blank,
    ...['one', 'two', 'three', 'four'].map(
      (text, week) => ({ kind: 'focus', week, focus: text }) as const,
    ),
  );

  it('SHOP-7 are added as a copy of the one before, without its pins', () => {
    const pinned = all(named, { kind: 'pin', at: { ...first, week: 1 }, pinned: true });
    const added = all(pinned, { kind: 'add-week', at: 2 });
    expect(focus(added)).toEqual(['one', 'two', 'two', 'three', 'four']);
    expect(cell(added, { ...first, week: 1 })).toEqual({ text: '', pinned: true });
    expect(cell(added, { ...first, week: 2 })).toEqual({ text: '' });
    expect(focus(all(named, { kind: 'add-week', at: 0 }))[1]).toBe('one');
    expect(focus(all(named, { kind: 'add-week', at: 4 }))).toHaveLength(5);
    expect(all(named, { kind: 'add-week', at: 5 })).toBe(named);
  });

  it('SHOP-7 are moved and removed, up to 52 and down to one', () => {
    expect(focus(all(named, { kind: 'move-week', from: 3, to: 0 }))).toEqual([
      'four',
      'one',
      'two',
      'three',
    ]);
    expect(focus(all(named, { kind: 'remove-week', week: 1 }))).toEqual(['one', 'three', 'four']);
    const remove: Edit = { kind: 'remove-week', week: 0 };
    expect(refused(all(named, remove, remove, remove), remove)).toBe('last-week');
    const full = all(
      named,
      ...Array.from({ length: 48 }, () => ({ kind: 'add-week', at: 1 }) as const),
    );
    expect(full.weeks).toHaveLength(52);
    expect(refused(full, { kind: 'add-week', at: 0 })).toBe('weeks-full');
  });

  it('SHOP-7 times per week stay in order: the number that was not touched follows', () => {
    const times = (min: number, max: number) =>
      all(blank, { kind: 'times', week: 0, min, max }).weeks[0]?.timesPerWeek;
    expect(times(2, 5)).toEqual({ min: 2, max: 5 });
    expect(times(4, 3)).toEqual({ min: 4, max: 4 });
    expect(times(2, 1)).toEqual({ min: 1, max: 1 });
    expect(refused(blank, { kind: 'times', week: 0, min: 2, max: 8 })).toBe('number');
    expect(refused(blank, { kind: 'effort', week: 0, effort: 50.5 })).toBe('number');
    expect(refused(blank, { kind: 'effort', week: 0, effort: 101 })).toBe('number');
  });
});

describe('groups', () => {
  it('SHOP-8 get an id of their name, safe and their own, and keep it when they are renamed', () => {
    expect(groupId('Sand Martin', [])).toBe('sand-martin');
    expect(groupId('Sérénade d’été', [])).toBe('serenade-d-ete');
    expect(groupId('沼地', [])).toBe('group');
    expect(groupId('Wren', ['wren', 'wren-2'])).toBe('wren-3');
    expect(groupId('-'.repeat(90) + 'x'.repeat(90), [])).toMatch(
      /^[a-z0-9](?:[a-z0-9-]{0,62}[a-z0-9])?$/,
    );
    const renamed = all(demoSheet(), { kind: 'group', id: 'wren', change: { name: 'Reed' } });
    expect(renamed.groups[0]).toMatchObject({ id: 'wren', name: 'Reed' });
  });

  it('SHOP-8 a new one begins with the sessions of the last, so that they end together', () => {
    const sheet = all(demoSheet(), { kind: 'add-group', name: 'Heron', for: 'Runs already' });
    expect(sheet.groups.at(-1)).toEqual({ id: 'heron', name: 'Heron', for: 'Runs already' });
    for (const week of sheet.weeks) expect(week.sessions.heron).toEqual(week.sessions.swift);
  });

  it('SHOP-8 one that is removed takes its sessions with it, and is not the last', () => {
    const sheet = all(demoSheet(), { kind: 'remove-group', id: 'dunlin' });
    expect(sheet.groups.map(({ id }) => id)).toEqual(['wren', 'curlew', 'swift']);
    for (const week of sheet.weeks) expect(Object.keys(week.sessions)).toHaveLength(3);
    const one = all(blank, { kind: 'remove-group', id: 'a' });
    expect(refused(one, { kind: 'remove-group', id: 'b' })).toBe('last-group');
  });

  it('SHOP-8 are put in another order, and are eight at most', () => {
    const sheet = all(demoSheet(), { kind: 'move-group', id: 'swift', to: 0 });
    expect(sheet.groups.map(({ id }) => id)).toEqual(['swift', 'wren', 'dunlin', 'curlew']);
    const add: Edit = { kind: 'add-group', name: 'Heron', for: '' };
    const full = all(sheet, add, add, add, add);
    expect(full.groups.map(({ id }) => id).slice(4)).toEqual([
      'heron',
      'heron-2',
      'heron-3',
      'heron-4',
    ]);
    expect(refused(full, add)).toBe('groups-full');
  });
});

describe('what a programme says of itself', () => {
  it('SHOP-9 is one line each, without what cannot be seen', () => {
    const sheet = all(
      blank,
      { kind: 'title', title: 'Six weeks\r\nto the\tLoop\u202e' },
      { kind: 'leader', leader: 'Imo\u0007gen' },
      { kind: 'goal', name: 'Heron\nLoop', distanceM: 1609.344 },
      { kind: 'reminders', reminders: ['stand-tall', 'Wave\nat the herons'] },
    );
    expect(sheet).toMatchObject({
      title: 'Six weeks to the Loop',
      leader: 'Imogen',
      goal: { name: 'Heron Loop', distanceM: 1609.344 },
      reminders: ['stand-tall', 'Wave at the herons'],
    });
    expect(refused(blank, { kind: 'title', title: 'x'.repeat(121) })).toBe('text-long');
    expect(refused(blank, { kind: 'goal', distanceM: 0 })).toBe('number');
    expect(refused(blank, { kind: 'goal', distanceM: Number.NaN })).toBe('number');
    const many = Array.from({ length: 51 }, () => 'sip');
    expect(refused(blank, { kind: 'reminders', reminders: many })).toBe('reminders-full');
  });

  it('SHOP-9 every line end that Unicode knows is a space (Unicode 16, section 5.8)', () => {
    for (const end of ['\r\n', '\n', '\r', '\u0085', '\v', '\f', '\u2028', '\u2029'])
      expect(all(blank, { kind: 'title', title: `Six${end}weeks` }).title).toBe('Six weeks');
  });

  // Weekdays by the calendar of 2027: 1 March is a Monday (ISO 8601 week 9).
  it('SHOP-9 starts on the Monday of the week that was chosen, or on none', () => {
    const start = (date: string) => all(blank, { kind: 'start-date', date }).startDate;
    expect(['2027-03-01', '2027-03-04', '2027-03-07', '2027-03-08'].map(start)).toEqual([
      '2027-03-01',
      '2027-03-01',
      '2027-03-01',
      '2027-03-08',
    ]);
    const dated = all(blank, { kind: 'start-date', date: '2027-03-01' });
    expect(all(dated, { kind: 'start-date', date: '' })).not.toHaveProperty('startDate');
    expect(refused(dated, { kind: 'start-date', date: '2027-02-30' })).toBe('date');
  });

  it('SHOP-9 the day of the event is given and taken away', () => {
    const dated = all(blank, { kind: 'goal-date', date: '2027-04-11' });
    expect(dated.goal.date).toBe('2027-04-11');
    expect(all(dated, { kind: 'goal-date', date: '' }).goal).toEqual(blank.goal);
    expect(refused(blank, { kind: 'goal-date', date: 'in April' })).toBe('date');
  });

  it('SHOP-9 a programme has an id of its title and chance', () => {
    expect(programmeId('Six weeks to the Heron Loop', 'A1b2-C3d4')).toBe(
      'six-weeks-to-the-heron-loop-a1b2c3',
    );
    expect(programmeId('', '')).toBe('programme-0');
  });
});

describe('a draft taken over', () => {
  it('SHOP-1 becomes the sheet, under the id that the programme has', () => {
    const draft = demoSheet({ id: 'draft', title: 'Drafted' });
    expect(all(blank, { kind: 'replace', sheet: draft })).toEqual({ ...draft, id: 'marsh-a' });
  });

  it('SHOP-2 is refused whole when something in it is over', () => {
    const { weeks } = demoSheet();
    const sessions = { ...weeks[0]?.sessions, puffin: [{ text: '5 min walk' }] };
    const strange = weeks.map((week, n) => (n === 0 ? { ...week, sessions } : week));
    const replace = (change: Partial<Sheet>): Edit => ({
      kind: 'replace',
      sheet: demoSheet(change),
    });
    expect(refused(blank, replace({ weeks: strange }))).toBe('shape');
    expect(refused(blank, replace({ weeks: [] }))).toBe('last-week');
    expect(refused(blank, replace({ groups: [] }))).toBe('last-group');
    expect(refused(blank, replace({ startDate: '2027-03-02' }))).toBe('date');
  });

  it('SHOP-2 a sheet that is over by what another version allows can still be mended', () => {
    const over = { ...blank, title: 'x'.repeat(200) };
    const mended = all(
      over,
      { kind: 'leader', leader: 'Imogen' },
      { kind: 'title', title: 'Marsh' },
    );
    expect(mended).toMatchObject({ leader: 'Imogen', title: 'Marsh' });
    expect(refused(mended, { kind: 'title', title: 'x'.repeat(200) })).toBe('text-long');
  });
});
