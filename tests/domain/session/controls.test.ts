import { describe, expect, it } from 'vitest';
import { activeMs, doneMs } from '../../../src/domain/session/credit.ts';
import { Phone } from '../../drivers/player.ts';
import { BARE_DAY, EASY_DAY, scoreOf, timelineOf } from '../../drivers/sessions.ts';

/** Walk 0-60, run 60-90, walk 90-150, run 150-180, walk 180-240, run 240-270, walk 270-330. */
const easyDay = () => new Phone(scoreOf(EASY_DAY)).start();
const bareDay = () => new Phone(scoreOf(BARE_DAY)).start();
const HOLDING = scoreOf(EASY_DAY).layout.holding;
const ONE_MORE = scoreOf(EASY_DAY).layout.oneMore;

describe('hold', () => {
  it('PLAY-4 goes on three seconds before the place, however long it lasted', () => {
    for (const length of [5, 30, 600, 4000]) {
      const phone = easyDay().pass(100).say('hold');
      expect(phone.track).toBe(HOLDING.start);
      phone.pass(length, 1).say('go-on');
      expect(phone.session.name).toBe('running');
      expect(phone.track).toBe(97_000);
    }
  });

  it('PLAY-4 keeps the sound going, and goes round within its lane', () => {
    const phone = easyDay().pass(100).say('hold');
    for (let second = 0; second < 5000; second++) {
      phone.pass(1, 1);
      expect(phone.playing).toBe(true);
      expect(phone.track).toBeGreaterThanOrEqual(HOLDING.start);
      expect(phone.track).toBeLessThan(HOLDING.end + 1000);
    }
    expect(phone.session.name).toBe('holding');
  });

  it('PLAY-4 comes back to its lane when the page woke too late to go round', () => {
    const phone = easyDay().pass(100).say('hold').pass(10);
    phone.blocked = true;
    phone.pass(32 * 60);
    expect(phone.track).toBeGreaterThan(HOLDING.end);
    phone.blocked = false;
    phone.pass(0.25);
    expect(phone.track).toBeLessThan(HOLDING.start + 1000);
    expect(phone.session.name).toBe('holding');
    phone.say('go-on');
    expect(phone.track).toBe(97_000);
  });

  it('PLAY-4 never goes on before the start', () => {
    const phone = easyDay().pass(1).say('hold').pass(5).say('go-on');
    expect(phone.track).toBe(0);
  });

  it('PLAY-5 the pause of a call that came over the headset button leaves the hold as it was', () => {
    const phone = easyDay().pass(100).say('hold').pass(20).say('button-pause').pass(0.5);
    expect(phone.session.name).toBe('running');
    phone.take();
    expect(phone.session.name).toBe('holding');
    expect(phone.session.place).toBe(97_500);
    phone.giveBack().pass(5);
    expect(phone.session.name).toBe('holding');
    expect(phone.track).toBeGreaterThanOrEqual(HOLDING.start);
  });
});

describe('one minute more', () => {
  /** Plan seconds of the walk from 90 s to 150 s, plus the minutes, as the wall clock has them. */
  function walkedFor(askAt: number, times: number): number {
    const phone = easyDay().pass(90);
    const from = phone.wall;
    phone.pass(askAt);
    for (let time = 0; time < times; time++) phone.say('one-more').pass(1);
    while (phone.session.place < 150_000 && phone.wall - from < 600_000) phone.pass(0.25);
    return (phone.wall - from) / 1000;
  }

  it('PLAY-6 makes the segment one minute longer, wherever it is asked for', () => {
    for (const askAt of [0.5, 10, 30, 47, 48.5, 55, 58]) {
      expect(walkedFor(askAt, 1), `at ${askAt} s`).toBeGreaterThanOrEqual(119.75);
      expect(walkedFor(askAt, 1), `at ${askAt} s`).toBeLessThanOrEqual(121);
    }
  });

  it('PLAY-6 asked for again within the minute it adds another', () => {
    for (const askAt of [5, 30, 55]) {
      expect(walkedFor(askAt, 2)).toBeGreaterThanOrEqual(179.75);
      expect(walkedFor(askAt, 2)).toBeLessThanOrEqual(181.5);
      expect(walkedFor(askAt, 3)).toBeGreaterThanOrEqual(239.75);
      expect(walkedFor(askAt, 3)).toBeLessThanOrEqual(242);
    }
  });

  it('PLAY-6 asked for again after the first one was over it works the same', () => {
    const phone = easyDay().pass(100).say('one-more').pass(61);
    expect(phone.session.lane).toBe('session');
    phone.say('one-more');
    expect(phone.session.lane).toBe('one-more');
    phone.pass(61);
    expect(phone.session.lane).toBe('session');
    expect(phone.session.name).toBe('running');
  });

  it('PLAY-6 comes back early enough for "ten seconds" and the countdown', () => {
    for (const askAt of [1, 30, 50, 59]) {
      const phone = easyDay()
        .pass(90 + askAt)
        .say('one-more');
      while (phone.session.lane === 'one-more') phone.pass(0.25);
      expect(phone.track).toBeLessThanOrEqual(150_000 - 11_500);
    }
  });

  it('PLAY-6 a page that was late heard only quiet, and no second minute is credited', () => {
    const phone = easyDay().pass(100).say('one-more').pass(30);
    phone.blocked = true;
    phone.pass(90);
    expect(phone.track).toBeLessThan(ONE_MORE.end + 120_000);
    phone.blocked = false;
    phone.pass(0.25);
    expect(phone.session.lane).toBe('session');
    expect(activeMs(phone.session.credit)).toBeLessThanOrEqual(160_500);
  });

  it('PLAY-6 is not there in a segment that is no easier than its neighbours', () => {
    const phone = easyDay().pass(70).say('one-more');
    expect(phone.session.lane).toBe('session');
  });

  it('PLAY-6 a hold within the minute goes on within it', () => {
    const phone = easyDay().pass(100).say('one-more').pass(20).say('hold').pass(300).say('go-on');
    expect(phone.session.lane).toBe('one-more');
    phone.pass(42);
    expect(phone.session.lane).toBe('one-more');
    phone.pass(2);
    expect(phone.session.lane).toBe('session');
  });

  it('PLAY-12 is active time and not plan time', () => {
    const phone = easyDay().pass(100).say('one-more').pass(400);
    expect(phone.session.name).toBe('finished');
    expect(doneMs(phone.session.credit)).toBe(390_000);
    expect(activeMs(phone.session.credit)).toBe(450_000);
  });
});

describe('walk now, skip and back', () => {
  it('PLAY-7 walk now leads to the next segment that is walked', () => {
    const phone = easyDay().pass(70).say('walk-now');
    expect(phone.track).toBe(90_000);
  });

  it('PLAY-7 jogging is not walking', () => {
    const day = timelineOf(['main', 'run', 60], ['main', 'jog', 60], ['main', 'walk', 60]);
    const phone = new Phone(scoreOf(day)).start().pass(10).say('walk-now');
    expect(phone.track).toBe(120_000);
  });

  it('PLAY-7 with no walk ahead it leads to the five minutes of easy walk, and the session ends there', () => {
    const phone = bareDay().pass(70).say('walk-now');
    expect(phone.session.lane).toBe('cool-down');
    phone.pass(299);
    expect(phone.session.name).toBe('running');
    phone.pass(2);
    expect(phone.session.name).toBe('finished');
    expect(doneMs(phone.session.credit)).toBe(70_000);
    expect(activeMs(phone.session.credit)).toBe(370_000);
  });

  it('PLAY-8 a skip and a walk-now can be taken back for ten seconds', () => {
    for (const wish of ['skip', 'walk-now'] as const) {
      for (const after of [0.5, 9.5]) {
        const phone = easyDay().pass(70).say(wish).pass(after).say('undo');
        expect(phone.track).toBe(70_000);
      }
      const late = easyDay().pass(70).say(wish).pass(10.5).say('undo');
      expect(late.track).toBe(100_500);
    }
  });

  it('PLAY-8 what was skipped is not done, and done after an undo', () => {
    expect(doneMs(easyDay().pass(70).say('skip').pass(400).session.credit)).toBe(370_000);
    const undone = easyDay().pass(70).say('skip').pass(5).say('undo').pass(400);
    expect(doneMs(undone.session.credit)).toBe(390_000);
    expect(activeMs(undone.session.credit)).toBe(395_000);
  });

  it('PLAY-9 from the last segment there is no skip: there is an end for that', () => {
    const phone = easyDay().pass(335).say('skip');
    expect(phone.track).toBe(335_000);
  });

  it('PLAY-9 back is the start of the segment, and the one before within three seconds of it', () => {
    expect(easyDay().pass(80).say('back').track).toBe(60_000);
    expect(easyDay().pass(62).say('back').track).toBe(0);
    expect(easyDay().pass(2).say('back').track).toBe(0);
  });

  it('PLAY-9 from an extra minute, skip and back start from the segment that it stands in', () => {
    const extra = () => easyDay().pass(100).say('one-more').pass(10);
    expect(extra().say('skip').track).toBe(150_000);
    expect(extra().say('back').track).toBe(90_000);
  });

  it('PLAY-12 a repeat counts twice as active and once as done', () => {
    const phone = easyDay().pass(80).say('back').pass(400);
    expect(doneMs(phone.session.credit)).toBe(390_000);
    expect(activeMs(phone.session.credit)).toBe(410_000);
  });
});

describe('to the cool-down', () => {
  it('PLAY-10 leads to the cool-down of the plan, from a hold too', () => {
    expect(easyDay().pass(70).say('cool-down').track).toBe(330_000);
    const held = easyDay().pass(70).say('wrong').pass(60).say('cool-down');
    expect(held.track).toBe(330_000);
    expect(held.session).toMatchObject({ name: 'running', wrong: false });
    expect(held.pass(61).session.name).toBe('finished');
  });

  it('PLAY-10 where the plan has none it offers five minutes of easy walk', () => {
    const phone = bareDay().pass(20).say('cool-down');
    expect(phone.session.lane).toBe('cool-down');
    phone.pass(100).say('hold').pass(50).say('go-on');
    expect(phone.session.lane).toBe('cool-down');
    phone.pass(202);
    expect(phone.session.name).toBe('running');
    phone.pass(2);
    expect(phone.session.name).toBe('finished');
  });

  it('PLAY-10 within the cool-down it changes nothing', () => {
    expect(easyDay().pass(350).say('cool-down').track).toBe(350_000);
  });
});

describe('something is wrong', () => {
  it('PLAY-11 holds and opens in one tap, and closing it leaves the hold', () => {
    const phone = easyDay().pass(70).say('wrong');
    expect(phone.session).toMatchObject({ name: 'holding', wrong: true });
    phone.pass(10).say('all-right');
    expect(phone.session).toMatchObject({ name: 'holding', wrong: false });
  });

  it('PLAY-11 is obeyed even when the same moment shows that the sound stood', () => {
    const phone = easyDay().pass(70).stick(true);
    phone.wall += 20_000;
    phone.say('wrong');
    expect(phone.session).toMatchObject({ name: 'holding', wrong: true });
  });
});
