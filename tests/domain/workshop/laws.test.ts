import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { LIMITS } from '../../../src/domain/programme/shape.ts';
import { applyEdit, tryEdit } from '../../../src/domain/workshop/apply-edit.ts';
import { blankSheet } from '../../../src/domain/workshop/blank.ts';
import type { Edit } from '../../../src/domain/workshop/edit.ts';
import {
  begin,
  DEPTH,
  type History,
  pause,
  record,
  redo,
  undo,
} from '../../../src/domain/workshop/history.ts';
import type { Sheet } from '../../../src/domain/workshop/sheet.ts';
import { demoSheet, edit, edits } from './arbitraries.ts';

/** Counted here anew, and not by the code that refuses. */
function expectWithin(sheet: Sheet): void {
  const length = (text: string): number => [...text].length;
  expect(sheet.groups.length).toBeGreaterThanOrEqual(1);
  expect(sheet.groups.length).toBeLessThanOrEqual(8);
  expect(new Set(sheet.groups.map(({ id }) => id)).size).toBe(sheet.groups.length);
  for (const { id, name } of sheet.groups) {
    expect(id).toMatch(/^[a-z0-9](?:[a-z0-9-]{0,62}[a-z0-9])?$/);
    expect(length(name)).toBeLessThanOrEqual(80);
  }
  expect(sheet.weeks.length).toBeGreaterThanOrEqual(1);
  expect(sheet.weeks.length).toBeLessThanOrEqual(52);
  expect(sheet.reminders.length).toBeLessThanOrEqual(50);
  expect(length(sheet.title)).toBeLessThanOrEqual(120);
  expect(sheet.goal.distanceM).toBeGreaterThanOrEqual(1);
  expect(sheet.goal.distanceM).toBeLessThanOrEqual(LIMITS.distanceM);
  for (const { effort, timesPerWeek, together, focus, sessions } of sheet.weeks) {
    expect([effort, timesPerWeek.min, timesPerWeek.max].every(Number.isInteger)).toBe(true);
    expect(effort >= 0 && effort <= 100).toBe(true);
    expect(timesPerWeek.min >= 1 && timesPerWeek.min <= timesPerWeek.max).toBe(true);
    expect(timesPerWeek.max <= 7 && (together ?? 1) <= timesPerWeek.max).toBe(true);
    expect(length(focus)).toBeLessThanOrEqual(200);
    expect(Object.keys(sessions).sort()).toEqual(sheet.groups.map(({ id }) => id).sort());
    for (const cells of Object.values(sessions)) {
      expect(cells.length >= 1 && cells.length <= 7).toBe(true);
      for (const { text } of cells) expect(length(text)).toBeLessThanOrEqual(2000);
    }
  }
}

const made = (start: Sheet, all: readonly Edit[]): History =>
  all.reduce(
    (history, each) => record(history, each, applyEdit(history.present, each)),
    begin(start),
  );

const steps = (history: History, step: (history: History) => History, times: number): History =>
  Array.from({ length: times }).reduce<History>((at) => step(at), history);

describe('any edits whatever', () => {
  it('SHOP-1, SHOP-2 throw nothing and leave the programme within its limits', () => {
    fc.assert(
      fc.property(edits, (all) => {
        const end = all.reduce(applyEdit, demoSheet());
        expectWithin(end);
        expect(end.id).toBe('heron-loop-spring');
      }),
      { numRuns: 150 },
    );
  });

  it('SHOP-1 at a place that is not there leave the sheet as the same object', () => {
    const sheet = demoSheet();
    const nowhere = [
      { week: 6, group: 'wren', session: 0 },
      { week: -1, group: 'wren', session: 0 },
      { week: 0, group: 'puffin', session: 0 },
      { week: 0, group: 'constructor', session: 0 },
      { week: 0, group: 'wren', session: 1 },
    ];
    const all: readonly Edit[] = [
      ...nowhere.flatMap((at): readonly Edit[] => [
        { kind: 'cell', at, text: '5 min walk' },
        { kind: 'pin', at, pinned: true },
        { kind: 'tidy', at },
        { kind: 'remove-session', at },
        { kind: 'fill', from: at, along: 'weeks', step: { kind: 'same' } },
      ]),
      { kind: 'add-session', week: 9, group: 'wren' },
      { kind: 'focus', week: 9, focus: 'x' },
      { kind: 'remove-week', week: 9 },
      { kind: 'move-week', from: 0, to: 9 },
      { kind: 'move-group', id: 'puffin', to: 0 },
      { kind: 'move-group', id: 'wren', to: 4 },
      { kind: 'group', id: 'puffin', change: { name: 'x' } },
      { kind: 'remove-group', id: 'puffin' },
    ];
    for (const each of all) expect([each, applyEdit(sheet, each) === sheet]).toEqual([each, true]);
  });

  it('SHOP-1 that change nothing give the same object back', () => {
    fc.assert(
      fc.property(edits, edit, (before, each) => {
        const sheet = before.reduce(applyEdit, demoSheet());
        const next = tryEdit(sheet, each);
        // Two weeks may say the same: moving one past the other is a change all the same.
        if (['replace', 'fill', 'move-week'].includes(each.kind) || !next.ok) return;
        if (JSON.stringify(next.value) === JSON.stringify(sheet)) expect(next.value).toBe(sheet);
      }),
      { numRuns: 150 },
    );
  });

  it('SHOP-10 undone fully give the start, and redone the end, as the same objects', () => {
    fc.assert(
      fc.property(edits, fc.nat(50), (all, back) => {
        const start = demoSheet();
        const history = made(start, all);
        const end = history.present;
        expect(steps(history, undo, all.length).present).toBe(start);
        expect(steps(steps(history, undo, all.length), redo, all.length).present).toBe(end);
        expect(steps(steps(history, undo, back), redo, back).present).toBe(end);
      }),
      { numRuns: 100 },
    );
  });
});

describe('the way back', () => {
  const cell = (text: string, week = 0): Edit => ({
    kind: 'cell',
    at: { week, group: 'a', session: 0 },
    text,
  });
  const start = blankSheet('marsh-a', 'en');

  it('SHOP-11 typing into one field is one step, until something else is done', () => {
    const typed = made(start, [cell('5'), cell('5 m'), cell('5 min walk')]);
    expect(typed.past).toHaveLength(1);
    expect(undo(typed).present).toBe(start);
    const other = made(start, [cell('5'), cell('5 m'), cell('9', 1), cell('5 min walk')]);
    expect(other.past).toHaveLength(3);
    const fields: readonly Edit[] = [
      { kind: 'title', title: 'a' },
      { kind: 'title', title: 'ab' },
      { kind: 'goal', name: 'a' },
      { kind: 'goal', name: 'ab' },
      { kind: 'goal', distanceM: 5 },
      { kind: 'goal', distanceM: 50 },
      { kind: 'group', id: 'a', change: { name: 'W' } },
      { kind: 'group', id: 'a', change: { name: 'Wr' } },
      { kind: 'group', id: 'a', change: { for: 'W' } },
    ];
    expect(made(start, fields).past).toHaveLength(5);
  });

  it('SHOP-11 after a pause, or after going back, typing is another step', () => {
    const typed = made(start, [cell('5 min')]);
    const next = (history: History, text: string): History =>
      record(history, cell(text), applyEdit(history.present, cell(text)));
    expect(next(pause(typed), '5 min walk').past).toHaveLength(2);
    expect(next(undo(next(pause(typed), '5 min w')), '5 min walk').past).toHaveLength(2);
  });

  it('SHOP-11 one reminder typed is one step, the list added to is another', () => {
    const say = (...reminders: readonly string[]): Edit => ({ kind: 'reminders', reminders });
    const typed = made(start, [say(''), say('W'), say('Wa'), say('Wa', ''), say('Wa', 'T')]);
    expect(typed.past).toHaveLength(4);
  });

  it('SHOP-10 pressing one button twice is two steps, and undo brings all back', () => {
    const sheet = demoSheet();
    const gone = made(sheet, [
      { kind: 'remove-group', id: 'wren' },
      { kind: 'remove-group', id: 'dunlin' },
    ]);
    expect(undo(gone).present.groups).toHaveLength(3);
    expect(undo(undo(gone)).present).toBe(sheet);
  });

  it('SHOP-10 a new edit closes the way forward', () => {
    const typed = made(start, [cell('5 min walk')]);
    const again = record(
      undo(typed),
      cell('9 min walk', 1),
      applyEdit(start, cell('9 min walk', 1)),
    );
    expect(redo(again)).toBe(again);
    expect(undo(again).present).toBe(start);
  });

  it('SHOP-10 goes back five hundred steps', () => {
    const all = Array.from({ length: DEPTH + 20 }, (_, n) => cell(`${n + 5} s walk`, n % 2));
    const history = made(start, all);
    expect(history.past).toHaveLength(500);
    const oldest = steps(history, undo, DEPTH + 20);
    expect(oldest.present.weeks[1]?.sessions.a?.[0]?.text).toBe('24 s walk');
    expect(undo(oldest)).toBe(oldest);
  });
});
