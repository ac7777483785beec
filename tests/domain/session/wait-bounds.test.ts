/** Where a wait ends, is put right, or goes on, to the millisecond; and what falls silent, likewise. */
import { describe, expect, it } from 'vitest';
import { activeMs, doneMs } from '../../../src/domain/session/credit.ts';
import { BOUNDARY_LATE_MS, GAP_MS } from '../../../src/domain/session/follow.ts';
import { ms } from '../../../src/domain/units.ts';
import { Phone } from '../../drivers/player.ts';
import { EASY_DAY, NINE_O_CLOCK, scoreOf, waitScoreOf } from '../../drivers/sessions.ts';

/** The agreed start, five minutes after the tap. */
const START = NINE_O_CLOCK + 300_000;

/** Twenty seconds into a wait of five minutes: words for five seconds at the minute before the start. */
const waiting = () => new Phone(waitScoreOf(EASY_DAY)).start(300).pass(20);

/** One sign of the track's place, so long after the agreed start. */
const told = (phone: Phone, meant: number, track: number) => {
  const before = phone.effects.length;
  phone.send({ type: 'tick', wall: START + meant, track: ms(track) });
  return { session: phone.session, effects: phone.effects.slice(before) };
};
const seeks = (phone: Phone, meant: number, track: number): readonly number[] =>
  told(phone, meant, track).effects.flatMap((effect) =>
    effect.type === 'seek' ? [effect.to] : [],
  );

describe('a wait that is off', () => {
  it('WAIT-3 is not put right within a quarter of a second of a sound, on either side', () => {
    expect(seeks(waiting(), -60_851, -60_251)).toEqual([-60_851]);
    expect(seeks(waiting(), -60_850, -60_250)).toEqual([]);
    expect(seeks(waiting(), -54_150, -54_750)).toEqual([-54_150]);
    expect(seeks(waiting(), -54_151, -54_751)).toEqual([]);
  });

  it('WAIT-3 is not put right into a sound either', () => {
    expect(seeks(waiting(), -60_250, -60_851)).toEqual([]);
    expect(seeks(waiting(), -60_251, -60_852)).toEqual([-60_251]);
  });

  it('WAIT-3 is put right again after five seconds, and at once where the session would be heard', () => {
    const again = (later: number, track: number) => {
      const phone = waiting();
      expect(seeks(phone, -20_000, -21_000)).toEqual([-20_000]);
      return seeks(phone, -20_000 + later, track);
    };
    expect(again(4999, -16_000)).toEqual([]);
    expect(again(5000, -16_000)).toEqual([-15_000]);
    expect(again(4000, 0)).toEqual([-16_000]);
    expect(again(4000, -1)).toEqual([]);
  });

  it('WAIT-3 half a second earlier than it was is another place, a moment less is the phone’s own', () => {
    expect(seeks(waiting(), -279_900, -280_500)).toEqual([-279_900]);
    expect(seeks(waiting(), -279_900, -280_499)).toEqual([]);
  });

  it('WAIT-1 at the very start it is put right no more: the session is joined', () => {
    const { session, effects } = told(waiting(), 0, -501);
    expect(session).toMatchObject({ name: 'running', place: 0 });
    expect(effects).toContainEqual({ type: 'seek', to: 0 });
  });

  it('WAIT-5 three seconds late it joins the others; later it begins, and says what was missed', () => {
    const joined = told(waiting(), GAP_MS, -501).session;
    expect(joined).toMatchObject({ name: 'running', place: GAP_MS });
    expect(joined.gap).toBeUndefined();
    expect(joined.about.startedAt).toBe(START);
    const late = told(waiting(), GAP_MS + 1, -501).session;
    expect(late).toMatchObject({ name: 'running', place: 0, gap: { lost: GAP_MS + 1 } });
    expect(late.about.startedAt).toBe(START + GAP_MS + 1);
  });
});

describe('a wait that runs into its session', () => {
  it('WAIT-1 tells a gap from over three seconds on', () => {
    const into = (late: number) => told(waiting(), late + 100, 100).session;
    expect(into(GAP_MS).gap).toBeUndefined();
    expect(into(GAP_MS + 1).gap).toMatchObject({ stoppedAt: START, lost: GAP_MS + 1 });
  });

  it('WAIT-1 signals its start where it is seen in time', () => {
    const signalled = (late: number) =>
      told(waiting(), late, late).effects.some(({ type }) => type === 'boundary');
    expect(signalled(BOUNDARY_LATE_MS)).toBe(true);
    expect(signalled(BOUNDARY_LATE_MS + 1)).toBe(false);
  });
});

describe('a wait that fell silent', () => {
  const silent = (meant: number) => {
    const phone = waiting().take();
    phone.wall = START + meant;
    expect(phone.session.name).toBe('waiting-silent');
    return phone;
  };

  it('WAIT-5 waits on until the moment of the start, and begins from it on', () => {
    expect(silent(-1).say('go-on').session.name).toBe('waiting');
    expect(silent(0).say('go-on').session).toMatchObject({ name: 'running', place: 0 });
  });

  it('WAIT-5 cannot be caught up before the start, and can from it on', () => {
    expect(silent(-1).say('catch-up').session.name).toBe('waiting-silent');
    expect(silent(0).say('catch-up').session.name).toBe('running');
  });

  it('WAIT-4 left, it is stopped, and the screen of somebody who hears is none to let go of', () => {
    const left = (medium: 'sound' | 'screen') => {
      const phone = new Phone(waitScoreOf(EASY_DAY), medium).start(300).pass(20);
      const before = phone.effects.length;
      phone.say('end');
      return phone.effects.slice(before).flatMap(({ type }) => (type === 'journal' ? [] : [type]));
    };
    expect(left('sound')).toEqual(['pause', 'leave']);
    expect(left('screen')).toEqual(['pause', 'stay-awake', 'leave']);
  });
});

describe('a session that fell silent', () => {
  const silent = (lost: number) => {
    const phone = new Phone(scoreOf(EASY_DAY)).start().pass(20).take();
    phone.wall += lost;
    return phone;
  };

  it('PLAY-14 given back, it tells a gap from over three seconds on', () => {
    expect(silent(GAP_MS).giveBack().session.gap).toBeUndefined();
    expect(silent(GAP_MS + 1).giveBack().session.gap?.lost).toBe(GAP_MS + 1);
  });

  it('PLAY-14 so it does when its page wakes, and stays silent', () => {
    expect(silent(GAP_MS).say('woke').session.gap).toBeUndefined();
    const { gap, name } = silent(GAP_MS + 1).say('woke').session;
    expect([gap?.lost, name]).toEqual([GAP_MS + 1, 'interrupted']);
  });
});

describe('a hold', () => {
  const { holding } = scoreOf(EASY_DAY).layout;
  const held = () => new Phone(scoreOf(EASY_DAY)).start().pass(20).say('hold');
  const goesRound = (track: number) =>
    seeks(held(), 21_000, track).some((to) => to === holding.start);

  it('PLAY-4 goes round a second before its lane ends, and wherever else it is not in it', () => {
    expect(goesRound(holding.end - 1001)).toBe(false);
    expect(goesRound(holding.end - 1000)).toBe(true);
    expect(goesRound(holding.start)).toBe(false);
    expect(goesRound(holding.start - 1)).toBe(true);
  });

  it('PLAY-5 that a lock screen ended is back when the system takes the sound within 1.5 s', () => {
    const taken = (later: number) => {
      const phone = held().pass(10).say('button-play');
      phone.wall += later;
      return phone.say('paused').session.name;
    };
    expect(taken(1500)).toBe('holding');
    expect(taken(1501)).toBe('interrupted');
  });
});

describe('a gap that nobody saw, because the page slept', () => {
  /** The sound stands for ten seconds of a sleep, and then goes on for five more of it. */
  const slept = (phone: Phone) => {
    phone.blocked = true;
    phone.stick(true).pass(10);
    phone.stick(false).pass(5);
    phone.blocked = false;
    return phone.pass(5);
  };

  it('PLAY-12 what comes after it counts for the plan, where it is in the plan', () => {
    const { credit, gap } = slept(new Phone(scoreOf(EASY_DAY)).start().pass(20)).session;
    expect(gap).toMatchObject({ position: 20_000, lost: 10_000 });
    expect(doneMs(credit)).toBe(30_000);
    expect(activeMs(credit)).toBe(30_000);
  });

  it('PLAY-12 in an extra minute it counts as time moved, and for no part of the plan', () => {
    const phone = new Phone(scoreOf(EASY_DAY)).start().pass(100).say('one-more').pass(20);
    const { credit, lane } = slept(phone).session;
    expect(lane).toBe('one-more');
    expect(doneMs(credit)).toBe(100_000);
    expect(activeMs(credit)).toBe(130_000);
  });
});
