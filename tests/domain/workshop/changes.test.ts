import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { changeLine } from '../../../src/copy/changes.ts';
import { readProgramme } from '../../../src/domain/programme/read.ts';
import { tidy } from '../../../src/domain/programme/tidy.ts';
import { align } from '../../../src/domain/workshop/align.ts';
import { applyEdit } from '../../../src/domain/workshop/apply-edit.ts';
import { changesBetween } from '../../../src/domain/workshop/changes.ts';
import type { Edit } from '../../../src/domain/workshop/edit.ts';
import { fileOf } from '../../../src/domain/workshop/file.ts';
import type { Sheet } from '../../../src/domain/workshop/sheet.ts';
import { weekStanding } from '../../../src/domain/workshop/standing.ts';
import { demoSheet, edits } from './arbitraries.ts';

const sent = (() => {
  const read = readProgramme(fileOf(demoSheet()));
  if (!read.ok) throw new Error('the demo is not a programme');
  return read.value;
})();
const edited = (...all: readonly Edit[]): Sheet => all.reduce(applyEdit, demoSheet());
const line = (...all: readonly Edit[]): string => {
  const sheet = edited(...all);
  return changeLine(changesBetween(sent, sheet), sheet);
};
const at = (week: number, group: string) => ({ week, group, session: 0 });
const cell = (week: number, group: string, text = '30 min walk'): Edit => ({
  kind: 'cell',
  at: at(week, group),
  text,
});

describe('what changed since it was sent', () => {
  it('SHOP-15 is nothing when nothing was changed, or when it was only spelled another way', () => {
    expect(line()).toBe('');
    expect(line({ kind: 'tidy', at: at(0, 'curlew') })).toBe('');
  });

  it('SHOP-15 names weeks and groups', () => {
    const sheet = edited(cell(2, 'curlew'), cell(2, 'swift'));
    expect(changesBetween(sent, sheet).weeks).toEqual([
      { week: 2, was: 2, groups: ['curlew', 'swift'], texts: [] },
    ]);
    expect(line(cell(2, 'curlew'), cell(2, 'swift'))).toBe('Week 3: Curlew and Swift are changed.');
    expect(line(cell(2, 'wren'))).toBe('Week 3: Wren is changed.');
  });

  it('SHOP-15 names weeks together in which the same happened', () => {
    expect(line(...[1, 2, 3, 5].map((week) => cell(week, 'swift')))).toBe(
      'Weeks 2 to 4 and 6: Swift is changed.',
    );
    const everyone = ['wren', 'dunlin', 'curlew', 'swift'].map((group) => cell(4, group));
    expect(line(...everyone, { kind: 'effort', week: 4, effort: 45 })).toBe(
      'Week 5: All groups and the effort are changed.',
    );
  });

  it('SHOP-15 a week put in between is new, and the others are not changed', () => {
    const sheet = edited({ kind: 'add-week', at: 2 }, cell(2, 'wren'));
    const { weeks, weeksAdded, weeksRemoved } = changesBetween(sent, sheet);
    expect([weeks, weeksAdded, weeksRemoved]).toEqual([[], [2], []]);
    expect(line({ kind: 'add-week', at: 2 }, cell(2, 'wren'))).toBe('Week 3 is new.');
    expect(line({ kind: 'remove-week', week: 1 })).toBe('1 week is taken out.');
  });

  it('SHOP-15 a group that came or went is said once, and not of every week', () => {
    expect(line({ kind: 'add-group', name: 'Heron', for: '' })).toBe('Heron is new.');
    expect(line({ kind: 'move-group', id: 'wren', to: 1 })).toBe(
      'The groups stand in another order.',
    );
    expect(line({ kind: 'remove-group', id: 'wren' })).toBe('Wren is no longer in it.');
    expect(line({ kind: 'group', id: 'wren', change: { name: 'Reed' } })).toBe(
      'Wren is now called Reed.',
    );
  });

  it('SHOP-15 says dates, goal, title, leader and reminders', () => {
    expect(
      line(
        { kind: 'start-date', date: '2027-03-08' },
        { kind: 'goal-date', date: '2027-04-18' },
        { kind: 'reminders', reminders: [] },
      ),
    ).toBe(
      'The start is on Mon, 8 March 2027. Heron Loop is on Sun, 18 April 2027. The reminders are changed.',
    );
    expect(line({ kind: 'goal-date', date: '' })).toBe('Heron Loop has no date any more.');
  });

  it('SHOP-15 the line is there exactly when something changed, and never longer than a file allows', () => {
    /** What a participant would read or hear: spelling and space around words left aside. */
    const said = (sheet: Sheet): string =>
      fileOf({
        ...sheet,
        weeks: sheet.weeks.map((week) => ({
          ...week,
          focus: week.focus.trim(),
          sessions: Object.fromEntries(
            Object.entries(week.sessions).map(([id, cells]) => [
              id,
              cells.map(({ text }) => {
                const plain = tidy(text);
                return { text: plain.ok ? plain.value : text };
              }),
            ]),
          ),
        })),
      });
    const before = said(demoSheet());
    fc.assert(
      fc.property(edits, (all) => {
        const sheet = all.reduce(applyEdit, demoSheet());
        const words = changeLine(changesBetween(sent, sheet), sheet);
        expect(words !== '').toBe(said(sheet) !== before);
        expect([...words].length).toBeLessThanOrEqual(500);
      }),
      { numRuns: 150 },
    );
  });
});

describe('how weeks stand', () => {
  const standing = (sheet: Sheet, today = '2027-03-10') => weekStanding(sent, sheet, today);

  it('SHOP-16 sent as it is, changed since, moved, or new', () => {
    expect(standing(demoSheet()).map(({ sent: as }) => as)).toEqual(Array(6).fill('same'));
    const sheet = edited(
      cell(1, 'wren'),
      { kind: 'add-week', at: 4 },
      cell(4, 'wren', '9 min walk'),
    );
    expect(standing(sheet).map(({ sent: as, was }) => [as, was])).toEqual([
      ['same', 0],
      ['changed', 1],
      ['same', 2],
      ['same', 3],
      ['new', undefined],
      ['moved', 4],
      ['moved', 5],
    ]);
  });

  it('SHOP-16 before anything was sent, every week is new', () => {
    const all = weekStanding(undefined, demoSheet(), '2027-03-10');
    expect(all[0]).toEqual({ sent: 'new', time: 'past' });
    expect(all.every((week) => week.sent === 'new')).toBe(true);
  });

  it('SHOP-16 a group more is a change of every week', () => {
    const sheet = edited({ kind: 'add-group', name: 'Heron', for: '' });
    expect(new Set(standing(sheet).map(({ sent: as }) => as))).toEqual(new Set(['changed']));
  });

  it('SHOP-16 a week is past when its Sunday is', () => {
    const times = (today: string) => standing(demoSheet(), today).map(({ time }) => time);
    expect(times('2027-02-28')).toEqual(Array(6).fill('ahead'));
    expect(times('2027-03-01')[0]).toBe('now');
    expect(times('2027-03-07').slice(0, 2)).toEqual(['now', 'ahead']);
    expect(times('2027-03-08').slice(0, 2)).toEqual(['past', 'now']);
    expect(times('2027-04-12')).toEqual(Array(6).fill('past'));
    const undated = edited({ kind: 'start-date', date: '' });
    expect(standing(undated)[0]).not.toHaveProperty('time');
  });
});

describe('which members of a list stayed', () => {
  /** All ways of leaving some out, tried. */
  const longestCommon = (a: readonly string[], b: readonly string[]): number => {
    let best = 0;
    for (let mask = 0; mask < 2 ** a.length; mask += 1) {
      const kept = a.filter((_, n) => (mask >> n) & 1);
      let from = 0;
      for (const each of kept) from = from < 0 ? -1 : b.indexOf(each, from) + 1 || -1;
      if (from >= 0) best = Math.max(best, kept.length);
    }
    return best;
  };

  it('SHOP-15 are as many as can be, and every member is accounted for once', () => {
    const list = fc.array(fc.constantFrom('a', 'b', 'c', 'd'), { maxLength: 8 });
    fc.assert(
      fc.property(list, list, (before, now) => {
        const { same, changed, added, removed } = align(before, now);
        expect(same.length).toBe(longestCommon(before, now));
        for (const pair of same) expect(before[pair.was]).toBe(now[pair.now]);
        const numbers = (n: number) => Array.from({ length: n }, (_, i) => i);
        const sorted = (all: readonly number[]) => [...all].sort((a, b) => a - b);
        expect(sorted([...same, ...changed].map(({ was }) => was).concat(removed))).toEqual(
          numbers(before.length),
        );
        expect(sorted([...same, ...changed].map((pair) => pair.now).concat(added))).toEqual(
          numbers(now.length),
        );
      }),
    );
  });
});
