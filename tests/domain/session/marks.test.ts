/** What a session still carries with it, and what it has put down. */
import { describe, expect, it } from 'vitest';
import { coolDownGoal } from '../../../src/domain/session/move.ts';
import { reduce } from '../../../src/domain/session/reduce.ts';
import { isOver, isUnderWay } from '../../../src/domain/session/session.ts';
import { walkNowGoal } from '../../../src/domain/session/wishes.ts';
import { ms } from '../../../src/domain/units.ts';
import { Phone } from '../../drivers/player.ts';
import { BARE_DAY, EASY_DAY, scoreOf, waitScoreOf } from '../../drivers/sessions.ts';

const easyDay = () => new Phone(scoreOf(EASY_DAY)).start();
const bareDay = () => new Phone(scoreOf(BARE_DAY)).start();
const COOL_DOWN_AT = 330_000;
const BEYOND = EASY_DAY.total + 1;

/** A session with something that can be taken back, is yet to be told, or was done by the lock screen. */
const skipped = () => easyDay().pass(70).say('skip');
const gapped = () => easyDay().pass(100).stick(true).pass(60).stick(false).pass(1);
const goneOnByLock = () => easyDay().pass(70).say('hold').say('button-pause');

const marks = ({ session: { undo, gap, wentOnByLock, fresh, extraUntil } }: Phone) =>
  Object.entries({ undo, gap, wentOnByLock, fresh, extraUntil })
    .filter(([, mark]) => mark !== undefined)
    .map(([name]) => name);

const recovered = (phone: Phone) => {
  const { layout } = phone.score;
  return phone.send({ type: 'recovered', wall: phone.wall, layout, medium: 'sound' });
};

describe('what a session carries with it', () => {
  it('PLAY-8, PLAY-14, PLAY-5 each mark is there to begin with', () => {
    expect(marks(skipped())).toEqual(['undo']);
    expect(marks(gapped())).toEqual(['gap']);
    expect(marks(goneOnByLock())).toEqual(['wentOnByLock']);
    expect(marks(easyDay())).toEqual(['fresh']);
    expect(marks(easyDay().pass(100).say('one-more'))).toEqual(['extraUntil']);
  });

  it('PLAY-8 what is over can take nothing back, tells no gap and obeys no button', () => {
    for (const begin of [skipped, gapped, goneOnByLock]) {
      expect(marks(begin().say('end'))).toEqual([]);
      const over = begin().scrub(BEYOND);
      over.wall += 600_000;
      expect(marks(over.say('tick'))).toEqual([]);
      expect(over.session.name).toBe('finished');
    }
  });

  it('PLAY-10 on the way to the cool-down nothing is to be taken back or told', () => {
    for (const begin of [skipped, gapped, goneOnByLock])
      expect(marks(begin().say('cool-down'))).toEqual([]);
  });

  it('PLAY-27 on hold no sound of the session is waited for', () => {
    expect(marks(easyDay().say('hold'))).toEqual([]);
  });

  it('PLAY-8 after a cut nothing can be taken back', () => {
    const broken = skipped().say('failed');
    expect(marks(broken)).toEqual(['undo']);
    expect(marks(broken.say('go-on'))).toEqual(['fresh']);
    const byLock = goneOnByLock().pass(2).take();
    expect(marks(byLock)).toEqual(['wentOnByLock']);
    expect(marks(byLock.say('go-on'))).toEqual([]);
    for (const begin of [skipped, () => goneOnByLock().pass(2)])
      expect(marks(begin().take().pass(5).say('catch-up'))).toEqual([]);
  });

  it('JRNL-9 a session that was cut off offers to go on, and carries nothing else', () => {
    for (const begin of [skipped, gapped, goneOnByLock])
      expect(marks(recovered(begin()))).toEqual(['fresh']);
  });

  it('PLAY-12 an extra minute counts as extra, and the plan as plan', () => {
    const counts = (phone: Phone) => phone.session.credit.open?.counts;
    expect(counts(easyDay().pass(100))).toBe('plan');
    expect(counts(easyDay().pass(100).say('one-more').pass(5))).toBe('extra');
    const walking = bareDay().say('cool-down').pass(5);
    expect(counts(walking)).toBe('extra');
    const withGap = walking.stick(true);
    withGap.wall += 9000;
    expect(marks(withGap.stick(false).pass(0.25))).toEqual(['gap']);
    expect(counts(withGap)).toBe('extra');
  });
});

describe('where a session goes on', () => {
  it('PLAY-4, PLAY-10 in five minutes of easy walk never before their beginning', () => {
    const lane = scoreOf(BARE_DAY).layout.coolDown;
    const phone = bareDay().say('cool-down').pass(1).say('hold').pass(5).say('go-on');
    expect(phone.effects.findLast(({ type }) => type === 'seek')).toEqual({
      type: 'seek',
      to: lane?.start,
    });
  });

  it('PLAY-10 at the very beginning of the cool-down there is none to go to', () => {
    const { session } = easyDay().say('cool-down');
    expect(session.place).toBe(COOL_DOWN_AT);
    expect(coolDownGoal(session)).toBeUndefined();
    expect(coolDownGoal({ ...session, place: ms(COOL_DOWN_AT - 1) })?.to).toBe(COOL_DOWN_AT);
  });

  it('PLAY-4 a hold that went round is at the beginning of its lane, since then', () => {
    const { holding } = scoreOf(EASY_DAY).layout;
    const phone = easyDay()
      .say('hold')
      .scrub(holding.end - 500)
      .say('tick');
    expect(phone.session.moved).toEqual({ wall: phone.wall, track: holding.start });
  });

  it('PLAY-14 a place that somebody moves back, however far, is no gap', () => {
    const phone = easyDay().pass(60).scrub(1000).say('tick');
    expect(phone.session.name).toBe('running');
    expect(marks(phone)).toEqual([]);
  });
});

describe('where somebody goes', () => {
  it('PLAY-15 whoever catches up in the session stays in it, whatever lies behind it', () => {
    const phone = bareDay().pass(20).take().pass(5).say('catch-up');
    expect(phone.session).toMatchObject({ name: 'running', lane: 'session', place: 25_000 });
    const atOnce = easyDay().pass(20).take().say('catch-up');
    expect(atOnce.session).toMatchObject({ name: 'running', lane: 'session', place: 20_000 });
  });

  it('PLAY-7 walk now is in the session where it has a walk, and not there in an easy walk', () => {
    const { session } = easyDay().pass(70).say('walk-now');
    expect(session).toMatchObject({ lane: 'session', place: 90_000 });
    const running = bareDay().say('skip');
    expect(walkNowGoal(running.session)?.lane).toBe('cool-down');
    expect(walkNowGoal(running.say('cool-down').session)).toBeUndefined();
  });
});

describe('a session that is led', () => {
  it('DAY-4 is left as it is by what would move one person alone', () => {
    const { session, wall, track } = skipped().pass(1);
    const led = { ...session, about: { ...session.about, purpose: 'lead' } } as const;
    for (const type of ['one-more', 'walk-now', 'skip', 'back', 'undo', 'cool-down'] as const)
      expect(reduce(led, { type, wall, track }), type).toEqual({ state: led, effects: [] });
  });
});

describe('a wait for an agreed start', () => {
  const waiting = (seconds: number) => new Phone(waitScoreOf(EASY_DAY)).start(seconds);

  it('WAIT-1 the sign that finds the session begun tells where it is', () => {
    const before = waiting(2).pass(1.8);
    expect(before.session.name).toBe('waiting');
    expect(before.pass(0.25).session).toMatchObject({ name: 'running', place: 50 });
  });

  it('WAIT-4 one that was left is over, and not under way', () => {
    const { session } = waiting(60).say('end');
    expect(session.name).toBe('left');
    expect([isOver(session), isUnderWay(session)]).toEqual([true, false]);
  });

  it('WAIT-5 a sound that failed, heard or in silence, is made anew when somebody goes on', () => {
    for (const cut of [waiting(60).stick(true), waiting(60).take()]) {
      const failed = cut.say('failed');
      failed.pass(5).say('go-on');
      expect(failed.effects.at(-1)).toMatchObject({ type: 'rebuild', at: -55_000 });
    }
  });
});

describe('what is written down', () => {
  const written = (phone: Phone) => phone.journal.length;

  it('JRNL-3 of a sign that nothing came of, nothing until its time', () => {
    const phone = easyDay().pass(0.25);
    const before = written(phone);
    for (const sign of ['tick', 'woke', 'playing'] as const) phone.say(sign).pass(0.25);
    expect(written(phone)).toBe(before);
  });

  it('JRNL-3 of a session that stands, signs every half minute, which wait for no disk', () => {
    const phone = easyDay().pass(10).take();
    expect(phone.session.name).toBe('interrupted');
    phone.wall += 30_000;
    phone.say('paused');
    expect(phone.effects.at(-1)).toMatchObject({ event: { type: 'paused' }, strict: false });
  });

  it('JRNL-3 where the clock was put back a sign is written at once, and waits for no disk', () => {
    const phone = easyDay().pass(1);
    phone.wall -= 60_000;
    phone.scrub(phone.track).say('playing');
    expect(phone.effects.at(-1)).toMatchObject({ event: { type: 'playing' }, strict: false });
  });

  it('JRNL-3 of two signs in one moment the second is not written again', () => {
    const phone = easyDay();
    const { state } = reduce(phone.session, { type: 'tick', wall: phone.wall, track: ms(10) });
    const again = reduce(state, { type: 'tick', wall: phone.wall, track: ms(20) });
    expect(state.writtenAt).toBe(phone.wall);
    expect(again.effects).toEqual([]);
  });
});
