import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { formatPlan } from '../../../src/domain/programme/format.ts';
import { parsePlan } from '../../../src/domain/programme/parse.ts';
import { planLength } from '../../../src/domain/programme/totals.ts';
import { ms } from '../../../src/domain/units.ts';
import { applyEdit, tryEdit } from '../../../src/domain/workshop/apply-edit.ts';
import { blankSheet } from '../../../src/domain/workshop/blank.ts';
import type { Edit, StepUp } from '../../../src/domain/workshop/edit.ts';
import type { Sheet } from '../../../src/domain/workshop/sheet.ts';
import { steppedUp } from '../../../src/domain/workshop/step-up.ts';
import { plan } from '../programme/arbitraries.ts';

const from = { week: 0, group: 'a', session: 0 };
const all = (sheet: Sheet, ...edits: readonly Edit[]): Sheet => edits.reduce(applyEdit, sheet);
const starting = (text: string): Sheet =>
  all(blankSheet('marsh-a', 'en'), { kind: 'cell', at: from, text });
const row = (sheet: Sheet, group = 'a'): readonly (string | undefined)[] =>
  sheet.weeks.map((week) => week.sessions[group]?.[0]?.text);
const filled = (text: string, step: StepUp, more: readonly Edit[] = []) =>
  row(all(starting(text), ...more, { kind: 'fill', from, along: 'weeks', step }));
const seconds = (n: number) => ms(n * 1000);

const SETS = '5 min easy walk; 6 x (1 min run, 2 min walk); 5 min easy walk';

describe('a session copied along', () => {
  it('SHOP-4 as it was typed, to all later weeks or to as many as were asked', () => {
    const typed = "5' walk + 20' run";
    expect(filled(typed, { kind: 'same' })).toEqual([typed, typed, typed, typed]);
    const two = all(starting(typed), {
      kind: 'fill',
      from,
      along: 'weeks',
      count: 2,
      step: { kind: 'same' },
    });
    expect(row(two)).toEqual([typed, typed, typed, '']);
    const second = { ...from, week: 1 };
    const late = all(
      starting(''),
      { kind: 'cell', at: second, text: typed },
      { kind: 'fill', from: second, along: 'weeks', step: { kind: 'same' } },
    );
    expect(row(late)).toEqual(['', typed, typed, typed]);
  });

  it('SHOP-4 to the groups behind its own, in its week only', () => {
    const sheet = all(starting(SETS), {
      kind: 'fill',
      from,
      along: 'groups',
      step: { kind: 'sets', by: 1 },
    });
    expect(row(sheet, 'b')).toEqual([SETS.replace('6 x', '7 x'), '', '', '']);
    const back = all(starting(SETS), {
      kind: 'fill',
      from: { ...from, group: 'b' },
      along: 'groups',
      step: { kind: 'same' },
    });
    expect(row(back)).toEqual(row(starting(SETS)));
  });

  it('SHOP-4 leaves pinned sessions alone, and is as far on behind them as if they were not there', () => {
    const at = { ...from, week: 1 };
    const pins: readonly Edit[] = [
      { kind: 'cell', at, text: '30 min walk' },
      { kind: 'pin', at, pinned: true },
    ];
    expect(filled(SETS, { kind: 'sets', by: 1 }, pins)).toEqual([
      SETS,
      '30 min walk',
      SETS.replace('6 x', '8 x'),
      SETS.replace('6 x', '9 x'),
    ]);
  });

  it('SHOP-4 a second session goes to the second of each week, which then has one', () => {
    const sheet = all(
      starting('20 min walk'),
      { kind: 'fill', from, along: 'weeks', step: { kind: 'same' } },
      { kind: 'add-session', week: 0, group: 'a' },
      { kind: 'cell', at: { ...from, session: 1 }, text: '30 min walk' },
      { kind: 'fill', from: { ...from, session: 1 }, along: 'weeks', step: { kind: 'same' } },
    );
    for (const week of sheet.weeks)
      expect(week.sessions.a?.map(({ text }) => text)).toEqual(['20 min walk', '30 min walk']);
  });

  it('SHOP-4 one that cannot be read is copied as it is, and stepped up from its last good text', () => {
    const wrong: Edit = { kind: 'cell', at: from, text: '6 x (1 min run, 2 m walk)' };
    const sheet = all(starting(SETS), wrong);
    const copy = all(sheet, {
      kind: 'fill',
      from,
      along: 'weeks',
      count: 1,
      step: { kind: 'same' },
    });
    expect(copy.weeks[1]?.sessions.a).toEqual([{ text: wrong.text, good: SETS }]);
    const more = all(sheet, {
      kind: 'fill',
      from,
      along: 'weeks',
      count: 1,
      step: { kind: 'sets', by: 1 },
    });
    expect(row(more)[1]).toBe(SETS.replace('6 x', '7 x'));
    const never = all(blankSheet('marsh-a', 'en'), wrong);
    expect(
      tryEdit(never, { kind: 'fill', from, along: 'weeks', step: { kind: 'sets', by: 1 } }),
    ).toEqual({
      ok: false,
      error: { code: 'unreadable' },
    });
  });
});

describe('a step up', () => {
  it('SHOP-5 makes the hardest steps of the sets longer, once more at each place', () => {
    expect(filled(SETS, { kind: 'hard', by: seconds(30) })).toEqual([
      SETS,
      SETS.replace('1 min run', '1 min 30 s run'),
      SETS.replace('1 min run', '2 min run'),
      SETS.replace('1 min run', '2 min 30 s run'),
    ]);
  });

  it('SHOP-5 or the other steps of the sets shorter, never under five seconds', () => {
    expect(filled(SETS, { kind: 'easy', by: seconds(-50) })).toEqual([
      SETS,
      SETS.replace('2 min walk', '1 min 10 s walk'),
      SETS.replace('2 min walk', '20 s walk'),
      SETS.replace('2 min walk', '5 s walk'),
    ]);
  });

  it('SHOP-5 or adds sets, from one to fifty', () => {
    expect(filled(SETS, { kind: 'sets', by: -3 })).toEqual([
      SETS,
      SETS.replace('6 x', '3 x'),
      ...['1 x', '1 x'].map((count) => SETS.replace('6 x', count)),
    ]);
    expect(filled('40 x (10 s run, 10 s walk)', { kind: 'sets', by: 8 })[3]).toBe(
      '50 x (10 s run, 10 s walk)',
    );
  });

  it('SHOP-5 means sets and not rounds, and leaves sets without the hardest steps alone', () => {
    const rounds = '2 x (4 x (1 min run, 1 min walk), 3 min walk); 3 x (1 min jog, 1 min walk)';
    expect(filled(rounds, { kind: 'sets', by: 1 })[1]).toBe(rounds.replace('4 x', '5 x'));
    expect(filled(rounds, { kind: 'hard', by: seconds(15) })[1]).toBe(
      rounds.replace('1 min run', '1 min 15 s run'),
    );
  });

  it('SHOP-5 without sets means the hardest steps of the main part, by their own effort where they have one', () => {
    const swift = '5 min easy walk; 10 min run; 1 min walk; 10 min run; 5 min easy walk';
    expect(filled(swift, { kind: 'hard', by: seconds(120) })[1]).toBe(
      swift.replaceAll('10 min', '12 min'),
    );
    const own = '5 min easy walk; 10 min run @ 60%; 8 min jog @ 70%; 5 min easy walk';
    expect(filled(own, { kind: 'hard', by: seconds(60) })[1]).toBe(own.replace('8 min', '9 min'));
    expect(filled(own, { kind: 'sets', by: 1 })[1]).toBe(own);
  });

  it('SHOP-5 comes out in whole five seconds', () => {
    expect(filled('4 x (62 s run, 1 min walk)', { kind: 'hard', by: seconds(10) })[1]).toBe(
      '4 x (1 min 10 s run, 1 min walk)',
    );
  });

  it('SHOP-5 stops where the session would be longer than 2 h 30 min', () => {
    const long = '2 x (1 h run, 5 min walk)';
    expect(filled(long, { kind: 'hard', by: seconds(300) })).toEqual([
      long,
      long.replace('1 h run', '1 h 5 min run'),
      ...[2, 3].map(() => long.replace('1 h run', '1 h 10 min run')),
    ]);
  });

  it('SHOP-5 of any plan gives a plan that can be read and is within the bounds', () => {
    const step = fc.oneof(
      fc.record({
        kind: fc.constantFrom('hard' as const, 'easy' as const),
        by: fc.integer({ min: -600, max: 600 }).map(seconds),
      }),
      fc.record({ kind: fc.constant('sets' as const), by: fc.integer({ min: -9, max: 20 }) }),
    );
    fc.assert(
      fc.property(plan, step, fc.integer({ min: 1, max: 51 }), (made, up, times) => {
        const next = steppedUp(made, up, times);
        expect(planLength(next)).toBeLessThanOrEqual(9_000_000);
        expect(parsePlan(formatPlan(next))).toEqual({ ok: true, value: next });
        expect(next['warm-up']).toEqual(made['warm-up']);
        expect(next['cool-down']).toEqual(made['cool-down']);
      }),
      { numRuns: 150 },
    );
  });
});
