import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { formatPlan } from '../../../src/domain/programme/format.ts';
import { parsePlan } from '../../../src/domain/programme/parse.ts';
import type { Item, Plan, Step } from '../../../src/domain/programme/plan.ts';
import { ACTIVITIES, DEFAULT_EFFORT, PARTS } from '../../../src/domain/programme/plan.ts';
import { planLength } from '../../../src/domain/programme/totals.ts';
import { ms, msOfSeconds } from '../../../src/domain/units.ts';
import { movePiece } from '../../../src/domain/workshop/move-piece.ts';
import { FIRST_PLAN } from '../../../src/domain/workshop/new-pieces.ts';
import type { PiecePlace } from '../../../src/domain/workshop/pieces.ts';
import { itemAt, itemsIn, piecesOf, stepsOf } from '../../../src/domain/workshop/pieces.ts';
import type { EditResult } from '../../../src/domain/workshop/plan-edits.ts';
import {
  addSets,
  addStep,
  changeCount,
  changeLength,
  changeStep,
  nextLength,
  removePiece,
  repeatPiece,
} from '../../../src/domain/workshop/plan-edits.ts';
import { readLength } from '../../../src/domain/workshop/read-length.ts';
import { cleanNote } from '../../../src/domain/workshop/step-change.ts';
import { plan as anyPlan } from '../programme/arbitraries.ts';

const planOf = (text: string): Plan => {
  const read = parsePlan(text);
  if (!read.ok) throw new Error(`${text}: ${read.error.code}`);
  return read.value;
};
const SETS = planOf('5 min easy walk; 7 x (1 min walk, 2 min run); 5 min easy walk');
const at = (part: PiecePlace['part'], ...path: number[]): PiecePlace => ({ part, path });
const textOf = (result: EditResult): string =>
  result.ok ? formatPlan(result.value.plan) : `refused: ${result.error}`;
const placeOf = (result: EditResult): PiecePlace | undefined =>
  result.ok ? result.value.at : undefined;

const places = (plan: Plan): readonly PiecePlace[] =>
  Object.values(piecesOf(plan)).flatMap((rows) => rows.map(({ place }) => place));

/** Any edit, at any place of a plan and at some places that are not in it. */
type Tap = (plan: Plan, place: PiecePlace) => EditResult;
const number = fc.oneof(fc.integer({ min: -10, max: 12_000 }), fc.constant(Number.NaN));
const by = fc.constantFrom<1 | -1>(1, -1);
const tap: fc.Arbitrary<Tap> = fc.oneof(
  by.map(
    (n): Tap =>
      (plan, place) =>
        changeLength(plan, place, n),
  ),
  by.map(
    (n): Tap =>
      (plan, place) =>
        movePiece(plan, place, n),
  ),
  fc.integer({ min: -1, max: 60 }).map(
    (n): Tap =>
      (plan, place) =>
        changeCount(plan, place, n),
  ),
  fc
    .record(
      {
        duration: fc.integer({ min: -10, max: 10_000_000 }).map((n) => ms(n)),
        activity: fc.constantFrom(...ACTIVITIES),
        effort: fc.oneof(fc.constant('usual' as const), number),
        note: fc.string({ unit: 'binary', maxLength: 100 }),
      },
      { requiredKeys: [] },
    )
    .map(
      (change): Tap =>
        (plan, place) =>
          changeStep(plan, place, change),
    ),
  fc.constant<Tap>((plan, place) => addStep(plan, place)),
  fc.constant<Tap>((plan, { part }) => addStep(plan, at(part))),
  fc.constant<Tap>((plan, { part }) => addSets(plan, part)),
  fc.constant<Tap>(repeatPiece),
  fc.constant<Tap>(removePiece),
);

describe('editing the pieces of a plan', () => {
  it('CELL-4 every edit of every piece reads back as the plan that it gave, however many follow', () => {
    let taken = 0;
    fc.assert(
      fc.property(anyPlan, fc.array(fc.tuple(tap, fc.nat()), { maxLength: 12 }), (plan, taps) => {
        let now = plan;
        for (const [edit, pick] of taps) {
          const all = [...places(now), at('main', 99), at('warm-up', 0, 0, 0)];
          const result = edit(now, all[pick % all.length] ?? at('main', 0));
          if (!result.ok) continue;
          taken += 1;
          const { plan: edited, at: place } = result.value;
          expect(parsePlan(formatPlan(edited))).toEqual({ ok: true, value: edited });
          const hand = place.path.length === 0 ? itemsIn(edited, place) : itemAt(edited, place);
          expect(hand).toBeDefined();
          now = edited;
        }
      }),
      { numRuns: 250 },
    );
    expect(taken).toBeGreaterThan(250);
  });

  it('CELL-4 what goes over a bound is refused with its reason', () => {
    const long = planOf('10 min walk; 2 h 15 min run; 5 min walk');
    const one = planOf('10 min run');
    expect(changeCount(SETS, at('main', 0), 0)).toEqual({ ok: false, error: 'count-few' });
    expect(changeCount(SETS, at('main', 0), 51)).toEqual({ ok: false, error: 'count-many' });
    expect(changeCount(SETS, at('main', 0), 50)).toEqual({ ok: false, error: 'session-long' });
    expect(changeLength(long, at('main', 0), 1)).toEqual({ ok: false, error: 'session-long' });
    expect(changeStep(one, at('main', 0), { duration: ms(4_000) })).toEqual({
      ok: false,
      error: 'step-short',
    });
    expect(changeStep(one, at('main', 0), { duration: ms(9_001_000) })).toEqual({
      ok: false,
      error: 'step-long',
    });
    expect(changeStep(one, at('main', 0), { note: 'n'.repeat(81) })).toEqual({
      ok: false,
      error: 'note-long',
    });
    expect(removePiece(one, at('main', 0))).toEqual({ ok: false, error: 'main-empty' });
    expect(movePiece(one, at('main', 0), 1)).toEqual({ ok: false, error: 'main-empty' });
    expect(movePiece(SETS, at('warm-up', 0), -1)).toEqual({ ok: false, error: 'edge' });
    expect(movePiece(planOf('3 x 1 min run'), at('main', 0, 0), 1)).toEqual({
      ok: false,
      error: 'sets-empty',
    });
    expect(removePiece(SETS, at('main', 3))).toEqual({ ok: false, error: 'gone' });
    const rounds = planOf('2 x (3 x (1 min run, 1 min walk), 2 min walk)');
    expect(repeatPiece(rounds, at('main', 0))).toEqual({ ok: false, error: 'too-deep' });
    expect(repeatPiece(rounds, at('main', 0, 0, 0))).toEqual({ ok: false, error: 'too-deep' });
  });

  it('CELL-4 a text that would be too long to read is refused', () => {
    const noted = planOf(
      Array.from({ length: 22 }, () => `30 s walk @ 30% "${'n'.repeat(60)}"`).join('; '),
    );
    const result = changeStep(noted, at('main', 0), { note: 'm'.repeat(80) });
    expect(textOf(result)).toContain('m'.repeat(80));
    let plan: Plan = noted;
    let refused = '';
    for (let n = 0; n < 60 && refused === ''; n += 1) {
      const place = at('main', plan.main.length - 1);
      const noteAgain = addStep(plan, at('main'));
      if (!noteAgain.ok) refused = noteAgain.error;
      else plan = noteAgain.value.plan;
      const noting = changeStep(plan, place, { note: 'k'.repeat(80) });
      if (!noting.ok) refused = noting.error;
      else plan = noting.value.plan;
    }
    expect(refused).toBe('text-long');
  });

  it('CELL-4 pieces are added, repeated and removed where the hand is', () => {
    expect(textOf(addStep(SETS, at('main', 0)))).toBe(
      '5 min easy walk; 7 x (1 min walk, 2 min run, 2 min run); 5 min easy walk',
    );
    expect(textOf(repeatPiece(SETS, at('main', 0)))).toBe(
      '5 min easy walk; 2 x (7 x (1 min walk, 2 min run)); 5 min easy walk',
    );
    const removed = removePiece(SETS, at('main', 0, 0));
    expect(textOf(removed)).toBe('5 min easy walk; 7 x 2 min run; 5 min easy walk');
    expect(placeOf(removed)).toEqual(at('main', 0, 0));
    expect(placeOf(removePiece(SETS, at('main', 0, 1)))).toEqual(at('main', 0, 0));
    const bare = removePiece(SETS, at('cool-down', 0));
    expect(textOf(bare)).toBe('5 min easy walk; 7 x (1 min walk, 2 min run)');
    expect(placeOf(bare)).toEqual(at('cool-down'));
    const two = planOf('5 min walk; 3 x 1 min run; 10 min run');
    // The last step of its sets goes with them.
    expect(textOf(removePiece(two, at('main', 0, 0)))).toBe('5 min walk; 10 min run');
  });

  it('CELL-4 parts stay as they were tapped, with labels where the text needs them', () => {
    const eased = changeStep(SETS, at('warm-up', 0), { activity: 'run' });
    expect(textOf(eased)).toBe(
      'warm-up: 5 min run; main: 7 x (1 min walk, 2 min run); cool-down: 5 min easy walk',
    );
  });

  it('CELL-4 a note keeps what the shorthand can hold', () => {
    expect(cleanNote('  “Tall”,\nnot  fast\u202e\u200b ')).toBe("'Tall', not fast");
    const noted = changeStep(SETS, at('main', 0, 1), { note: 'Tall', effort: 64.6 });
    expect(textOf(noted)).toContain('2 min run @ 65% "Tall"');
    const step = noted.ok ? noted.value.plan : SETS;
    expect(textOf(changeStep(step, at('main', 0, 1), { note: ' ', effort: 'usual' }))).toBe(
      formatPlan(SETS),
    );
  });

  const kinds = (items: readonly Item[]): string[] =>
    stepsOf(items)
      .map(({ duration, activity, note }) => `${duration} ${activity} ${note ?? ''}`)
      .sort();
  const allSteps = (plan: Plan): string[] => kinds(PARTS.flatMap((part) => plan[part]));

  it('CELL-5 moving keeps every step, and a step comes back by the opposite move', () => {
    let moved = 0;
    fc.assert(
      fc.property(anyPlan, fc.nat(), by, (plan, pick, way) => {
        const all = places(plan);
        const place = all[pick % all.length] ?? at('main', 0);
        const result = movePiece(plan, place, way);
        if (!result.ok) return;
        moved += 1;
        expect(allSteps(result.value.plan)).toEqual(allSteps(plan));
        expect(itemAt(result.value.plan, result.value.at)).toEqual(itemAt(plan, place));
        if (itemAt(plan, place)?.kind !== 'step') return;
        const back = movePiece(result.value.plan, result.value.at, way === 1 ? -1 : 1);
        // Going into sets multiplies a step: only what came out of a session at its bound can stick.
        if (back.ok) expect(back.value).toEqual({ plan, at: place });
        else expect(['session-long', 'text-long']).toContain(back.error);
      }),
      { numRuns: 400 },
    );
    expect(moved).toBeGreaterThan(100);
  });

  it('CELL-5 a step goes down through sets, out of them and into the next part', () => {
    const plan = planOf('5 min easy walk; 2 min jog; 2 x (1 min walk, 2 min run); 5 min easy walk');
    const steps = ['5 min easy walk', '2 min jog'];
    expect(plan['warm-up'].length).toBe(steps.length);
    let place = at('warm-up', 1);
    let now = plan;
    const way: string[] = [];
    for (let n = 0; n < 5; n += 1) {
      const result = movePiece(now, place, 1);
      if (!result.ok) break;
      ({ plan: now, at: place } = result.value);
      way.push([place.part, ...place.path].join('.'));
    }
    expect(way).toEqual(['main.0', 'main.0.0', 'main.0.1', 'main.0.2', 'main.1']);
  });

  it('CELL-5 sets go past a step, and rounds past sets', () => {
    const plan = planOf('main: 2 x (1 min run, 1 min walk), 3 min walk, 2 x 1 min run');
    expect(textOf(movePiece(plan, at('main', 0), 1))).toContain('3 min walk; 2 x (1 min run');
    const sets = movePiece(plan, at('main', 2), -1);
    expect(placeOf(sets)).toEqual(at('main', 1));
  });

  it('CELL-9 lengths go by 15 s up to two minutes and by 30 s above', () => {
    const up = [5, 10, 15, 100, 105, 120, 130, 150];
    const next = up.map((n) => nextLength(msOfSeconds(n), 1) / 1000);
    expect(next).toEqual([15, 15, 30, 105, 120, 150, 150, 180]);
    const down = [150, 130, 120, 110, 30, 15, 10, 5];
    const before = down.map((n) => nextLength(msOfSeconds(n), -1) / 1000);
    expect(before).toEqual([120, 120, 105, 105, 15, 5, 5, 0]);
    expect(changeLength(planOf('5 s run'), at('main', 0), -1)).toEqual({
      ok: false,
      error: 'step-short',
    });
  });

  it('CELL-9 a length that is typed is read as in the shorthand, a bare number as minutes', () => {
    const said = (typed: string): unknown => {
      const read = readLength(typed);
      return read.ok ? read.value / 1000 : (read.error?.code ?? 'none');
    };
    expect(['3', ' 90 s', '1:30', '2\'30"', '1 min and 30 s'].map(said)).toEqual([
      180, 90, 90, 150, 90,
    ]);
    expect(['4 s', '3 h', '1,5 min', '400 m', '1:75'].map(said)).toEqual([
      'step-short',
      'step-long',
      'decimal',
      'distance',
      'clock-seconds',
    ]);
    for (const typed of ['', 'run', '2 min run; 5 min', '5 x 2 min', '2 min "a"', '2 min walk'])
      expect([typed, readLength(typed).ok]).toEqual([typed, false]);
  });

  it('CELL-9 any length within the bounds can be typed as it is shown', () => {
    fc.assert(
      fc.property(fc.integer({ min: 5, max: 9000 }), (seconds) => {
        const typed = formatPlan(planOf(`${seconds} s run`)).replace(' run', '');
        expect(readLength(typed)).toEqual({ ok: true, value: seconds * 1000 });
      }),
    );
  });

  it('CELL-10 a new piece asks for nothing harder than the plan has, or than a brisk walk', () => {
    const hardest = (items: readonly Step[]): number =>
      Math.max(...items.map(({ activity }) => DEFAULT_EFFORT[activity]));
    fc.assert(
      fc.property(anyPlan, fc.constantFrom(...PARTS), fc.boolean(), (plan, part, sets) => {
        const result = sets ? addSets(plan, part) : addStep(plan, at(part));
        if (!result.ok) return;
        const item = itemAt(result.value.plan, result.value.at);
        const asked = hardest(stepsOf(item === undefined ? [] : [item]));
        const has = hardest(PARTS.flatMap((each) => stepsOf(plan[each])));
        expect(asked).toBeLessThanOrEqual(Math.max(has, DEFAULT_EFFORT['brisk walk']));
      }),
    );
  });

  it('CELL-10 an empty session begins with walking only, warm-up and cool-down included', () => {
    const steps = PARTS.flatMap((part) => stepsOf(FIRST_PLAN[part]));
    expect(steps.every(({ activity }) => activity.endsWith('walk'))).toBe(true);
    expect(parsePlan(formatPlan(FIRST_PLAN))).toEqual({ ok: true, value: FIRST_PLAN });
    // 5 + 5 x (2 + 1) + 5 min, worked by hand.
    expect(planLength(FIRST_PLAN)).toBe(25 * 60_000);
  });
});
