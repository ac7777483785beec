import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { ClipLengths, CuePlan, Talk } from '../../../src/domain/cues/cue.ts';
import type { LeadPlan } from '../../../src/domain/lead/lead-plan.ts';
import { planLeadCues } from '../../../src/domain/lead/plan-lead-cues.ts';
import { anyVoice, soundsOf } from '../cues/voices.ts';
import { heardOf, type Planned, plannedOf } from './events.ts';
import { anyLead } from './lead-plans.ts';

/** Quiet that a late change keeps from what was said before. */
const APART = 200;

interface It {
  readonly plan: LeadPlan;
  readonly lengths: ClipLengths;
  readonly talk: Talk;
  readonly cues: CuePlan;
}

const anyHeard: fc.Arbitrary<It> = fc
  .record({
    plan: anyLead,
    lengths: anyVoice,
    talk: fc.constantFrom<Talk>('few', 'usual', 'many'),
  })
  .map((it) => ({ ...it, cues: planLeadCues(it.plan, it) }));

const forAny = (holds: (it: It) => void): void =>
  fc.assert(fc.property(anyHeard, holds), { numRuns: 60 });

const changesOf = (plan: LeadPlan): Planned[] =>
  (['words', 'tone'] as const).flatMap((voice) => plannedOf(plan, voice));

describe('all groups on one loudspeaker, for any groups, starts and voices', () => {
  test('LEAD-6 every change is told at its time, or at the first moment that is free after it', () => {
    forAny(({ plan, cues }) => {
      const heard = heardOf(cues, plan);
      for (const { at, number } of changesOf(plan)) {
        const index = heard.findIndex((one) => one.at >= at);
        const [before, one] = [heard[index - 1], heard[index]];
        if (one === undefined) throw new Error(`group ${number} is not told at ${at}`);
        const isTold = one.told.some((told) => told.number === number);
        expect(isTold || one.called.includes(number), `group ${number} at ${at}`).toBe(true);
        if (one.at === at) continue;
        expect(before?.at, `group ${number} at ${at}`).toBeLessThan(at);
        expect(one.at).toBe((before?.end ?? 0) + APART);
        expect(one.at - at).toBeLessThan((before?.end ?? 0) - (before?.at ?? 0) + APART);
        expect([...(before?.lengths ?? []), ...one.lengths]).toEqual([]);
      }
    });
  });

  test('LEAD-6 what is told is what each is to do now, and nothing else is told', () => {
    forAny(({ plan, cues }) => {
      const planned = plannedOf(plan, 'words');
      let from = -1;
      for (const { at, told, called } of heardOf(cues, plan)) {
        const due = planned.filter((change) => change.at > from && change.at <= at);
        const last = new Map(due.map(({ number, what }) => [number, what]));
        expect(new Map(told.map(({ number, what }) => [number, what]))).toEqual(last);
        expect(told.length).toBe(last.size);
        const calls = plannedOf(plan, 'tone').filter((one) => one.at > from && one.at <= at);
        expect(called).toEqual([...new Set(calls.map(({ number }) => number))].sort());
        from = at;
      }
    });
  });

  test('LEAD-4 changes of one moment are one sentence, each activity said once, in order', () => {
    forAny(({ plan, cues }) => {
      for (const { told } of heardOf(cues, plan)) {
        const whats = told.map(({ what }) => what);
        const runs = whats.filter((what, i) => what !== whats[i - 1]);
        expect(new Set(runs).size).toBe(runs.length);
        const firsts = runs.map((what) => told.find((one) => one.what === what)?.number ?? 0);
        expect(firsts).toEqual(firsts.toSorted((a, b) => a - b));
      }
    });
  });

  test('LEAD-4 "all groups" are all there are', () => {
    forAny(({ plan, cues }) => {
      const all = cues.cues.filter(({ text }) => text.includes('All groups'));
      if (all.length > 0) expect(plan.groups.length).toBeGreaterThan(1);
      if (plan.groups.some(({ voice }) => voice !== 'words')) expect(all).toEqual([]);
      for (const { cue, told } of heardOf(cues, plan)) {
        if (!cue.text.includes('All groups')) continue;
        expect(told.map(({ number }) => number)).toEqual(plan.groups.map(({ number }) => number));
      }
    });
  });

  test('LEAD-3 the long tone rises or falls where it does so for all, and is level otherwise', () => {
    forAny(({ plan, cues }) => {
      const planned = plannedOf(plan, 'words');
      let from = -1;
      for (const { at, tone } of heardOf(cues, plan)) {
        const due = planned.filter((change) => change.at > from && change.at <= at);
        const last = [...new Map(due.map((change) => [change.number, change])).values()];
        from = at;
        if (at === 0) {
          expect(tone).toBe('tone.wake');
          continue;
        }
        const signs = new Set(
          last.map(({ before, after }) =>
            Math.sign((after?.effort ?? -1) - (before?.effort ?? -1)),
          ),
        );
        const [sign] = signs;
        const expected = signs.size > 1 || sign === 0 ? 'level' : sign === 1 ? 'rise' : 'fall';
        expect(tone).toBe(last.length === 0 ? undefined : `tone.${expected}`);
      }
    });
  });

  test('LEAD-3 short tones are heard 3, 2 and 1 s before, all those that are free', () => {
    forAny(({ plan, cues }) => {
      const times = new Set(plannedOf(plan, 'words').map(({ at }) => at));
      heardOf(cues, plan).forEach(({ at, tone, short, told }, i, all) => {
        const free = (all[i - 1]?.end ?? Number.NEGATIVE_INFINITY) + APART;
        const isCounted = tone !== undefined && at > 0 && times.has(at) && !isMoved(at, told);
        const expected = isCounted ? [3, 2, 1].map((s) => at - s * 1000) : [];
        expect(short).toEqual(expected.filter((time) => time >= free));

        function isMoved(time: number, of: readonly { number: number }[]): boolean {
          const before = all[i - 1]?.at ?? -1;
          const since = changesOf(plan).filter((one) => one.at > before && one.at <= time);
          return of.length === 0 || since.some((one) => one.at < time);
        }
      });
    });
  });

  test('LEAD-3 words begin 0.7 s after the long tone, or when the calls are over', () => {
    forAny(({ plan, cues, lengths }) => {
      for (const { at, told, called, wordsAt } of heardOf(cues, plan)) {
        if (told.length === 0) continue;
        const calls = called.map((number) => lengths.lengthOf(`tone.group-${number}`) + 300);
        const after = (at === 0 ? 1500 : 700) + calls.reduce((sum, length) => sum + length, 0);
        expect(wordsAt).toBe(at + after);
      }
    });
  });

  test('LEAD-5 with lengths there is room for the next change, and a short tone before it', () => {
    forAny(({ plan, cues, talk }) => {
      const heard = heardOf(cues, plan);
      heard.forEach(({ lengths, end, told }, i) => {
        if (lengths.length === 0) return;
        const next = heard[i + 1];
        const room = (next?.told.length ?? 0) > 0 ? 1200 : APART;
        expect(talk).not.toBe('few');
        expect(end).toBeLessThanOrEqual((next?.at ?? Infinity) - room);
        expect(told.length).toBeGreaterThan(0);
      });
    });
  });

  test('LEAD-7 a silent group is never heard, one with a tone is never spoken to', () => {
    forAny(({ plan, cues }) => {
      const voices = new Map(plan.groups.map(({ number, voice }) => [number, voice]));
      for (const { told, called } of heardOf(cues, plan)) {
        for (const { number } of told) expect(voices.get(number)).toBe('words');
        for (const number of called) expect(voices.get(number)).toBe('tone');
      }
      const isSilent = plan.groups.every(({ voice }) => voice === 'silent');
      if (isSilent) expect(cues.cues.filter(({ kind }) => kind !== 'tick')).toEqual([]);
    });
  });

  test('LEAD-8 it starts with a waking tone at 0 s, and ends with words of the end', () => {
    forAny(({ plan, cues }) => {
      const heard = heardOf(cues, plan);
      if (plan.groups.every(({ voice }) => voice === 'silent')) return;
      expect(heard[0]?.at).toBe(0);
      expect(heard[0]?.tone).toBe('tone.wake');
      const ends = plan.groups.map(({ startsAt, timeline }) => startsAt + timeline.total);
      const last = Math.max(...ends);
      const isSpoken = plan.groups.some(({ voice }, i) => voice === 'words' && ends[i] === last);
      const finish = cues.cues.filter(({ text }) => text.includes('That is the end'));
      expect(finish.length).toBe(isSpoken ? 1 : 0);
      if (isSpoken) expect(finish[0]).toBe(heard.at(-1)?.cue);
      expect(cues.total).toBe(last);
    });
  });

  test('LEAD-9 the time left is said exactly then, of spoken groups, and is true', () => {
    forAny(({ plan, cues, talk }) => {
      const said = cues.cues.filter(({ kind }) => kind === 'remaining');
      if (talk === 'few') expect(said).toEqual([]);
      const marks = plan.groups
        .filter(({ voice }) => voice === 'words')
        .flatMap(({ startsAt, timeline }) => [startsAt, startsAt + timeline.total]);
      for (const { at, text } of said) {
        const left = /minute/.test(text) ? 60_000 : 10_000;
        expect(marks).toContain(at + left);
      }
    });
  });

  test('LEAD-10 a tick is a second from anything else, and with ticks it is never quiet for long', () => {
    forAny(({ plan, cues, lengths }) => {
      const sounds = soundsOf(cues.cues, lengths).filter(({ at }) => at < cues.total);
      const ticks = cues.cues.filter(({ kind }) => kind === 'tick');
      if (!plan.tick) {
        expect(ticks).toEqual([]);
        return;
      }
      let end = 0;
      for (const sound of [...sounds, { clip: '', at: cues.total, end: 0 }]) {
        const quiet = sound.at - end;
        expect(quiet).toBeLessThanOrEqual(22_000);
        if (sound.clip === 'tone.tick') expect(quiet).toBeGreaterThanOrEqual(1000);
        end = sound.end;
      }
      sounds.forEach(({ clip, end: over }, i) => {
        const next = sounds[i + 1];
        if (clip === 'tone.tick' && next) expect(next.at - over).toBeGreaterThanOrEqual(1000);
      });
    });
  });

  test('LEAD-11 nothing overlaps, cues are in order and span what is heard of them', () => {
    forAny(({ cues, lengths }) => {
      const sounds = soundsOf(cues.cues, lengths);
      expect(sounds.filter(({ at }, i) => at < (sounds[i - 1]?.end ?? 0))).toEqual([]);
      expect(sounds.every(({ at }) => Number.isSafeInteger(at) && at >= 0)).toBe(true);
      for (const cue of cues.cues) {
        const own = soundsOf([cue], lengths);
        expect([cue.at, cue.end]).toEqual([own[0]?.at, own.at(-1)?.end]);
        expect(cue.text).not.toBe('');
      }
    });
  });

  test('LEAD-11 the same plan gives the same cues', () => {
    forAny(({ plan, lengths, talk, cues }) => {
      expect(planLeadCues(structuredClone(plan), { lengths, talk })).toEqual(cues);
    });
  });
});
