import { describe, expect, test } from 'vitest';
import type { Cue } from '../../../src/domain/cues/cue.ts';
import { planCues } from '../../../src/domain/cues/plan-cues.ts';
import { forAny, lengthOf, segmentOf, spoken } from './laws.ts';
import { anyHeard, soundsOf } from './voices.ts';

describe('time left, halfway, quiet and order, for any session and voice', () => {
  test('CUE-6 ten seconds and one minute are said when they are left, in every segment long enough', () => {
    forAny(anyHeard('usual', 'many'), ({ timeline, plan }) => {
      const expected = timeline.segments.flatMap((segment) => [
        ...(lengthOf(segment) >= 240_000 ? [[segment.end - 60_000, 'One minute.']] : []),
        ...(lengthOf(segment) >= 45_000 ? [[segment.end - 10_000, 'Ten seconds.']] : []),
      ]);
      const said = plan.cues.filter(({ kind }) => kind === 'remaining');
      expect(said.map(({ at, text }) => [at, text])).toEqual(expected);
    });
  });

  test('CUE-7 halfway is said near half of the session and of each long segment, once when they meet', () => {
    forAny(anyHeard('usual', 'many'), (it) => {
      const half = it.timeline.total / 2;
      const near = (cue: Cue, meant: number) => Math.abs(cue.at - meant) <= 30_001;
      const long = it.timeline.segments.filter((segment) => {
        const middle = (segment.start + segment.end) / 2;
        return lengthOf(segment) >= 600_000 && Math.abs(middle - half) > 30_001;
      });
      const said = spoken(it.plan.cues).filter(({ text }) => text.includes('Halfway'));
      const ofSession = said.filter((cue) => cue.text === 'Halfway.' || cue.kind !== 'halfway');
      expect(ofSession.length).toBeLessThanOrEqual(1);
      for (const cue of ofSession) expect(near(cue, half)).toBe(true);
      const ofSegments = said.filter((cue) => !ofSession.includes(cue));
      expect(ofSegments.map(({ segment }) => segment)).toEqual(long.map(({ index }) => index));
      for (const cue of ofSegments) {
        const { start, end } = segmentOf(it, cue);
        expect(near(cue, (start + end) / 2)).toBe(true);
      }
    });
  });

  test('CUE-7 a halfway of its own is never on a boundary', () => {
    forAny(anyHeard('usual', 'many'), ({ timeline, plan }) => {
      for (const cue of plan.cues.filter(({ kind }) => kind === 'halfway')) {
        const hit = timeline.segments.filter(
          ({ end }) => cue.end > end - 3200 && cue.at < end + 700,
        );
        expect(hit).toEqual([]);
      }
    });
  });

  test('CUE-7 half of a session is said wherever there is a long segment in the middle', () => {
    forAny(anyHeard('usual', 'many'), ({ timeline, plan }) => {
      const half = timeline.total / 2;
      const middle = timeline.segments.find(({ start, end }) => start <= half && half < end);
      // Ninety seconds leave room within 30 s for the slowest voice that is tried.
      if (middle === undefined || lengthOf(middle) < 90_000) return;
      const said = plan.cues.filter(({ text }) => text.includes('Halfway'));
      expect(said.some(({ at }) => Math.abs(at - half) <= 30_001)).toBe(true);
    });
  });

  test.each([
    ['usual', 180_000],
    ['many', 90_000],
  ] as const)('CUE-9 at %s it is never quiet for more than %i ms', (talk, bound) => {
    forAny(anyHeard(talk), ({ plan, options }) => {
      const sounds = soundsOf(plan.cues, options.lengths);
      const quiets = sounds.slice(1).map(({ at }, i) => at - (sounds[i]?.end ?? 0));
      expect(Math.max(...quiets)).toBeLessThanOrEqual(bound);
    });
  });

  test('CUE-14 no two sounds overlap and every cue spans what is heard of it', () => {
    forAny(anyHeard(), ({ plan, options }) => {
      const sounds = soundsOf(plan.cues, options.lengths);
      expect(sounds.filter(({ at }, i) => at < (sounds[i - 1]?.end ?? 0))).toEqual([]);
      const wrong = plan.cues.filter((cue) => {
        const own = soundsOf([cue], options.lengths);
        return cue.at !== own[0]?.at || cue.end !== own.at(-1)?.end;
      });
      expect(wrong).toEqual([]);
    });
  });

  test('CUE-14 cues are in order of time, and spoken ones a second apart', () => {
    forAny(anyHeard(), ({ plan }) => {
      const near = plan.cues.slice(1).filter((cue, i) => {
        const before = plan.cues[i] as Cue;
        const tones = cue.kind === 'countdown' || before.kind === 'countdown';
        return cue.at - before.end < (tones ? 0 : 1000);
      });
      expect(near).toEqual([]);
    });
  });

  test('CUE-14 the same plan and settings give the same cue plan, in whole milliseconds', () => {
    forAny(anyHeard(), ({ timeline, options, plan }) => {
      expect(planCues(structuredClone(timeline), { ...options })).toEqual(plan);
      const times = plan.cues.flatMap(({ clips }) => clips.map(({ at }) => at));
      expect(times.every(Number.isSafeInteger)).toBe(true);
    });
  });

  test('CUE-14 more talk never says less', () => {
    forAny(anyHeard(), ({ timeline, options }) => {
      const [few, usual, many] = (['few', 'usual', 'many'] as const).map(
        (talk) => planCues(timeline, { ...options, talk }).cues.length,
      ) as [number, number, number];
      expect(few).toBeLessThanOrEqual(usual);
      expect(usual).toBeLessThanOrEqual(many);
    });
  });
});
