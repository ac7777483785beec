import { describe, expect, test } from 'vitest';
import type { LeadPlan } from '../../../src/domain/lead/lead-plan.ts';
import { planLeadCues } from '../../../src/domain/lead/plan-lead-cues.ts';
import { ms } from '../../../src/domain/units.ts';
import { evenVoice, REAL_VOICE } from '../cues/voices.ts';
import { demoTogether, group, together } from './lead-plans.ts';

/** What is heard but ticks and countdowns: when, in seconds, and its caption. */
const aloud = (plan: LeadPlan, lengths = REAL_VOICE, talk: 'few' | 'usual' = 'usual'): string[] =>
  planLeadCues(plan, { lengths, talk })
    .cues.filter(({ kind }) => kind !== 'countdown' && kind !== 'tick')
    .map(({ at, text }) => `${at / 1000} ${text}`);

const of = (...groups: LeadPlan['groups']): LeadPlan => ({ groups, tick: false });

describe('all groups read aloud', () => {
  test('LEAD-4 groups of the same activity are told together, and all of them as all', () => {
    const plan = together(
      '2 min easy walk; main: 3 min run; cool-down: 1 min walk',
      '2 min easy walk; main: 3 min walk; cool-down: 1 min walk',
      '2 min easy walk; main: 3 min walk; cool-down: 1 min walk',
    );
    expect(aloud(plan).filter((line) => !line.includes('to go'))).toEqual([
      '0 Here we go. All groups: easy walk, two minutes.',
      '120.7 Group 1: run. Groups 2 and 3: walk. Three minutes.',
      '300.7 Group 1: walk. Groups 2 and 3: carry on. One minute.',
      '360.7 All groups: finished. That is the end. You are done for today.',
    ]);
  });

  test('LEAD-8 who starts later is told to get ready, and what to begin with when it starts', () => {
    const plan = of(
      group(1, '5 min walk'),
      group(2, '5 min walk', { startsAt: 120 }),
      group(3, '5 min walk', { startsAt: 120 }),
    );
    expect(aloud(plan)).toEqual([
      '0 Here we go. Group 1: walk, five minutes.',
      '60 Groups 2 and 3: get ready, one minute.',
      '110 Groups 2 and 3: get ready, ten seconds.',
      '120.7 Groups 2 and 3: walk, five minutes.',
      '240 Group 1: one minute to go.',
      '290 Group 1: ten seconds to go.',
      '300.7 Group 1: finished.',
      '360 Groups 2 and 3: one minute to go.',
      '410 Groups 2 and 3: ten seconds to go.',
      '420.7 Groups 2 and 3: finished. That is the end. You are done for today.',
    ]);
  });

  test('LEAD-9 with few cues, changes alone', () => {
    const plan = together('5 min walk; main: 2 min run', '5 min walk; main: 3 min run');
    expect(aloud(plan, REAL_VOICE, 'few')).toEqual([
      '0 Here we go. All groups: walk.',
      '300.7 All groups: run.',
      '420.7 Group 1: finished.',
      '480.7 Group 2: finished. That is the end. You are done for today.',
    ]);
  });

  test('LEAD-5 with three things to tell, nobody waits for lengths', () => {
    const plan = together(
      '2 min walk; main: 3 min run',
      '2 min walk; main: 2 min brisk walk',
      '2 min walk; main: 1 min jog',
    );
    expect(aloud(plan)).toContain('120.7 Group 1: run. Group 2: brisk walk. Group 3: jog.');
  });

  test('LEAD-5 lengths go where the next change is near', () => {
    const plan = together('2 min walk; main: 3 min run', '126 s walk; main: 3 min run');
    const near = together('2 min walk; main: 3 min run', '123 s walk; main: 3 min run');
    expect(aloud(plan)).toContain('120.7 Group 1: run, three minutes.');
    expect(aloud(near)).toContain('120.7 Group 1: run.');
  });

  test('LEAD-6 what changes while something is said is told together, as soon as it is said', () => {
    // Every word lasts a second: "Group one: run" is 3.244 s with its pauses, from 0.7 s on.
    const plan = of(
      group(1, '60 s walk; main: 60 s run'),
      group(2, '61 s walk; main: 60 s run'),
      group(3, '62 s walk; main: 60 s jog'),
      group(4, '3 min walk'),
    );
    const { cues } = planLeadCues(plan, { lengths: evenVoice(1000) });
    const changes = cues.filter(({ at, kind }) => kind === 'change' && at < 80_000);
    expect(changes.map(({ text }) => text)).toEqual([
      'Group 1: run.',
      'Group 2: run. Group 3: jog.',
    ]);
    expect(changes[0]?.end).toBe(60_700 + 3244);
    expect(changes[1]?.clips[0]).toEqual({ at: ms(60_700 + 3244 + 200), clip: 'tone.rise' });
  });

  test('LEAD-6 a change that is no longer so is not told', () => {
    const plan = of(
      group(1, '60 s walk; main: 60 s run'),
      group(2, '61 s walk; main: 5 s run, 60 s stand'),
    );
    const { cues } = planLeadCues(plan, { lengths: evenVoice(2000) });
    const changes = cues.filter(({ at, kind }) => kind === 'change' && at > 50_000 && at < 80_000);
    expect(changes.map(({ text }) => text)).toEqual(['Group 1: run.', 'Group 2: stand still.']);
  });

  test('LEAD-7 a group with a tone is called, after the long tone of others and before their words', () => {
    const plan = of(
      group(1, '60 s walk; main: 60 s run'),
      group(2, '60 s walk; main: 90 s run', { voice: 'tone' }),
      group(3, '60 s walk; main: 75 s run', { voice: 'silent' }),
    );
    const { cues } = planLeadCues(plan, { lengths: REAL_VOICE });
    expect(aloud(plan)).toEqual([
      '0 Tone of group 2. Here we go. Group 1: walk, one minute.',
      '60.7 Tone of group 2. Group 1: run, one minute.',
      '110 Group 1: ten seconds to go.',
      '120.7 Group 1: finished.',
      '150 Tone of group 2.',
    ]);
    expect(cues.at(-1)?.clips).toEqual([{ at: 150_000, clip: 'tone.group-2' }]);
  });

  test('LEAD-10 a tick after every twenty seconds of quiet, a second from anything else', () => {
    const plan = { ...together('5 min walk'), tick: true };
    const ticks = planLeadCues(plan, { lengths: evenVoice(500) }).cues.filter(
      ({ kind }) => kind === 'tick',
    );
    // "Here we go. Group one: walk, five minutes.": six clips of half a second from 1.5 s on.
    const end = 1500 + 6 * 500 + 360 + 100 + 144 + 288 + 100;
    const times = ticks.map(({ at }) => at).filter((at) => at < 235_000);
    expect(times).toEqual(times.map((_, i) => end + 20_000 * (i + 1)));
  });

  test('LEAD-4 the demo: four groups two minutes apart, in the third week', () => {
    const lines = aloud(demoTogether(3, 120));
    expect(lines.slice(0, 14)).toMatchInlineSnapshot(`
      [
        "0 Here we go. Group 1: easy walk, five minutes.",
        "60 Group 2: get ready, one minute.",
        "110 Group 2: get ready, ten seconds.",
        "120.7 Group 2: easy walk, five minutes.",
        "180 Group 3: get ready, one minute.",
        "230 Group 3: get ready, ten seconds.",
        "240.7 Group 3: easy walk, five minutes.",
        "300.7 Group 1: walk, three minutes.",
        "350 Group 4: get ready, ten seconds.",
        "360.7 Group 4: easy walk, five minutes.",
        "420.7 Group 2: easy jog, two minutes.",
        "480.7 Group 1: brisk walk, two minutes.",
        "540.7 Group 2: brisk walk, three minutes. Group 3: run, one minute thirty.",
        "600.7 Group 1: walk, three minutes.",
      ]
    `);
    expect(lines.at(-1)).toBe('2460.7 Group 4: finished. That is the end. You are done for today.');
  });
});
