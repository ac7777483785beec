import { describe, expect, it } from 'vitest';
import { countdowns, wordsStartAt } from '../../../src/domain/cues/boundary.ts';
import type { Cue } from '../../../src/domain/cues/cue.ts';
import { placeHalfways } from '../../../src/domain/cues/halfway.ts';
import { SAY, TONE } from '../../../src/domain/cues/phrases.ts';
import { planCues } from '../../../src/domain/cues/plan-cues.ts';
import { type Gap, gapsOf, nearestPlace, putAt, type Room } from '../../../src/domain/cues/room.ts';
import { chooseSlots } from '../../../src/domain/cues/slots.ts';
import { layOut } from '../../../src/domain/timeline/lay-out.ts';
import { ms } from '../../../src/domain/units.ts';
import { mainOnly, repeat, step } from './plans.ts';
import { evenVoice } from './voices.ts';

/** Places worked by hand, to the millisecond: the laws of a whole session hold more loosely. */

const said = (at: number, end: number): Cue => ({
  kind: 'change',
  at: ms(at),
  end: ms(end),
  clips: [],
  text: '',
  segment: 0,
});

const roomOf = (start: number, end: number, ...cues: readonly Cue[]): Room => ({
  segment: {
    index: 0,
    start: ms(start),
    end: ms(end),
    part: 'main',
    activity: 'run',
    effort: 50,
  },
  cues: [...cues],
});

/** A quiet stretch of a segment that ends three seconds after it, as most do. */
const gap = (from: number, to: number, end = to + 3000): Gap => ({
  room: roomOf(0, end),
  index: 0,
  from: ms(from),
  to: ms(to),
  until: ms(to),
});

const USUAL = { bound: 180_000, least: 20_000 };
const places = (gaps: readonly Gap[], wanted: number, wish = USUAL) =>
  chooseSlots(gaps, { ...wish, wanted }).map(({ at, needed }) => [at, needed]);
const count = (gaps: readonly Gap[], wanted: number) =>
  gaps.map(
    (each) => chooseSlots(gaps, { ...USUAL, wanted }).filter((it) => it.gap === each).length,
  );

describe('how many places a quiet stretch gets', () => {
  it('CUE-10 none where quiet is just within its bound, one where it is a moment over', () => {
    expect(places([gap(0, 180_000)], 0)).toEqual([]);
    expect(places([gap(0, 180_001)], 0)).toHaveLength(1);
  });

  it('CUE-10 one more where places moved to whole five seconds would not be enough', () => {
    // A place may move by two and a half seconds either way: 175 s each are safe.
    expect(places([gap(0, 350_000)], 0)).toHaveLength(1);
    expect(places([gap(0, 350_001)], 0)).toHaveLength(2);
  });

  it('CUE-10 what is wanted and not needed goes where there is room, and no further', () => {
    expect(count([gap(0, 40_000)], 1)).toEqual([1]);
    expect(count([gap(0, 39_999)], 1)).toEqual([0]);
    expect(count([gap(0, 60_000)], 9)).toEqual([2]);
    expect(count([gap(0, 59_999)], 9)).toEqual([1]);
  });

  it('CUE-10 the widest first, one with something in it counting as a quarter', () => {
    const [narrow, wide] = [gap(0, 60_000), gap(100_000, 280_000)];
    expect(count([narrow, wide], 1)).toEqual([0, 1]);
    // 180 s with one are as 45 s.
    expect(count([narrow, wide], 2)).toEqual([1, 1]);
    const third = gap(300_000, 340_000);
    expect(count([third, wide], 2)).toEqual([0, 2]);
  });

  it('CUE-10 of gaps alike the first, then the farthest from all that is placed', () => {
    const alike = [0, 100_000, 250_000, 500_000].map((from) => gap(from, from + 60_000));
    expect(count(alike, 1)).toEqual([1, 0, 0, 0]);
    expect(count(alike, 2)).toEqual([1, 0, 0, 1]);
    expect(count(alike, 3)).toEqual([1, 0, 1, 1]);
    expect(count(alike, 4)).toEqual([1, 1, 1, 1]);
  });

  it('CUE-10 a gap that needs something counts as placed, too', () => {
    const gaps = [gap(0, 200_000), gap(210_000, 270_000), gap(500_000, 560_000)];
    expect(count(gaps, 2)).toEqual([1, 0, 1]);
    // A wider one comes first, however near it is.
    expect(count([gap(0, 200_000), gap(210_000, 310_000), gap(500_000, 560_000)], 2)).toEqual([
      1, 1, 0,
    ]);
  });

  it('CUE-10 gaps are alike by whole ten seconds', () => {
    expect(count([gap(0, 94_999), gap(200_000, 295_000)], 1)).toEqual([0, 1]);
    expect(count([gap(0, 95_000), gap(200_000, 304_999)], 1)).toEqual([1, 0]);
  });

  it('CUE-12 those of a gap that is too long without them are needed, all others are not', () => {
    const found = places([gap(0, 180_001), gap(400_000, 500_000)], 2);
    expect(found.map(([, needed]) => needed)).toEqual([true, false]);
    expect(places([gap(0, 180_000)], 1).map(([, needed]) => needed)).toEqual([false]);
  });
});

describe('at which times', () => {
  const at = (each: Gap, wish = USUAL) => places([each], 1, wish).map(([place]) => place);

  it('CUE-12 at the roundest times before the segment ends that move nothing by a quarter of its step', () => {
    // In the middle 120 s, of 243 s: 123 s before the end are two minutes.
    expect(at(gap(0, 240_000))).toEqual([123_000]);
    // In the middle 120 s, of 270 s: two and a half minutes before the end are three.
    expect(at(gap(0, 240_000, 270_000))).toEqual([90_000]);
    // In the middle 119 s, of 241 s: half of the step is under a minute, and two minutes are four halves.
    expect(at(gap(0, 238_000))).toEqual([121_000]);
    // In the middle 100 s, of 203 s: 103 s before the end are three halves of a minute.
    expect(at(gap(0, 200_000))).toEqual([113_000]);
    // In the middle 29 s, of 61 s: 32 s before the end, by steps of five seconds.
    expect(at(gap(0, 58_000))).toEqual([31_000]);
    // In the middle 20 s, of 43 s: nearer to the words before than wanted, as nothing else would do.
    expect(at(gap(0, 40_000))).toEqual([18_000]);
    // Steps of four seconds still go by whole five.
    expect(
      places([gap(0, 16_000)], 0, { ...USUAL, bound: 10_000 }).map(([place]) => place),
    ).toEqual([4000, 9000, 14_000]);
  });

  it('CUE-9 a time that would leave too long a quiet gives way to a finer one', () => {
    // In the middle 175 s, of 380 s: whole minutes would be 200 s, and half minutes are 170 s.
    expect(at(gap(0, 350_000, 380_000))).toEqual([170_000]);
    // In the middle 170 s, of 365 s: whole minutes would be 185 s, and half minutes 155 s.
    expect(at(gap(0, 340_000, 365_000))).toEqual([170_000]);
  });

  it('CUE-10 a time that comes too near to the words before gives way to a finer one', () => {
    // In the middle 30 s, of 67.5 s: quarters of a minute would be 22.5 s.
    const near = gap(0, 60_000, 67_500);
    expect(at(near, { ...USUAL, least: 22_500 })).toEqual([22_500]);
    expect(at(near, { ...USUAL, least: 22_501 })).toEqual([27_500]);
  });

  it('CUE-10 several are spread evenly, each at a round time of its own', () => {
    // Evenly 166.7 s and 333.3 s, of 503 s: six minutes and three before the end, 180 s apart.
    expect(places([gap(0, 500_000)], 0).map(([place]) => place)).toEqual([143_000, 323_000]);
  });
});

describe('the place nearest to a time', () => {
  const HALF_SECOND = evenVoice(500);
  const near = (rooms: readonly Room[], meant: number, reach: number, spare = 0) =>
    nearestPlace(rooms, SAY.halfway, ms(meant), reach, spare, HALF_SECOND)?.at;
  const minute = () => roomOf(0, 60_000, said(0, 1000));

  it('CUE-7 is the time itself, or the first or last at which the words have a second of quiet', () => {
    expect(near([minute()], 30_000, 0)).toBe(30_000);
    expect(near([minute()], 500, 9000)).toBe(2000);
    // They end 3.2 s before the segment.
    expect(near([minute()], 60_000, 9000)).toBe(56_300);
    expect(near([minute()], 500, 9000, 3000)).toBe(4000);
    expect(near([minute()], 60_000, 9000, 3000)).toBe(54_300);
  });

  it('CUE-7 is no farther than may be', () => {
    expect(near([minute()], 60_000, 3700)).toBe(56_300);
    expect(near([minute()], 60_000, 3699)).toBeUndefined();
    expect(near([minute()], 500, 1500)).toBe(2000);
    expect(near([minute()], 500, 1499)).toBeUndefined();
  });

  it('CUE-7 has words and a second on either side between two others, or is elsewhere', () => {
    const between = (next: number) => roomOf(0, 60_000, said(0, 1000), said(next, next + 50_000));
    expect(near([between(3500)], 2100, 9000)).toBe(2000);
    expect(near([between(3499)], 2100, 9000)).toBeUndefined();
  });

  it('CUE-7 is in the nearest of several segments, the first where two are as near', () => {
    const other = roomOf(60_000, 120_000, said(60_700, 61_000));
    expect(near([minute(), other], 58_000, 9000)).toBe(56_300);
    expect(near([minute(), other], 61_000, 9000)).toBe(62_000);
    // 2,850 ms from either.
    expect(near([minute(), other], 59_150, 9000)).toBe(56_300);
    expect(near([minute(), other], 59_151, 9000)).toBe(62_000);
  });

  it('CUE-10 words go just where they fit between two others, or nowhere', () => {
    const room = (next: number) => roomOf(0, 60_000, said(0, 1000), said(next, next + 1000));
    const fits = (each: Room, at: number) =>
      putAt(each, { kind: 'reminder', segment: 0 }, SAY.halfway, ms(at), HALF_SECOND);
    const three = room(3500);
    expect(fits(three, 1999)).toBe(false);
    expect(fits(three, 2001)).toBe(false);
    expect(fits(three, 2000)).toBe(true);
    expect(three.cues.map(({ at }) => at)).toEqual([0, 2000, 3500]);
    const last = minute();
    expect(fits(last, 56_301)).toBe(false);
    expect(fits(last, 56_300)).toBe(true);
  });

  it('CUE-5 a segment of less than ten seconds has no place', () => {
    expect(gapsOf(roomOf(0, 9999, said(0, 500)))).toEqual([]);
    expect(gapsOf(roomOf(0, 10_000, said(0, 500)))).toHaveLength(1);
  });

  it('CUE-3 quiet lasts until the next words, or the tones of the boundary; words end before', () => {
    expect(gapsOf(roomOf(0, 60_000, said(0, 1000), said(20_000, 21_000)))).toMatchObject([
      { index: 1, from: 1000, to: 20_000, until: 19_000 },
      { index: 2, from: 21_000, to: 57_000, until: 56_800 },
    ]);
  });
});

describe('a halfway that ends the words of a change', () => {
  /** Four segments of 25 s in which there is no time for two words more. */
  const full = (): Room[] =>
    [0, 1, 2, 3].map((n) => {
      const start = n * 25_000;
      const { segment } = roomOf(start, start + 25_000);
      return {
        segment: { ...segment, index: n },
        cues: [said(start + 700, start + 10_700), said(start + 12_000, start + 21_000)],
      };
    });
  /** Which changes say it, where their words with it end so far behind the beginning of each. */
  const ends = (after: (n: number) => number, isSaid = (_: number) => true, total = 100_000) => {
    const rooms = full();
    const before = rooms.map(({ cues }) => cues[0]);
    placeHalfways(
      { segments: rooms.map(({ segment }) => segment), total: ms(total) },
      rooms,
      (n, halfway) => ({
        ...said(n * 25_000 + 700, n * 25_000 + after(n)),
        clips: (isSaid(n) ? halfway : SAY.oneMinute).map((clip) => ({ at: ms(0), clip })),
      }),
      evenVoice(2000),
    );
    return rooms.flatMap(({ cues }, n) => (cues[0] === before[n] ? [] : [n]));
  };

  it('CUE-7 is said by the nearest change that has time for it', () => {
    expect(ends(() => 11_000)).toEqual([2]);
    // The words before the middle are 24.3 s from it, those behind 25.7 s.
    expect(ends((n) => (n === 2 ? 11_001 : 11_000))).toEqual([1]);
    expect(ends((n) => (n === 3 ? 11_000 : 11_001))).toEqual([3]);
    // The first words of all are 49.3 s away.
    expect(ends((n) => (n === 0 ? 11_000 : 11_001))).toEqual([]);
  });

  it('CUE-7 is said by none that is more than 30 s from it', () => {
    const onlyFirstBefore = (n: number) => (n === 1 ? 11_000 : 11_001);
    // The words of the second segment are at 25.7 s.
    expect(ends(onlyFirstBefore, undefined, 2 * 55_700)).toEqual([1]);
    expect(ends(onlyFirstBefore, undefined, 2 * 55_701)).toEqual([]);
  });

  it('CUE-7 is not taken for said where the words had to leave it out', () => {
    expect(
      ends(
        () => 11_000,
        (n) => n !== 2,
      ),
    ).toEqual([1]);
    expect(
      ends(
        () => 11_000,
        () => false,
      ),
    ).toEqual([]);
  });
});

describe('words that make room for others', () => {
  const lengths = evenVoice(600);
  const starts = (seconds: number) => {
    const sets = repeat(2, step(seconds, 'walk', { effort: 10 }), step(20, 'run'));
    const plan = { 'warm-up': [repeat(2, sets)], main: [step(60, 'run')], 'cool-down': [] };
    const options = { talk: 'usual', reminders: [], target: 50, lengths } as const;
    const { cues } = planCues(layOut(plan), options);
    return cues.filter(({ kind }) => kind === 'start').map(({ text }) => text);
  };

  it('CUE-1 of the start make room for the activity once more where that is over in time, 3.2 s before the end', () => {
    const said = 'Warm-up. Round 1 of 2. Set 1 of 2. Walk. Sixteen seconds.';
    // 12 s, six tenths of a word, and 3.2 s.
    expect(starts(15.8)).toEqual([said, 'Walk.']);
    expect(starts(15.799)).toEqual([`${said} So easy that you could sing.`]);
  });

  it('CUE-3 of a boundary wait for a long tone that rings on: 48 ms of quiet behind it', () => {
    const after = (length: number) =>
      wordsStartAt(ms(60_000), TONE.harder, { lengthOf: () => ms(length) });
    expect([600, 652, 653, 1000].map(after)).toEqual([60_700, 60_700, 60_701, 61_048]);
  });

  it('CUE-2 a countdown is of the segment that it leads to, the last of the one that ends', () => {
    const timeline = layOut(mainOnly(step(60, 'run'), step(60, 'walk'), step(60, 'run')));
    expect(countdowns(timeline, lengths).map(({ segment }) => segment)).toEqual([1, 2, 2]);
  });
});
