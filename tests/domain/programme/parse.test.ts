import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { nearestActivity } from '../../../src/domain/programme/activity.ts';
import { formatItems } from '../../../src/domain/programme/format-items.ts';
import { parsePlan } from '../../../src/domain/programme/parse.ts';
import type { Part, Plan } from '../../../src/domain/programme/plan.ts';
import { ACTIVITIES, PARTS } from '../../../src/domain/programme/plan.ts';
import { lengthOf, planTotals } from '../../../src/domain/programme/totals.ts';
import { plan, written } from './arbitraries.ts';

const read = (text: string): Plan => {
  const result = parsePlan(text);
  if (!result.ok) throw new Error(`${text}: ${JSON.stringify(result.error)}`);
  return result.value;
};

/** What stands in each part, as text: `[warm-up, main, cool-down]`. */
const parts = (text: string): readonly string[] => {
  const made = read(text);
  return PARTS.map((part: Part) => formatItems(made[part], '; '));
};

const codeOf = (text: string): string => {
  const result = parsePlan(text);
  return result.ok ? 'read' : result.error.code;
};

describe('reading a session', () => {
  it('PLAN-1 whatever the spelling, the totals are what the writer meant', () => {
    fc.assert(
      fc.property(written, ({ text, seconds, runSeconds }) => {
        expect(planTotals(read(text))).toMatchObject({ seconds, runSeconds });
      }),
      { numRuns: 500 },
    );
  });

  it('PLAN-1 effort overrides the activity, in percent or tenths or a word', () => {
    for (const [text, effort] of [
      ['@ 70%', 70],
      ['@70 %', 70],
      ['@ 7/10', 70],
      ['@ 7 / 10', 70],
      ['@ 0%', 0],
      ['@ 10/10', 100],
      ['@ easy', 30],
      ['@ Moderate', 50],
      ['@ hard', 70],
    ] as const) {
      expect(read(`2 min run ${text}`).main).toEqual([
        { kind: 'step', duration: 120_000, activity: 'run', effort },
      ]);
    }
  });

  it('PLAN-3 standing, stretching, walking and jogging around the core warm up and cool down', () => {
    expect(
      parts(
        '1 min stand; 2 min stretch; 5 min walk; 5 min jog; 3 x 2 min run; 3 min jog; 4 min slow walk',
      ),
    ).toEqual([
      '1 min stand; 2 min stretch; 5 min walk; 5 min jog',
      '3 x 2 min run',
      '3 min jog; 4 min slow walk',
    ]);
  });

  it('PLAN-3 every top-level repeat is core, with all between the first and the last', () => {
    expect(parts('5 min walk; 3 x 1 min run; 4 min walk; 3 x 1 min run; 5 min walk')).toEqual([
      '5 min walk',
      '3 x 1 min run; 4 min walk; 3 x 1 min run',
      '5 min walk',
    ]);
  });

  it('PLAN-3 with no repeat, the steps of the highest effort are the core', () => {
    expect(parts('5 min easy walk; 10 min jog; 5 min walk; 10 min jog; 5 min easy walk')).toEqual([
      '5 min easy walk',
      '10 min jog; 5 min walk; 10 min jog',
      '5 min easy walk',
    ]);
    expect(parts('5 min walk; 10 min walk @ 50%; 5 min walk')).toEqual([
      '5 min walk',
      '10 min walk @ 50%',
      '5 min walk',
    ]);
    expect(parts('10 min walk; 10 min walk')).toEqual(['', '10 min walk; 10 min walk', '']);
  });

  it('PLAN-3 a run before or after the core joins it, with what is between', () => {
    expect(
      parts(
        '5 min walk; 1 min run; 2 min walk; 3 x 1 min jog; 2 min jog; 1 min fast run; 5 min walk',
      ),
    ).toEqual([
      '5 min walk',
      '1 min run; 2 min walk; 3 x 1 min jog; 2 min jog; 1 min fast run',
      '5 min walk',
    ]);
  });

  it('PLAN-3 fifteen minutes can warm up and cool down, a second more is main', () => {
    expect(parts('15 min walk; 3 x 1 min run; 15 min walk')).toEqual([
      '15 min walk',
      '3 x 1 min run',
      '15 min walk',
    ]);
    expect(parts('15 min 1 s walk; 3 x 1 min run; 15 min 1 s walk')[1]).toBe(
      '15 min 1 s walk; 3 x 1 min run; 15 min 1 s walk',
    );
    expect(parts('10 min walk; 10 min jog; 3 x 1 min run; 10 min jog; 10 min walk')).toEqual([
      '10 min walk',
      '10 min jog; 3 x 1 min run; 10 min jog',
      '10 min walk',
    ]);
  });

  it('PLAN-3 no part changes the order of the steps or leaves one out', () => {
    fc.assert(
      fc.property(written, ({ text, seconds }) => {
        const made = read(text);
        expect(PARTS.reduce((sum, part) => sum + lengthOf(made[part]), 0)).toBe(seconds * 1000);
        expect(made.main.length).toBeGreaterThan(0);
        for (const part of ['warm-up', 'cool-down'] as const)
          expect(lengthOf(made[part])).toBeLessThanOrEqual(15 * 60_000);
      }),
      { numRuns: 200 },
    );
  });

  it('PLAN-4 labels decide, whatever is in the parts', () => {
    expect(parts('warm-up: 20 min run; main: 5 min walk; cool-down: 3 x 1 min run')).toEqual([
      '20 min run',
      '5 min walk',
      '3 x 1 min run',
    ]);
    expect(parts('main: 5 min walk; 20 min run; 5 min walk')).toEqual([
      '',
      '5 min walk; 20 min run; 5 min walk',
      '',
    ]);
    expect(parts('5 min walk; 2 min run; main: 20 min run')).toEqual([
      '5 min walk; 2 min run',
      '20 min run',
      '',
    ]);
  });

  it('PLAN-4 labels are known in all their spellings', () => {
    for (const label of ['warm-up', 'warm up', 'warmup', 'WARM-UP', 'Warm  Up'])
      expect(parts(`${label}: 5 min walk; main: 10 min run`)[0]).toBe('5 min walk');
    for (const label of ['main', 'main set', 'Main-Set'])
      expect(parts(`${label} : 10 min run`)[1]).toBe('10 min run');
    for (const label of ['cool-down', 'cool down', 'cooldown', 'cool–down'])
      expect(parts(`main: 10 min run; ${label}:\n5 min walk`)[2]).toBe('5 min walk');
  });

  it('PLAN-4 a label twice, out of order, or without main is refused', () => {
    expect(codeOf('main: 5 min run; main: 5 min run')).toBe('label-twice');
    expect(codeOf('main: 5 min run; warm-up: 5 min walk')).toBe('label-order');
    expect(codeOf('warm-up: 5 min walk; 5 min run')).toBe('label-needs-main');
    expect(codeOf('5 min walk; cool-down: 5 min walk')).toBe('label-needs-main');
    expect(codeOf('warm-up:; main: 5 min run')).not.toBe('read');
  });

  it('PLAN-7 bounds hold on both sides of their edge', () => {
    const edges: readonly (readonly [string, string])[] = [
      ['5 s run', 'read'],
      ['4 s run', 'step-short'],
      ['2 h 30 min walk', 'read'],
      ['9001 s walk', 'step-long'],
      ['50 x 5 s run', 'read'],
      ['51 x 5 s run', 'count-over'],
      ['0 x 5 s run', 'count-zero'],
      ['50 x 180 s run', 'read'],
      ['50 x 181 s run', 'session-long'],
      ['2 h walk; 30 min walk', 'read'],
      ['2 h walk; 30 min 5 s walk', 'session-long'],
      ['2 x (2 x (5 s run))', 'read'],
      ['2 x (2 x (2 x 5 s run))', 'too-deep'],
      [`5 min walk${' '.repeat(1990)}`, 'read'],
      [`5 min walk${' '.repeat(1991)}`, 'text-long'],
      [`5 min walk "${'ä'.repeat(80)}"`, 'read'],
      [`5 min walk "${'ä'.repeat(81)}"`, 'note-long'],
      [`5 min walk "${'😀'.repeat(80)}"`, 'read'],
    ];
    for (const [text, code] of edges) expect([text, codeOf(text)]).toEqual([text, code]);
  });

  it('PLAN-7 a session of fifty times fifty times two hours is refused without being laid out', () => {
    const result = parsePlan('50 x (50 x (2 h walk))');
    expect(result).toMatchObject({ ok: false, error: { code: 'session-long', found: '5000 h' } });
  });

  it('PLAN-12 a quote after a digit is seconds, after a space it opens a note', () => {
    expect(read('run 30" "Don’t lean"').main).toEqual([
      { kind: 'step', duration: 30_000, activity: 'run', note: 'Don’t lean' },
    ]);
    expect(read('30" run"Tall"').main[0]).toMatchObject({ duration: 30_000, note: 'Tall' });
    expect(read('2\'30" run “ TALL as a heron ”').main[0]).toMatchObject({
      duration: 150_000,
      note: 'TALL as a heron',
    });
    expect(read('2 min run "Easy; (not 5 m) @ all / 3 x"').main[0]).toMatchObject({
      note: 'Easy; (not 5 m) @ all / 3 x',
    });
    expect(read('2 min run "Tall" @ 70%')).toEqual(read('2 min run @ 70% "Tall"'));
    expect(codeOf('2 min run "Tall\n5 min walk"')).toBe('note-open');
  });

  it('PLAN-13 totals of a plan are those of its steps, expanded one by one', () => {
    fc.assert(
      fc.property(plan, (made) => {
        type Items = Plan['main'];
        const expand = (items: Items): { activity: string; ms: number }[] =>
          items.flatMap((item) =>
            item.kind === 'step'
              ? [{ activity: item.activity, ms: item.duration }]
              : Array.from({ length: item.count }, () => expand(item.items)).flat(),
          );
        const total = (steps: { ms: number }[]) =>
          steps.reduce((sum, step) => sum + step.ms, 0) / 1000;
        const all = PARTS.flatMap((part) => expand(made[part]));
        expect(planTotals(made)).toEqual({
          seconds: total(all),
          mainSeconds: total(expand(made.main)),
          runSeconds: total(all.filter(({ activity }) => /jog|run/.test(activity))),
        });
      }),
      { numRuns: 200 },
    );
  });

  it('PLAN-14 a slip of one letter finds the activity again', () => {
    for (const activity of ACTIVITIES) {
      for (let at = 1; at < activity.length; at += 1) {
        const slip = activity.slice(0, at) + activity.slice(at + 1);
        if ((ACTIVITIES as readonly string[]).includes(slip)) continue;
        expect(nearestActivity(slip)?.split(' ').at(-1)).toBe(activity.split(' ').at(-1));
      }
    }
  });

  it('PLAN-14 words of the same meaning find it, words of another find none', () => {
    for (const [words, near] of [
      ['walking', 'walk'],
      ['gentle walking', 'easy walk'],
      ['power walk', 'brisk walk'],
      ['hike', 'brisk walk'],
      ['jogging', 'jog'],
      ['slow run', 'easy jog'],
      ['sprint', 'fast run'],
      ['tempo', 'strong run'],
      ['rest', 'stand'],
      ['recovery', 'easy walk'],
      ['stretches', 'stretch'],
      ['swim', undefined],
      ['press-ups', undefined],
    ] as const)
      expect([words, nearestActivity(words)]).toEqual([words, near]);
  });
});
