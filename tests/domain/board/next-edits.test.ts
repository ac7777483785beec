import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Asked, editsFor, previewOf } from '../../../src/domain/board/next-edits.ts';
import { mayStretch } from '../../../src/domain/board/stretch.ts';
import { formatPlan } from '../../../src/domain/programme/format.ts';
import { parsePlan } from '../../../src/domain/programme/parse.ts';
import { factsOf } from '../../../src/domain/review/facts.ts';
import { REVIEW_LIMITS } from '../../../src/domain/review/limits.ts';
import { applyEdit } from '../../../src/domain/workshop/apply-edit.ts';
import { sheetOfProgramme } from '../../../src/domain/workshop/file.ts';
import { cellsOf } from '../../../src/domain/workshop/places.ts';
import type { Cell, Sheet } from '../../../src/domain/workshop/sheet.ts';
import { plan } from '../programme/arbitraries.ts';
import { planOf } from '../review/outlines.ts';
import { HERON } from './members.ts';

const DEMO = sheetOfProgramme(HERON);

const asked = (way: Asked['way'], looked = 1, group = 'curlew'): Asked => ({
  group,
  looked,
  next: looked + 1,
  way,
});

const texts = (sheet: Sheet, week: number, group = 'curlew'): readonly string[] =>
  cellsOf(sheet.weeks[week - 1], group).map(({ text }) => text);

const edited = (ask: Asked, sheet: Sheet): Sheet => editsFor(ask, sheet).reduce(applyEdit, sheet);

/** The sheet without the sessions that a suggestion may change. */
const rest = (sheet: Sheet, { group, next }: Asked): unknown => ({
  ...sheet,
  weeks: sheet.weeks.map((week, n) =>
    n === next - 1 ? { ...week, sessions: { ...week.sessions, [group]: [] } } : week,
  ),
});

const withWeek = (sheet: Sheet, week: number, cells: readonly Cell[], group = 'curlew'): Sheet => ({
  ...sheet,
  weeks: sheet.weeks.map((each, n) =>
    n === week - 1 ? { ...each, sessions: { ...each.sessions, [group]: cells } } : each,
  ),
});

const cell = (text: string, pinned?: true): Cell => ({ text, ...(pinned && { pinned }) });

describe('the next week changed', () => {
  it('BOARD-24 going on changes nothing', () => {
    expect(editsFor(asked('go-on'), DEMO)).toEqual([]);
    expect(previewOf(asked('go-on'), DEMO)).toEqual([
      { session: 1, before: texts(DEMO, 2)[0], after: texts(DEMO, 2)[0], pinned: false },
    ]);
  });

  it('BOARD-24 repeating takes over exactly the texts, however many sessions either week has', () => {
    for (const group of ['wren', 'dunlin', 'curlew', 'swift'])
      for (const looked of [1, 2, 3, 4, 5]) {
        const ask = asked('repeat', looked, group);
        const next = edited(ask, DEMO);
        expect(texts(next, looked + 1, group)).toEqual(texts(DEMO, looked, group));
        expect(rest(next, ask)).toEqual(rest(DEMO, ask));
      }
  });

  it('BOARD-24 repeating holds for any texts, those that cannot be read as well', () => {
    const list = fc.array(
      fc.oneof(plan.map(formatPlan), fc.constant('six times round the marsh')),
      {
        minLength: 1,
        maxLength: 4,
      },
    );
    fc.assert(
      fc.property(list, list, (from, to) => {
        const sheet = withWeek(
          withWeek(
            DEMO,
            1,
            from.map((t) => cell(t)),
          ),
          2,
          to.map((t) => cell(t)),
        );
        expect(texts(edited(asked('repeat'), sheet), 2)).toEqual(from);
      }),
      { numRuns: 60 },
    );
  });

  it('BOARD-24 a pinned session stays, whatever is suggested', () => {
    const sheet = withWeek(DEMO, 2, [
      cell('5 min easy walk; 6 x (3 min run, 1 min walk); 5 min easy walk', true),
      cell('5 min easy walk; 6 x (3 min run, 1 min walk); 5 min easy walk'),
    ]);
    for (const way of ['repeat', 'ease', 'stretch'] as const) {
      const next = cellsOf(edited(asked(way), sheet).weeks[1], 'curlew');
      expect(next).toHaveLength(2);
      expect(next[0]).toBe(cellsOf(sheet.weeks[1], 'curlew')[0]);
    }
    expect(previewOf(asked('ease'), sheet)[0]).toMatchObject({ pinned: true });
  });

  it('BOARD-25 easing by hand: the runs shorter and the walks longer where groups end together', () => {
    const [row] = previewOf(asked('ease'), DEMO);
    expect(row?.before).toBe(
      '5 min easy walk; (3 min run "Tall, not fast", 1 min walk) x 6; 5 min easy walk',
    );
    const [was, is] = [planOf(row?.before ?? ''), planOf(row?.after ?? '')];
    const looked = factsOf(planOf(texts(DEMO, 1)[0] ?? ''));
    expect(factsOf(is).work).toBeLessThan(Math.min(factsOf(was).work, looked.work));
    expect(factsOf(is).stretch).toBeLessThanOrEqual(looked.stretch);
    expect(factsOf(is).mainEnd).toBe(factsOf(was).mainEnd);
    expect(row?.after).toBe(
      '5 min easy walk; 6 x (1 min 45 s run "Tall, not fast", 2 min 15 s walk); 5 min easy walk',
    );
  });

  it('BOARD-25 easing never raises work, run, length or effort, and always can be read', () => {
    fc.assert(
      fc.property(fc.array(plan, { minLength: 1, maxLength: 3 }), plan, (plans, looked) => {
        const sheet = withWeek(
          withWeek(DEMO, 1, [cell(formatPlan(looked))]),
          2,
          plans.map((each) => cell(formatPlan(each))),
        );
        const ask = asked('ease');
        const next = edited(ask, sheet);
        expect(rest(next, ask)).toEqual(rest(sheet, ask));
        for (const [n, text] of texts(next, 2).entries()) {
          const was = texts(sheet, 2)[n] ?? '';
          if (text === was) continue;
          const read = parsePlan(text);
          expect(read.ok).toBe(true);
          const [now, before] = [factsOf(planOf(text)), factsOf(planOf(was))];
          expect(now.work).toBeLessThan(before.work);
          expect(now.stretch).toBeLessThanOrEqual(before.stretch);
          expect(now.total).toBeLessThanOrEqual(before.total);
          expect(now.hardest).toBeLessThanOrEqual(before.hardest);
          expect(now.work * 2).toBeGreaterThanOrEqual(before.work);
        }
      }),
      { numRuns: 60 },
    );
  });

  it('BOARD-25 every session of the demo can be eased', () => {
    for (const group of ['wren', 'dunlin', 'curlew', 'swift'])
      for (const looked of [1, 2, 3, 4, 5]) {
        const rows = previewOf(asked('ease', looked, group), DEMO);
        expect(rows.filter(({ before, after: then }) => before === then)).toEqual([]);
      }
  });

  it('BOARD-26 stretching by hand: as long, with a little more of the harder part', () => {
    const sheet = withWeek(DEMO, 2, [
      cell('5 min easy walk; 7 x (1 min walk, 2 min run); 5 min easy walk'),
    ]);
    expect(previewOf(asked('stretch'), sheet)).toMatchObject([
      { after: expect.stringMatching(/^5 min easy walk; .* 5 min easy walk$/) },
    ]);
    const [row] = previewOf(asked('stretch'), sheet);
    expect(factsOf(planOf(row?.after ?? '')).work).toBeGreaterThan(
      factsOf(planOf(row?.before ?? '')).work,
    );
  });

  it('BOARD-26 stretching stays within the limits of the review', () => {
    // The limits are asked here by their own numbers, and not through the review that finds the step.
    const { sessionGrowth, sessionFloor, stretchGrowth, stretchFloor } = REVIEW_LIMITS;
    fc.assert(
      fc.property(plan, plan, (looked, next) => {
        const sheet = withWeek(withWeek(DEMO, 1, [cell(formatPlan(looked))]), 2, [
          cell(formatPlan(next)),
        ]);
        const ask = asked('stretch');
        const [text = ''] = texts(edited(ask, sheet), 2);
        if (text === texts(sheet, 2)[0]) return;
        const [now, was, before] = [planOf(text), next, looked].map(factsOf);
        if (now === undefined || was === undefined || before === undefined) return;
        expect(now.work).toBeGreaterThan(was.work);
        expect(now.hardest).toBe(was.hardest);
        const moreTotal = now.total - before.total;
        expect(
          moreTotal <= sessionFloor.value * 1000 ||
            now.total * 100 <= before.total * (100 + sessionGrowth.value),
        ).toBe(true);
        const moreRun = now.stretch - before.stretch;
        expect(
          moreRun <= stretchFloor.value * 1000 ||
            now.stretch * 100 <= before.stretch * (100 + stretchGrowth.value),
        ).toBe(true);
      }),
      { numRuns: 80 },
    );
  });

  it('BOARD-26 where a step more would be too much, nothing may be stretched', () => {
    const weeks = HERON.weeks.map((week, n) =>
      n === 1
        ? {
            ...week,
            sessions: {
              ...week.sessions,
              curlew: [{ text: 'x', plan: planOf('5 min easy walk; 20 min run; 5 min easy walk') }],
            },
          }
        : week,
    );
    expect(mayStretch({ ...HERON, weeks }, 'curlew', 2)).toBe(false);
    expect(mayStretch(HERON, 'curlew', 2)).toBe(true);
    expect(mayStretch(HERON, 'curlew', 40)).toBe(false);
  });

  it('BOARD-24 a week, a group or a text that is not there or cannot be read changes nothing', () => {
    const odd = withWeek(DEMO, 2, [cell('six times round the marsh')]);
    for (const way of ['ease', 'stretch'] as const) expect(editsFor(asked(way), odd)).toEqual([]);
    for (const way of ['repeat', 'ease', 'stretch'] as const) {
      expect(editsFor(asked(way, 6), DEMO)).toEqual([]);
      expect(editsFor(asked(way, 1, 'heron'), DEMO)).toEqual([]);
      expect(previewOf(asked(way, 6), DEMO)).toEqual([]);
    }
  });
});
