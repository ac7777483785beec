import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { changeSentence } from '../../../src/copy/draft.ts';
import { answerSentences, wishSentence } from '../../../src/copy/draft-answers.ts';
import type { Answer } from '../../../src/domain/draft/answer.ts';
import type { Change } from '../../../src/domain/draft/change.ts';
import { checkWish, type WishProblem } from '../../../src/domain/draft/wish.ts';
import type { Item } from '../../../src/domain/programme/plan.ts';
import { type Ms, msOfSeconds } from '../../../src/domain/units.ts';
import { measure, type Seen, seenIn } from './rules.ts';
import { anyWish, draftOf, FOUR, pin, wishOf } from './wishes.ts';

const s = (seconds: number): Ms => msOfSeconds(seconds);

/** Count and lengths of a main set, read from its plan. */
function numbers(items: readonly Item[]): { sets: number; hard: number; easy: number } | undefined {
  const [set, more] = items;
  if (set?.kind !== 'repeat' || more !== undefined) return undefined;
  const [hard, easy] = set.items.map((item) => (item.kind === 'step' ? item.duration : 0));
  return { sets: set.count, hard: hard ?? 0, easy: easy ?? 0 };
}

/** What a step says against the plans of both weeks. */
function isTrue(change: Change, before: Seen, now: Seen): boolean {
  const [was, is] = [numbers(before.plan.main), numbers(now.plan.main)];
  switch (change.code) {
    case 'same':
      return before.text === now.text;
    case 'sets':
      return (
        was !== undefined &&
        is !== undefined &&
        is.sets - was.sets === change.sets &&
        is.hard - was.hard === change.hard &&
        is.easy - was.easy === change.easy
      );
    case 'on':
    case 'to-on':
      return now.plan.main.length === 1 && now.hard - before.hard === change.by / 1000;
    case 'to-sets':
      return is !== undefined && was === undefined && now.hard - before.hard === change.by / 1000;
    case 'to-runs':
      return now.plan.main.length > 1 && now.hard - before.hard === change.by / 1000;
    case 'runs':
      return (
        now.stretch - before.stretch === change.first / 1000 &&
        (now.plan.main.length - before.plan.main.length) / 2 === change.others
      );
    case 'light':
    case 'aside':
      return now.main === change.main / 1000 && before.main === change.before / 1000;
    default:
      return false;
  }
}

describe('the step of each week', () => {
  it('DRAFT-10 it is what changed between the two plans, and a sentence', () => {
    fc.assert(
      fc.property(anyWish, (wish) => {
        const draft = draftOf(wish);
        const weeks = seenIn(wish, draft);
        for (const [n, week] of weeks.entries())
          for (const [g, now] of week.entries()) {
            const change = draft.weeks[n]?.cells[now.group.id]?.change as Change;
            expect(changeSentence(change, 'running')).toMatch(/^[A-Z0-9].*\.$/);
            const before = weeks[n - 1]?.[g];
            if (before === undefined) expect(change.code).toBe('first');
            else expect([change, isTrue(change, before, now)]).toEqual([change, true]);
          }
      }),
      { numRuns: 25 },
    );
  });

  it.each<[Change, string]>([
    [
      { code: 'sets', sets: 1, hard: s(0), easy: s(0) },
      'One set more than last week, each as it was.',
    ],
    [
      { code: 'sets', sets: 0, hard: s(30), easy: s(0) },
      '30 s more running in each set, the walks stay.',
    ],
    [
      { code: 'sets', sets: 0, hard: s(0), easy: s(-30) },
      'The walks 30 s shorter, the running stays.',
    ],
    [
      { code: 'sets', sets: -2, hard: s(90), easy: s(30) },
      'Two sets fewer than last week, 1 min 30 s more running in each set, the walks 30 s longer.',
    ],
    [
      { code: 'runs', others: 0, first: s(180), other: s(0), easy: s(0) },
      'The first run is 3 min longer.',
    ],
    [
      { code: 'runs', others: -1, first: s(240), other: s(60), easy: s(0) },
      'Two runs instead of three, the first 4 min longer.',
    ],
    [{ code: 'on', by: s(120) }, '2 min more running, without a break.'],
    [{ code: 'to-on', by: s(60) }, 'In one go, without a break: 1 min more running in all.'],
    [
      { code: 'light', main: s(18 * 60), before: s(30 * 60) },
      'A light week before the event: main set 18 min instead of 30 min.',
    ],
  ])('DRAFT-10 %j is said as it is', (change, sentence) => {
    expect(changeSentence(change, 'running')).toBe(sentence);
  });

  it('DRAFT-8 who does not arrive reads how far it comes and what would do', () => {
    const [answer] = draftOf(wishOf(6, 30, [['Curlew', 30, 1, 'run']])).answers;
    expect(answer && answerSentences(answer, 'Curlew')).toEqual([
      'Curlew does not get there in this time.',
      expect.stringMatching(
        /^The longest run is [\d ms in]+ without a walk\. It should be 30 min: three quarters of the event, at 8 min per km\.$/,
      ),
      expect.stringMatching(/^It would take \d+ weeks and sessions of 40 min\.$/),
    ]);
  });

  it('DRAFT-8 what is longer than one programme is said to be, and several needs are listed', () => {
    const reached = { code: 'run-on', reached: s(600), needed: s(1800) } as const;
    const answer = { group: 'curlew', arrive: 'run', arrives: false, reached } as const;
    const said = (instead: Answer['instead']) =>
      answerSentences(instead === undefined ? answer : { ...answer, instead }, 'Curlew')[2];
    expect(said({ weeks: 20 })).toBe('It would take 20 weeks in two programmes.');
    expect(said({ weeks: 9, session: s(2400), pins: true })).toBe(
      'It would take 9 weeks, sessions of 40 min and a pinned session less.',
    );
    expect(said({ alone: true })).toMatch(/^By itself it would get there; /);
    expect(said(undefined)).toBe('No programme of up to 26 weeks was found that would do.');
  });

  it('DRAFT-1 every problem of a wish has a sentence', () => {
    const wrong = {
      ...wishOf(1, 1, [['Wren', 0, -1, 'walk']], { distanceM: 1 }),
      startDate: '2027-03-02',
      goal: { name: '', distanceM: 1, date: 'soon' },
    };
    const problems: readonly WishProblem[] = [
      ...checkWish(wrong),
      { code: 'name', field: 'name' },
      { code: 'name-twice', field: 'name' },
      { code: 'before-start', field: 'event' },
      { code: 'range', field: 'groups' },
    ];
    expect(problems.length).toBeGreaterThan(8);
    for (const problem of problems) expect(wishSentence(problem)).toMatch(/^[A-Z].*\.$/);
  });
});

describe('a draft against arithmetic by hand', () => {
  // Interval arithmetic (common practice, no source): warm-up + sets x (run + walk) +
  // cool-down, the last walk kept. Row 1: 5 + 6 x (2 + 1) + 5 = 28 min, of them 12 run.
  it('DRAFT-12 beside a pinned session of that table, groups of 28 min end together with it', () => {
    const text = '5 min easy walk; 6 x (2 min run, 1 min walk); 5 min easy walk';
    const wish = wishOf(6, 45, FOUR, { pins: [pin(0, 'curlew', text)] });
    const first = seenIn(wish, draftOf(wish))[0] ?? [];
    const [wren, dunlin, curlew, swift] = first;
    expect([curlew?.total, curlew?.main, curlew?.hard]).toEqual([28 * 60, 18 * 60, 12 * 60]);
    for (const one of [wren, dunlin, swift]) {
      expect(Math.abs((one?.end ?? 0) - 23 * 60)).toBeLessThanOrEqual(30);
      expect(one?.total).toBe((one?.end ?? 0) + 300);
    }
  });

  it('DRAFT-12 six weeks to the Heron Loop, each session added up by hand', () => {
    const wish = wishOf(6, 45, [['Swift', 40, 12, 'run']]);
    const texts = draftOf(wish).weeks.map(({ cells }) => cells.swift?.text ?? '');
    for (const [n, text] of texts.entries()) {
      const [first, main, last] = [
        text.split('; ').at(0),
        text.split('; ').slice(1, -1),
        text.split('; ').at(-1),
      ];
      expect([first, last]).toEqual(['5 min easy walk', '5 min easy walk']);
      // "4 x (4 min run, 1 min walk)" and "10 min run; 1 min walk; 8 min run", read without the parser.
      const seconds = main.map((part) => {
        const count = Number(/^(\d+) x/.exec(part)?.[1] ?? 1);
        const each = [...part.replace(/^\d+ x/, '').matchAll(/(\d+) (min|s)\b/g)];
        return (
          count * each.reduce((sum, [, n, unit]) => sum + Number(n) * (unit === 'min' ? 60 : 1), 0)
        );
      });
      const total = 600 + seconds.reduce((a, b) => a + b, 0);
      const group = wish.groups[0];
      if (group === undefined) throw new Error('no group');
      expect([n, measure(text, group).total]).toEqual([n, total]);
    }
    expect(texts).toHaveLength(6);
  });
});
