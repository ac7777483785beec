import { describe, expect, it } from 'vitest';
import { replay } from '../../../src/domain/session/journal.ts';
import { beginWatch, hiddenFor, watchPocket } from '../../../src/domain/session/pocket-check.ts';
import { reduce } from '../../../src/domain/session/reduce.ts';
import { isUnderWay, isWaiting } from '../../../src/domain/session/session.ts';
import { mayUndo } from '../../../src/domain/session/wishes.ts';
import { ms } from '../../../src/domain/units.ts';
import { Phone } from '../../drivers/player.ts';
import { BARE_DAY, EASY_DAY, NINE_O_CLOCK, scoreOf, waitScoreOf } from '../../drivers/sessions.ts';

/** Walk 0-60, run 60-90, walk 90-150, run 150-180, walk 180-240, run 240-270, walk 270-330. */
const easyDay = () => new Phone(scoreOf(EASY_DAY)).start();
const COOL_DOWN = scoreOf(BARE_DAY).layout.coolDown ?? { start: Number.NaN, end: Number.NaN };
/** In the five minutes of easy walk behind a session that has none, `at` seconds into them. */
const inCoolDown = (at: number) =>
  new Phone(scoreOf(BARE_DAY)).start().pass(20).say('cool-down').pass(at);
const ONE_MORE = scoreOf(EASY_DAY).layout.oneMore;

describe('taking back', () => {
  it('PLAY-8 is there for ten seconds to the moment, and not before what it takes back', () => {
    const { session, wall } = easyDay().pass(70).say('skip');
    expect(session.undo).toMatchObject({ what: 'skip', place: 70_000 });
    expect(
      [wall - 1, wall, wall + 10_000, wall + 10_001].map((at) => mayUndo(session, at)),
    ).toEqual([false, true, true, false]);
    expect(mayUndo(easyDay().pass(70).session, wall)).toBe(false);
  });

  it('PLAY-8 once taken back it cannot be taken back again, and neither after another act', () => {
    expect(easyDay().pass(70).say('skip').pass(2).say('undo').session.undo).toBeUndefined();
    expect(easyDay().pass(70).say('skip').pass(2).say('back').session.undo).toBeUndefined();
    expect(easyDay().pass(70).say('skip').pass(2).say('hold').session.undo).toBeUndefined();
    expect(easyDay().pass(70).say('skip').pass(2).say('one-more').session.undo).toBeUndefined();
  });
});

describe('after a gap', () => {
  it('PLAY-15 whoever acts has heard of it: it is told no more', () => {
    const told = () => easyDay().pass(100).stick(true).pass(60).stick(false).pass(1);
    expect(told().session.gap).toBeDefined();
    for (const wish of ['skip', 'back', 'hold', 'one-more', 'catch-up', 'leave-gap'] as const)
      expect(told().say(wish).session.gap, wish).toBeUndefined();
  });

  it('PLAY-15 in the five minutes of easy walk catching up stays in them', () => {
    const phone = inCoolDown(30).take().pass(40).say('woke').say('catch-up');
    expect(phone.session).toMatchObject({ name: 'running', lane: 'cool-down' });
    expect(phone.track).toBe(COOL_DOWN.start + 70_000);
  });

  it('PLAY-15 past their end it finishes', () => {
    const phone = inCoolDown(280).take().pass(40).say('woke').say('catch-up');
    expect(phone.session.name).toBe('finished');
    expect(phone.track).toBe(COOL_DOWN.end);
  });

  it('PLAY-15 in an extra minute it goes through what is left of it first', () => {
    const extra = () => easyDay().pass(100).say('one-more').pass(10).take();
    const within = extra().pass(30).say('woke').say('catch-up');
    expect(within.session.lane).toBe('one-more');
    expect(within.track).toBe(ONE_MORE.start + 40_000);
    const beyond = extra().pass(70).say('woke').say('catch-up');
    expect(beyond.session.lane).toBe('session');
    // Fifty of the seventy seconds were the minute's.
    expect(beyond.track).toBe(120_000);
  });
});

describe('a gap that goes on', () => {
  it('PLAY-15 sound that only says that it plays ends no gap: all of it is told, and caught up', () => {
    const phone = easyDay().pass(100).take().pass(30).say('playing').pass(4);
    expect(phone.session).toMatchObject({ name: 'stalled', place: 100_000 });
    phone.pass(26).say('woke');
    expect(phone.session.gap).toMatchObject({ position: 100_000, lost: 60_000 });
    expect(phone.wall - (phone.session.gap?.stoppedAt ?? 0)).toBe(60_000);
    // Told once more a little later, it is the same gap.
    expect(phone.pass(5).say('woke').session.gap?.lost).toBe(65_000);
    expect(phone.say('catch-up').track).toBe(165_000);
  });

  it('PLAY-15 a gap that was left unanswered is not added to another one, further on', () => {
    const phone = easyDay().pass(100).stick(true).pass(20).stick(false).pass(10);
    expect(phone.session.gap?.lost).toBe(20_000);
    phone.take().pass(30).say('woke');
    expect(phone.session.gap).toMatchObject({ position: 110_000, lost: 30_000 });
  });
});

describe('a lane behind the session', () => {
  it('PLAY-9 back in the five minutes of easy walk is their beginning', () => {
    const phone = inCoolDown(100).say('back');
    expect(phone.session.lane).toBe('cool-down');
    expect(phone.track).toBe(COOL_DOWN.start);
  });

  it('PLAY-9 there is nothing to skip to, no walk to go to and no minute to add', () => {
    for (const wish of ['skip', 'walk-now', 'one-more'] as const) {
      const phone = inCoolDown(100).say(wish);
      expect(phone.session.lane, wish).toBe('cool-down');
      expect(phone.track, wish).toBe(COOL_DOWN.start + 100_000);
    }
  });

  it('PLAY-6 an extra minute that is over leaves nothing behind', () => {
    const phone = easyDay().pass(100).say('one-more').pass(65);
    expect(phone.session.lane).toBe('session');
    expect(phone.session.extraUntil).toBeUndefined();
  });

  it('PLAY-17 the last words of the five minutes are left to sound, then the track is stopped', () => {
    const phone = inCoolDown(301);
    expect(phone.session).toMatchObject({ name: 'finished', lane: 'cool-down' });
    expect(phone.playing).toBe(true);
    expect(phone.pass(13).playing).toBe(false);
    expect(phone.session.hushed).toBe(true);
  });
});

describe('what has nothing to say to a session', () => {
  it('PLAY-2 a second start or a recovery while it goes on changes nothing', () => {
    const wait = new Phone(waitScoreOf(EASY_DAY)).start(300).pass(10);
    for (const phone of [easyDay().pass(70), easyDay().pass(70).take(), wait, wait.take()]) {
      const { session, score, medium, wall } = phone;
      const again = reduce(session, { type: 'start', wall, about: session.about, score, medium });
      expect(again.state).toEqual(session);
      expect(again.effects).toEqual([]);
    }
  });

  it('JRNL-2 a journal that does not begin with a start is no session, whatever follows', () => {
    const { journal } = easyDay().pass(20).say('hold');
    expect(replay(journal)?.name).toBe('holding');
    expect(replay([...journal.slice(1), ...journal])).toBeUndefined();
  });
});

describe('states by name', () => {
  it('PLAY-2 under way is whatever has begun and is not over; waiting is it with or without sound', () => {
    const ready = new Phone(scoreOf(EASY_DAY));
    const wait = () => new Phone(waitScoreOf(EASY_DAY)).start(300).pass(10);
    expect(isUnderWay(ready.session)).toBe(false);
    expect(isUnderWay(easyDay().session)).toBe(true);
    expect(isUnderWay(easyDay().say('end').session)).toBe(false);
    expect([wait(), wait().take(), easyDay()].map(({ session }) => isWaiting(session))).toEqual([
      true,
      true,
      false,
    ]);
  });

  it('PLAY-20 the screen is kept on for a session that is watched, and not for one that is heard', () => {
    const on = { type: 'stay-awake', on: true };
    expect(new Phone(scoreOf(EASY_DAY), 'screen').start().effects).toContainEqual(on);
    expect(easyDay().effects).not.toContainEqual(on);
  });

  it('PLAY-20 one that was cut off keeps it on again', () => {
    const { session, score, wall } = new Phone(scoreOf(EASY_DAY), 'screen').start().pass(70);
    const { layout } = score;
    const again = (medium: 'screen' | 'sound') =>
      reduce(session, { type: 'recovered', wall: wall + 60_000, layout, medium }).effects;
    expect(again('screen')).toContainEqual({ type: 'stay-awake', on: true });
    expect(again('sound')).not.toContainEqual({ type: 'stay-awake', on: true });
  });
});

describe('the pocket check', () => {
  const at = (seconds: number, track = seconds) => ({
    wall: NINE_O_CLOCK + seconds * 1000,
    track: ms(track * 1000),
  });

  it('PLAY-23 the longest silence is wall time in which the track did not move on', () => {
    let watch = beginWatch(at(0));
    watch = watchPocket(watch, 'tick', at(10));
    expect(watch.longestSilenceMs).toBe(0);
    watch = watchPocket(watch, 'tick', at(14, 10));
    watch = watchPocket(watch, 'tick', at(17, 10));
    expect(watch.longestSilenceMs).toBe(7000);
    watch = watchPocket(watch, 'tick', at(20, 13));
    watch = watchPocket(watch, 'tick', at(22, 13));
    expect(watch.longestSilenceMs).toBe(7000);
  });

  it('PLAY-23 what the phone did is noted with its second, and time passing is not', () => {
    let watch = beginWatch(at(0));
    watch = watchPocket(watch, 'tick', at(1));
    watch = watchPocket(watch, 'hidden', at(2.3));
    watch = watchPocket(watch, 'tick', at(30));
    expect(hiddenFor(watch, at(30).wall)).toBe(27_700);
    watch = watchPocket(watch, 'woke', at(60));
    expect(watch.events).toEqual(['2.3 hidden', '60.0 woke']);
    expect(hiddenFor(watch, at(90).wall)).toBe(57_700);
  });
});
