/** Where one thing ends and the next begins, to the millisecond. */
import { describe, expect, it } from 'vitest';
import { agreedTime } from '../../../src/domain/session/agreed-time.ts';
import {
  AHEAD_MS,
  activeMs,
  beginStretch,
  doneMs,
  goOnTo,
  isSteady,
  merge,
  noCredit,
} from '../../../src/domain/session/credit.ts';
import {
  backFrom,
  changeTo,
  hasCoolDown,
  isEasierThanNeighbour,
} from '../../../src/domain/session/places.ts';
import { beginWatch, watchPocket } from '../../../src/domain/session/pocket-check.ts';
import { closed, LAST_STRETCH, recoveryOf } from '../../../src/domain/session/recovery.ts';
import type { Segment } from '../../../src/domain/timeline/timeline.ts';
import { ms } from '../../../src/domain/units.ts';
import { Phone } from '../../drivers/player.ts';
import { BARE_DAY, EASY_DAY, NINE_O_CLOCK, scoreOf, waitScoreOf } from '../../drivers/sessions.ts';

const easyDay = () => new Phone(scoreOf(EASY_DAY)).start();
const at = (wall: number, track: number) => ({ wall, track: ms(track) });
/** A sign of the track's place, so many milliseconds later. */
const sign = (phone: Phone, later: number, track: number) =>
  phone.send({ type: 'tick', wall: phone.wall + later, track: ms(track) }).session;

describe('a place that is told', () => {
  it('PLAY-18 may run a second ahead of the wall clock; more is a seek, which is no exercise', () => {
    expect(isSteady(at(0, 0), at(1000, 1000 + AHEAD_MS))).toBe(true);
    expect(isSteady(at(0, 0), at(1000, 1001 + AHEAD_MS))).toBe(false);
    expect(isSteady(at(5, 5), at(5, 5))).toBe(true);
    expect(isSteady(at(5, 5), at(5, 4))).toBe(false);
    expect(isSteady(at(5, 5), at(4, 5))).toBe(false);
  });

  it('PLAY-18 steps that are each a little ahead do not add up', () => {
    let credit = beginStretch(noCredit, 'plan', at(0, 0));
    for (let n = 1; n <= 10; n++) credit = goOnTo(credit, at(n * 1000, n * 1900));
    // The wall clock's ten seconds at most, less what each new beginning leaves out.
    expect(activeMs(credit)).toBeLessThanOrEqual(10_000);
    expect(doneMs(credit)).toBeLessThanOrEqual(10_000);
    const steady = goOnTo(beginStretch(noCredit, 'plan', at(0, 0)), at(1000, 1000 + AHEAD_MS));
    expect(activeMs(steady)).toBe(1000);
    expect(steady.open?.from).toEqual(at(0, 0));
    const sought = goOnTo(beginStretch(noCredit, 'plan', at(0, 0)), at(1000, 1001 + AHEAD_MS));
    expect(activeMs(sought)).toBe(0);
    expect(sought.open?.from).toEqual(at(1000, 1001 + AHEAD_MS));
  });

  it('PLAY-12 stretches that meet are one, and those within others are lost in them', () => {
    const of = (...pairs: readonly (readonly [number, number])[]) =>
      merge(pairs.map(([from, to]) => [ms(from), ms(to)]));
    expect(of([0, 5], [5, 9])).toEqual([[0, 9]]);
    expect(of([0, 5], [6, 9])).toEqual([
      [0, 5],
      [6, 9],
    ]);
    expect(of([0, 9], [2, 5], [3, 3])).toEqual([[0, 9]]);
    expect(of([2, 5], [0, 3])).toEqual([[0, 5]]);
  });

  it('PLAY-13 that stands for three seconds is a stall, and a moment less is none', () => {
    expect(sign(easyDay().pass(20), 2999, 20_000).name).toBe('running');
    expect(sign(easyDay().pass(20), 3000, 20_000).name).toBe('stalled');
  });

  it('PLAY-13 half a second earlier than before is the phone’s own jitter, more is another place', () => {
    expect(sign(easyDay().pass(20), 100, 19_501).place).toBe(20_000);
    expect(sign(easyDay().pass(20), 100, 19_500).place).toBe(19_500);
  });

  it('PLAY-14 a gap is told from over three seconds on', () => {
    expect(sign(easyDay().pass(20), 13_000, 30_000).gap).toBeUndefined();
    expect(sign(easyDay().pass(20), 13_001, 30_000).gap?.lost).toBe(3001);
  });
});

describe('places in a session', () => {
  const [warmUp, run, walk] = EASY_DAY.segments as [Segment, Segment, Segment];

  it('PLAY-9 back within three seconds of a start is the part before', () => {
    expect(backFrom(EASY_DAY, ms(63_000))).toBe(0);
    expect(backFrom(EASY_DAY, ms(63_001))).toBe(60_000);
    expect(backFrom(EASY_DAY, ms(0))).toBe(0);
  });

  it('PLAY-19 a change is to harder, easier or the same; the first part is no change', () => {
    expect([warmUp, run, walk].map((segment) => changeTo(EASY_DAY, segment))).toEqual([
      'same',
      'harder',
      'easier',
    ]);
    const level = { ...EASY_DAY, segments: [walk, { ...walk, index: 1 }] };
    expect(changeTo(level, level.segments[1] as Segment)).toBe('same');
  });

  it('PLAY-6 a minute can be added to what is easier than a part beside it, and to nothing else', () => {
    const easier = EASY_DAY.segments.map((segment) => isEasierThanNeighbour(EASY_DAY, segment));
    expect(easier).toEqual([true, false, true, false, true, false, true, true]);
    const alike = [walk, { ...walk, index: 1 }];
    expect(isEasierThanNeighbour({ ...EASY_DAY, segments: alike }, alike[1] as Segment)).toBe(
      false,
    );
  });

  it('PLAY-10 a plan has a cool-down of its own where it ends with one', () => {
    expect(hasCoolDown(EASY_DAY)).toBe(true);
    expect(hasCoolDown(BARE_DAY)).toBe(false);
    expect(hasCoolDown({ segments: [], total: ms(0) })).toBe(false);
  });
});

describe('a session that was cut off', () => {
  it('JRNL-6 is finished where ten seconds were left and have passed, and not where one more was', () => {
    const ends = (left: number, after: number) => {
      const { session } = easyDay();
      const track = ms(EASY_DAY.total - left);
      const cut = { ...session, track, place: track, seenAt: NINE_O_CLOCK };
      return recoveryOf(cut, NINE_O_CLOCK + after);
    };
    expect(ends(LAST_STRETCH, LAST_STRETCH)).toBe('save-finished');
    expect(ends(LAST_STRETCH, LAST_STRETCH - 1)).toBe('go-on');
    expect(ends(LAST_STRETCH + 1, 60_000)).toBe('go-on');
  });

  it('JRNL-6 in an extra minute it was not', () => {
    const { session } = easyDay().pass(100).say('one-more').pass(55);
    expect(recoveryOf(session, session.seenAt + 60_000)).toBe('go-on');
  });

  it('JRNL-5 when it is closed no sound is left to end', () => {
    const { session } = easyDay().pass(100);
    expect(closed(session, 'ended-early')).toMatchObject({ hushed: true, name: 'ended-early' });
    const over = easyDay().pass(400).session;
    expect(closed(over, 'ended-early')).toBe(over);
  });

  it('WAIT-7 a wait is waited for from half an hour ahead to half an hour after its start', () => {
    const { session } = new Phone(waitScoreOf(EASY_DAY)).start(300).pass(10);
    const start = session.about.startedAt;
    const half = 1_800_000;
    expect(
      [-half - 1, -half, half, half + 1].map((off) => recoveryOf(session, start + off)),
    ).toEqual(['forget', 'wait', 'wait', 'forget']);
  });
});

describe('a time of day that a group agrees on', () => {
  it('WAIT-9 is hours and minutes in four digits, and nothing around them', () => {
    const agreed = (time: string) => agreedTime(time, NINE_O_CLOCK, () => 0);
    expect(agreed('09:10')).toEqual({ ok: true, at: NINE_O_CLOCK + 600_000 });
    for (const time of ['9:10', '09:10:00', 'at 09:10', '', '09.10'])
      expect(agreed(time)).toEqual({ ok: false, code: 'no-time' });
  });
});

describe('the pocket check', () => {
  it('PLAY-23 keeps its first sixty notes', () => {
    let watch = beginWatch(at(0, 0));
    for (let n = 1; n <= 70; n++) watch = watchPocket(watch, 'hidden', at(n * 1000, n * 1000));
    expect(watch.events).toHaveLength(60);
    expect(watch.events.at(-1)).toBe('60.0 hidden');
  });
});
