import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Cue, CuePlan } from '../../../src/domain/cues/cue.ts';
import { planCues } from '../../../src/domain/cues/plan-cues.ts';
import { QUIET_LEFT, sessionPlace, shortPlace, squeeze } from '../../../src/domain/cues/squeeze.ts';
import { stopAt, stopsOf } from '../../../src/domain/cues/stops.ts';
import { ms } from '../../../src/domain/units.ts';
import { forAny } from './laws.ts';
import { timelineOf } from './plans.ts';
import { anyHeard, REAL_VOICE } from './voices.ts';

/** ISO/IEC 13818-3: 576 samples at 24 kHz. */
const FRAME = 24;

const cue = (kind: Cue['kind'], at: number, end: number, ...clips: number[]): Cue => ({
  kind,
  at: ms(at),
  end: ms(end),
  clips: clips.map((place) => ({ at: ms(place), clip: 'tone.short' })),
  text: kind,
  segment: 0,
});

/** Worked by hand: two gaps, one of 4.9 s to be cut, one of 0.1 s to be left. */
const BY_HAND: CuePlan = {
  cues: [
    cue('start', 0, 2100, 0, 1500),
    cue('countdown', 7000, 10_600, 7000, 8000, 9000, 10_000),
    cue('change', 10_700, 12_000, 10_700),
  ],
  total: ms(10_000),
};

const shape = ({ kind, text, note, segment, clips, at, end }: Cue) => ({
  kind,
  text,
  note,
  segment,
  length: end - at,
  clips: clips.map((each) => [each.clip, each.at - at]),
});

describe('a session from cue to cue', () => {
  it('HEAR-1 a gap is cut to 0.9 s by whole frames, and a shorter one is left as it is', () => {
    const { plan } = squeeze(BY_HAND);
    // 4,900 - 900 = 4,000 ms are 166 frames (3,984 ms) and a bit: 916 ms are left.
    expect(plan.cues.map(({ at, end }) => [at, end])).toEqual([
      [0, 2100],
      [3016, 6616],
      [6716, 8016],
    ]);
    expect(plan.cues[1]?.clips.map(({ at }) => at)).toEqual([3016, 4016, 5016, 6016]);
    expect(plan.total).toBe(8016);
  });

  it('HEAR-1 every cue of the plan is there once, in order, its words and pauses untouched', () => {
    forAny(anyHeard(), ({ plan }) => {
      const short = squeeze(plan).plan;
      expect(short.cues.map(shape)).toEqual(plan.cues.map(shape));
    });
  });

  it('HEAR-1 none overlap, and no quiet between two is longer than 0.9 s and a frame', () => {
    forAny(anyHeard(), ({ plan }) => {
      const { cues, total } = squeeze(plan).plan;
      let [end, quiet] = [0, 0];
      cues.forEach((each, i) => {
        const gap = each.at - end;
        expect(gap).toBeGreaterThanOrEqual(0);
        expect(gap).toBeLessThan(QUIET_LEFT + FRAME);
        const meant = (plan.cues[i]?.at ?? 0) - (plan.cues[i - 1]?.end ?? 0);
        if (meant < QUIET_LEFT + FRAME) expect(gap).toBe(meant);
        else expect(gap).toBeGreaterThanOrEqual(QUIET_LEFT);
        quiet += gap;
        end = each.end;
      });
      expect(quiet).toBeLessThan(cues.length * (QUIET_LEFT + FRAME));
      expect(total).toBe(end);
    });
  });

  it('HEAR-2 every sound is moved by whole frames, so that it is the same sound', () => {
    forAny(anyHeard(), ({ plan }) => {
      const short = squeeze(plan).plan;
      const places = (of: CuePlan) => of.cues.flatMap(({ clips }) => clips.map(({ at }) => at));
      const meant = places(plan);
      const moved = places(short).map((at, i) => ((meant[i] ?? 0) - at) % FRAME);
      expect(moved.filter((rest) => rest !== 0)).toEqual([]);
    });
  });

  it('HEAR-3 a place leads to its place in the session: exact within a cue, in between by share', () => {
    const short = squeeze(BY_HAND);
    const at = (place: number) => sessionPlace(short, ms(place));
    expect(at(0)).toBe(0);
    expect(at(1500)).toBe(1500);
    expect(at(3016)).toBe(7000);
    expect(at(6016)).toBe(10_000);
    // Half of the 916 ms that are left is half of the 4,900 ms that were.
    expect(at(2100 + 458)).toBe(2100 + 2450);
    expect(at(99_999)).toBe(12_000);
    expect(shortPlace(short, ms(7000))).toBe(3016);
    expect(shortPlace(short, ms(99_999))).toBe(8016);
  });

  it('HEAR-3 both ways are monotone, and lead back to where they came from within a cue', () => {
    const somewhere = fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 2 });
    fc.assert(
      fc.property(anyHeard(), somewhere, ({ plan }, shares) => {
        const short = squeeze(plan);
        const places = shares.map((share) => ms(share * short.plan.total)).sort((a, b) => a - b);
        const there = places.map((at) => sessionPlace(short, at));
        expect(there).toEqual([...there].sort((a, b) => a - b));
        const back = there.map((at) => shortPlace(short, at));
        expect(back).toEqual([...back].sort((a, b) => a - b));
        for (const { at, end } of short.plan.cues) {
          for (const place of [at, ms((at + end) / 2), end]) {
            expect(shortPlace(short, sessionPlace(short, place))).toBe(place);
          }
        }
      }),
      { numRuns: 100 },
    );
  });

  it('HEAR-4 a countdown leads to the words of its boundary, which have the time of the boundary', () => {
    const plan = planCues(timelineOf('5 min easy walk; 2 x (1 min walk, 2 min run); 5 min walk'), {
      talk: 'few',
      reminders: [],
      target: 50,
      lengths: REAL_VOICE,
    });
    const stops = stopsOf(squeeze(plan));
    // 5, 6, 8, 9, 11 and 16 min, worked by hand; the first words once more at 12 s.
    expect(stops.map(({ session }) => session / 1000)).toEqual([
      0, 12, 300, 360, 480, 540, 660, 960,
    ]);
    expect(stops[2]?.cue.text).toMatch(/^Main set|^Walk/);
    expect(stops.at(-1)?.cue.kind).toBe('finish');
    const count = (stops[2]?.cue.at ?? 0) - (stops[2]?.from ?? 0);
    // 3 s of countdown and 0.7 s to the words.
    expect(count).toBe(3700);
  });

  it('HEAR-4 all that is said is a stop, once and in order, and a place belongs to one of them', () => {
    forAny(anyHeard(), ({ plan }) => {
      const short = squeeze(plan);
      const stops = stopsOf(short);
      const words = plan.cues.filter(({ kind }) => kind !== 'countdown').map(({ text }) => text);
      expect(stops.map(({ cue: { text } }) => text)).toEqual(words);
      const times = stops.map(({ session }) => session);
      expect(times).toEqual([...times].sort((a, b) => a - b));
      stops.forEach(({ from, cue: { end } }, i) => {
        expect(stopAt(stops, from)).toBe(i);
        expect(stopAt(stops, ms(end - 1))).toBe(i);
      });
      expect(stopAt(stops, ms(0))).toBe(0);
    });
  });
});
