import { describe, expect, it } from 'vitest';
import { activeMs, doneMs } from '../../../src/domain/session/credit.ts';
import type { Wish } from '../../../src/domain/session/event.ts';
import { replay } from '../../../src/domain/session/journal.ts';
import { Phone } from '../../drivers/player.ts';
import { BARE_DAY, EASY_DAY, scoreOf, waitScoreOf } from '../../drivers/sessions.ts';

const easyDay = () => new Phone(scoreOf(EASY_DAY)).start();

/** The app was killed and is open again. */
function cut(phone: Phone): Phone {
  phone.take();
  const { wall, score, medium } = phone;
  return phone.send({ type: 'recovered', wall, layout: score.layout, medium });
}

describe('a sound that stops', () => {
  it('PLAY-13 has stalled after three seconds on one place, and not before', () => {
    const phone = easyDay().pass(40).stick(true).pass(2.75);
    expect(phone.session.name).toBe('running');
    phone.pass(0.5);
    expect(phone.session.name).toBe('stalled');
  });

  it('PLAY-13 one that was just asked for may take eight seconds to begin, and nothing is lost by it', () => {
    const slow = () => new Phone(scoreOf(EASY_DAY)).stick(true).start().pass(7.75);
    const begun = slow().stick(false).pass(20);
    expect(begun.session).toMatchObject({ name: 'running', place: 20_000 });
    expect(begun.session.gap).toBeUndefined();
    expect(doneMs(begun.session.credit)).toBe(20_000);
    expect(slow().pass(0.25).session.name).toBe('stalled');
  });

  it('PLAY-13 a new element and a track after a cut may take as long, what was heard before may not', () => {
    const standing = (phone: Phone, wish: Wish) =>
      phone.say(wish).stick(true).pass(7.75).session.name;
    expect(standing(easyDay().pass(40).stick(true).pass(5), 'go-on')).toBe('running');
    expect(standing(cut(easyDay().pass(40)), 'go-on')).toBe('running');
    expect(standing(easyDay().pass(40).say('hold').pass(10), 'go-on')).toBe('stalled');
    expect(standing(easyDay().pass(40).take().pass(10), 'go-on')).toBe('stalled');
    expect(standing(easyDay().pass(40), 'skip')).toBe('stalled');
  });

  it('PLAY-14 who catches up wants to be in step, and is told of every gap', () => {
    const slow = (wish: Wish) =>
      cut(easyDay().pass(40)).stick(true).say(wish).pass(5).stick(false).pass(5).session;
    expect(slow('go-on').gap).toBeUndefined();
    expect(slow('catch-up').gap).toBeDefined();
  });

  it('WAIT-3 the track of a wait, composed in the tap, may take as long to begin', () => {
    const wait = () => new Phone(waitScoreOf(EASY_DAY)).stick(true).start(300);
    expect(wait().pass(7.75).session.name).toBe('waiting');
    expect(wait().pass(8).session.name).toBe('waiting-silent');
    const begun = wait().pass(7).stick(false).pass(1).stick(true);
    expect(begun.pass(3).session.name).toBe('waiting-silent');
  });

  it('PLAY-13 once it has begun, three seconds are a stall, also in a journal that was read back', () => {
    const phone = easyDay().pass(1).stick(true);
    expect(phone.pass(3).session.name).toBe('stalled');
    expect(replay(phone.journal)?.name).toBe('stalled');
  });

  it('JRNL-1 a stall and a gap are read back as they were told, however long ago a sign was written', () => {
    for (let seconds = 40; seconds < 45; seconds += 0.25) {
      const stalled = easyDay().pass(seconds).stick(true).pass(3.25);
      expect(stalled.session.name).toBe('stalled');
      expect([seconds, replay(stalled.journal)?.name]).toEqual([seconds, 'stalled']);

      const slept = easyDay().pass(seconds).stick(true);
      slept.blocked = true;
      slept.pass(300);
      slept.blocked = false;
      slept.stick(false).pass(0.25);
      expect(slept.session.gap).toBeDefined();
      expect([seconds, replay(slept.journal)?.gap]).toEqual([seconds, slept.session.gap]);
    }
  });

  it('JRNL-1 signs are written every few seconds also after the clock was put back', () => {
    const phone = easyDay().pass(40);
    const { track } = phone;
    phone.wall -= 3_600_000;
    phone.scrub(track);
    const written = phone.pass(1).journal.length;
    phone.pass(20);
    expect(phone.journal.length - written).toBeGreaterThanOrEqual(3);
    expect(phone.journal.length - written).toBeLessThanOrEqual(5);
  });

  it('JRNL-1 an element that broke in a hold is known to be broken when the journal is read back', () => {
    const phone = easyDay().pass(5).say('hold').pass(1).say('failed').say('go-on');
    const { fresh, broken } = phone.session;
    expect([fresh, broken]).toEqual([true, false]);
    expect(replay(phone.journal)).toMatchObject({ fresh, broken });
  });

  it('PLAY-14 a sound that began late under a page that slept has no gap up to eight seconds', () => {
    const late = (seconds: number) => {
      const phone = new Phone(scoreOf(EASY_DAY)).stick(true).start();
      phone.blocked = true;
      phone.pass(seconds).stick(false).pass(10);
      phone.blocked = false;
      return phone.say('woke').session;
    };
    expect(late(8).gap).toBeUndefined();
    expect(late(8.001).gap).toMatchObject({ position: 0, lost: 8001 });
  });

  it('PLAY-13 a stall that ends by itself goes on, and its gap is told', () => {
    const phone = easyDay().pass(40).stick(true).pass(60).stick(false).pass(1);
    expect(phone.session.name).toBe('running');
    expect(phone.session.gap).toMatchObject({ position: 40_000 });
    const { stoppedAt = 0, cameBackAt = 0 } = phone.session.gap ?? {};
    expect(cameBackAt - stoppedAt).toBeGreaterThanOrEqual(60_000);
    expect(cameBackAt - stoppedAt).toBeLessThanOrEqual(60_500);
  });

  it('PLAY-14 a frozen page in which the sound stood too tells the gap when it wakes', () => {
    const phone = easyDay().pass(40).stick(true);
    phone.blocked = true;
    phone.pass(300);
    phone.blocked = false;
    phone.stick(false).pass(0.25);
    expect(phone.session.gap?.lost).toBeGreaterThan(299_000);
    expect(doneMs(phone.session.credit)).toBeLessThanOrEqual(40_500);
  });

  it('PLAY-14 a page that slept while the sound went on has no gap, and all of it is done', () => {
    const phone = easyDay().pass(40);
    phone.blocked = true;
    phone.pass(300);
    phone.blocked = false;
    phone.say('woke');
    expect(phone.session.gap).toBeUndefined();
    expect(phone.session.place).toBe(340_000);
    expect(doneMs(phone.session.credit)).toBe(340_000);
  });

  it('PLAY-14 who wakes a phone that is still silent is told since when, and can go on or catch up', () => {
    const silent = () => easyDay().pass(40).take().pass(100);
    expect(silent().session.gap).toBeUndefined();
    const woken = silent().say('woke');
    expect(woken.session).toMatchObject({ name: 'interrupted', gap: { position: 40_000 } });
    expect(woken.say('leave-gap').track).toBe(37_000);
    expect(woken.session.gap).toBeUndefined();
    const caughtUp = silent().say('woke').pass(10).say('catch-up');
    expect(caughtUp.track).toBe(150_000);
    expect(caughtUp.playing).toBe(true);
  });

  it('PLAY-14 a page that wakes and finds the sound standing tells both at once', () => {
    const phone = easyDay().pass(40).stick(true);
    phone.blocked = true;
    phone.pass(60);
    phone.blocked = false;
    phone.say('woke');
    expect(phone.session).toMatchObject({ name: 'stalled', gap: { position: 40_000 } });
  });

  it('PLAY-14 a sound that comes back and stands in the same place has been away all the time, in every lane', () => {
    const again = (phone: Phone) =>
      phone.take().pass(100).giveBack().stick(true).pass(50).take().pass(10).say('woke').session;
    const bare = new Phone(scoreOf(BARE_DAY)).start().pass(40);
    for (const phone of [
      easyDay().pass(40),
      easyDay().pass(40).say('one-more').pass(20),
      bare.say('cool-down').pass(20),
    ]) {
      const stoppedAt = phone.wall;
      expect(again(phone).gap).toMatchObject({ stoppedAt, position: 40_000, lost: 160_000 });
    }
  });

  it('PLAY-14 one that moved in between is away since then', () => {
    const phone = easyDay().pass(40).say('one-more').pass(20).take().pass(100).giveBack().pass(5);
    const stoppedAt = phone.wall;
    expect(phone.take().pass(30).say('woke').session.gap).toMatchObject({ stoppedAt });
  });

  it('PLAY-14 a gap of up to three seconds is not told', () => {
    const phone = easyDay().pass(40).stick(true).pass(2.75).stick(false).pass(5);
    expect(phone.session.gap).toBeUndefined();
  });

  it('PLAY-15 catching up makes good what was lost, and it is not done', () => {
    const phone = easyDay().pass(40).take().pass(100).giveBack().pass(10);
    expect(phone.session.gap).toMatchObject({ position: 40_000 });
    phone.say('catch-up');
    expect(phone.track).toBe(150_000);
    expect(phone.session.gap).toBeUndefined();
    phone.pass(300);
    expect(phone.session.name).toBe('finished');
    expect(doneMs(phone.session.credit)).toBe(290_000);
  });

  it('PLAY-15 going on leaves the sound where it is', () => {
    const phone = easyDay().pass(40).take().pass(100).giveBack().pass(10).say('leave-gap');
    expect(phone.track).toBe(50_000);
    expect(phone.session.gap).toBeUndefined();
  });

  it('PLAY-15 catching up past the end finishes, and the last words are heard', () => {
    const phone = easyDay().pass(300).take().pass(600).say('catch-up');
    expect(phone.session.name).toBe('finished');
    expect(phone.playing).toBe(true);
    expect(phone.track).toBe(390_000);
    phone.pass(20);
    expect(phone.playing).toBe(false);
  });

  it('PLAY-16 when the system gives the sound back the session runs from where it is', () => {
    const phone = easyDay().pass(40).take().pass(30);
    expect(phone.session.name).toBe('interrupted');
    phone.giveBack().pass(5);
    expect(phone.session.name).toBe('running');
    expect(phone.session.place).toBe(45_000);
    expect(activeMs(phone.session.credit)).toBe(45_000);
  });
});

describe('the end', () => {
  it('PLAY-17 a late tick in the tail finishes the session with nothing beyond its total', () => {
    const phone = easyDay().pass(380);
    phone.blocked = true;
    phone.pass(60);
    phone.blocked = false;
    phone.pass(0.25);
    expect(phone.session.name).toBe('finished');
    expect(phone.session.place).toBe(390_000);
    expect(doneMs(phone.session.credit)).toBe(390_000);
    expect(activeMs(phone.session.credit)).toBe(390_000);
    expect(phone.playing).toBe(false);
  });

  it('PLAY-17 a script that was blocked beyond the tail finishes all the same, and falls silent', () => {
    const phone = easyDay().pass(380);
    phone.blocked = true;
    phone.pass(200);
    expect(phone.track).toBeGreaterThan(phone.score.layout.holding.start);
    phone.blocked = false;
    phone.pass(0.25);
    expect(phone.session.name).toBe('finished');
    expect(phone.playing).toBe(false);
  });

  it('PLAY-17 the last words are left to sound, then the track is stopped', () => {
    const phone = easyDay().pass(391);
    expect(phone.playing).toBe(true);
    phone.pass(8);
    expect(phone.playing).toBe(true);
    phone.pass(5);
    expect(phone.playing).toBe(false);
  });

  it('PLAY-17 is logged once', () => {
    const phone = easyDay().pass(500).say('end').pass(10);
    expect(phone.effects.filter(({ type }) => type === 'close')).toHaveLength(1);
  });
});

describe('what is not exercise', () => {
  it('PLAY-18 a place that somebody moved counts from there on, and nothing in between', () => {
    const phone = easyDay().pass(40).scrub(200_000).pass(10);
    expect(phone.session.name).toBe('running');
    expect(phone.session.place).toBe(210_000);
    expect(doneMs(phone.session.credit)).toBeLessThanOrEqual(50_000);
    expect(doneMs(phone.session.credit)).toBeGreaterThanOrEqual(49_500);
  });

  it('PLAY-18 many small pushes forward do not add up to more than the wall clock', () => {
    const phone = easyDay();
    for (let push = 0; push < 100; push++) phone.pass(0.25).scrub(phone.track + 900);
    expect(activeMs(phone.session.credit)).toBeLessThanOrEqual(25_000);
    expect(doneMs(phone.session.credit)).toBeLessThanOrEqual(25_000);
  });

  it('PLAY-18 a wall clock that is put back costs the moment and nothing more', () => {
    const phone = easyDay().pass(100);
    const place = phone.track;
    const { track } = phone;
    phone.wall -= 3_600_000;
    phone.scrub(track);
    phone.scrub(place).pass(50);
    expect(phone.session.name).toBe('running');
    expect(activeMs(phone.session.credit)).toBeGreaterThanOrEqual(149_000);
    expect(activeMs(phone.session.credit)).toBeLessThanOrEqual(150_000);
  });
});

describe('boundaries', () => {
  it('PLAY-19 a passed boundary is signalled once, as harder or easier', () => {
    const phone = easyDay().pass(391);
    const signals = phone.effects.flatMap((e) => (e.type === 'boundary' ? [e.change] : []));
    expect(signals).toEqual(['harder', 'easier', 'harder', 'easier', 'harder', 'easier', 'easier']);
  });

  it('PLAY-18 dragged to before the extra minute, the session goes on at its place', () => {
    const phone = easyDay().pass(100).say('one-more').pass(5);
    const { place, score } = phone.session;
    phone.scrub(score.layout.oneMore.start - 1000).pass(0.25);
    expect(phone.session).toMatchObject({ name: 'running', lane: 'session', place });
  });

  it('PLAY-17 dragged back after its end, a session is silent', () => {
    const phone = easyDay();
    phone.pass(phone.score.timeline.total / 1000 + 0.5);
    expect(phone.session.name).toBe('finished');
    expect(phone.playing).toBe(true);
    phone.scrub(10_000).pass(0.25);
    expect(phone.playing).toBe(false);
  });

  it('WAIT-5 a silent wait whose sound moves without a word is heard again', () => {
    const phone = new Phone(waitScoreOf(EASY_DAY)).start(300).pass(20).take();
    expect(phone.session.name).toBe('waiting-silent');
    const { track } = phone;
    phone.scrub(track + 1000).pass(0.25);
    expect(phone.session.name).toBe('waiting-silent');
    phone.scrub(track + 1001).pass(0.25);
    expect(phone.session.name).toBe('waiting');
  });

  it('PLAY-19 a boundary is signalled up to a second and a half late', () => {
    const signals = (late: number) => {
      const phone = easyDay().pass(59);
      phone.blocked = true;
      phone.pass(1 + late);
      phone.blocked = false;
      return phone.say('woke').effects.filter(({ type }) => type === 'boundary').length;
    };
    expect([signals(1.5), signals(1.501)]).toEqual([1, 0]);
  });

  it('PLAY-19 a boundary that was slept through is not signalled late', () => {
    const phone = easyDay().pass(50);
    phone.blocked = true;
    phone.pass(25);
    phone.blocked = false;
    phone.pass(1);
    expect(phone.effects.filter(({ type }) => type === 'boundary')).toEqual([]);
  });
});

describe('a session that is only seen', () => {
  it('PLAY-20 runs by the same rules and keeps the screen on from start to end', () => {
    const phone = new Phone(scoreOf(EASY_DAY), 'screen').start();
    expect(phone.effects).toContainEqual({ type: 'stay-awake', on: true });
    phone.pass(100).say('hold').pass(30).say('go-on').pass(300);
    expect(phone.session.name).toBe('finished');
    expect(phone.effects.at(-2)).toEqual({ type: 'stay-awake', on: false });
    expect(doneMs(phone.session.credit)).toBe(390_000);
  });
});
