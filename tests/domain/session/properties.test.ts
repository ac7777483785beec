import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { entryOf } from '../../../src/domain/log/entry-of.ts';
import { activeMs, coveredOf, doneMs } from '../../../src/domain/session/credit.ts';
import { replay } from '../../../src/domain/session/journal.ts';
import { reduce } from '../../../src/domain/session/reduce.ts';
import { isOver, isUnderWay, type Session } from '../../../src/domain/session/session.ts';
import { ms } from '../../../src/domain/units.ts';
import { Phone } from '../../drivers/player.ts';
import { BARE_DAY, EASY_DAY, scoreOf } from '../../drivers/sessions.ts';
import { type Happening, story } from './happenings.ts';

/** Every put-back of the clock may cost what was gone through since the last writing. */
const steadyClock = story.map((list) => list.filter(([name]) => !name.startsWith('clock')));
const day = fc.constantFrom(EASY_DAY, BARE_DAY);

/** Plays a story and keeps the wall time in which nobody held. */
function play(timeline: typeof EASY_DAY, happenings: readonly Happening[]) {
  const phone = new Phone(scoreOf(timeline)).start();
  let moving = 0;
  for (const [, happens] of happenings) {
    const before = { wall: phone.wall, held: phone.session.name === 'holding' };
    happens(phone);
    const held = before.held && phone.session.name === 'holding';
    if (!held) moving += Math.abs(phone.wall - before.wall);
  }
  return { phone, moving };
}

const seen = (session: Session) => ({
  name: session.name,
  lane: session.lane,
  place: session.place,
  wrong: session.wrong,
  entry: entryOf(session),
});

describe('whatever happens, in whatever order', () => {
  it('PLAY-21 done time never exceeds the plan, active time never exceeds wall time less holds', () => {
    fc.assert(
      fc.property(day, story, (timeline, happenings) => {
        const { phone, moving } = play(timeline, happenings);
        const { credit } = phone.session;
        expect(doneMs(credit)).toBeLessThanOrEqual(timeline.total);
        expect(activeMs(credit)).toBeLessThanOrEqual(moving);
        const covered = coveredOf(credit);
        covered.forEach(([from, to], i) => {
          expect(from).toBeGreaterThanOrEqual(covered[i - 1]?.[1] ?? 0);
          expect(to).toBeGreaterThan(from);
          expect(to).toBeLessThanOrEqual(timeline.total);
        });
      }),
      { numRuns: 400 },
    );
  });

  it('PLAY-21 the place stays in the session, and what is over stays over', () => {
    fc.assert(
      fc.property(day, story, (timeline, happenings) => {
        const phone = new Phone(scoreOf(timeline)).start();
        let over = false;
        for (const [, happens] of happenings) {
          happens(phone);
          const { session } = phone;
          expect(session.place).toBeGreaterThanOrEqual(0);
          expect(session.place).toBeLessThanOrEqual(timeline.total);
          expect(over && !isOver(session)).toBe(false);
          over = isOver(session);
        }
        const closes = phone.effects.filter(({ type }) => type === 'close').length;
        expect(closes).toBe(over ? 1 : 0);
      }),
      { numRuns: 300 },
    );
  });

  it('PLAY-3 no story without a person starts sound', () => {
    const natural = story.map((list) =>
      list.filter(([name]) => /^(pass|take|stick|block|clock)/.test(name)),
    );
    fc.assert(
      fc.property(day, natural, (timeline, happenings) => {
        const phone = new Phone(scoreOf(timeline)).start();
        const begun = phone.effects.length;
        for (const [, happens] of happenings) happens(phone);
        const types = phone.effects.slice(begun).map(({ type }) => type);
        expect(types).not.toContain('play');
        expect(types).not.toContain('rebuild');
      }),
      { numRuns: 200 },
    );
  });
});

describe('the journal', () => {
  it('JRNL-1 read back it gives the state that wrote it, up to the place since the last writing', () => {
    fc.assert(
      fc.property(day, steadyClock, (timeline, happenings) => {
        const { phone } = play(timeline, happenings);
        // A state that is written now is a state that can be compared now.
        phone.say('hold');
        const back = replay(phone.journal) as Session;
        const [was, is] = [seen(phone.session), seen(back)];
        expect(is.name).toBe(was.name);
        expect(is.lane).toBe(was.lane);
        expect(Math.abs(is.place - was.place)).toBeLessThanOrEqual(5000);
        expect(Math.abs(is.entry.doneSeconds - was.entry.doneSeconds)).toBeLessThanOrEqual(6);
      }),
      { numRuns: 300 },
    );
  });

  it('JRNL-2 cut after any event it reads back to a session that goes on to its end', () => {
    fc.assert(
      fc.property(day, story, fc.nat(), (timeline, happenings, cut) => {
        const { phone } = play(timeline, happenings);
        const events = phone.journal.slice(0, 1 + (cut % phone.journal.length));
        const session = replay(events);
        expect(session).toBeDefined();
        if (session === undefined || isOver(session)) return;
        const later = goOnAfterKill(session, phone);
        expect(later.session.name).toBe('running');
        later.pass(timeline.total / 1000 + 700, 0.5);
        expect(later.session.name).toBe('finished');
        expect(doneMs(later.session.credit)).toBeLessThanOrEqual(timeline.total);
      }),
      { numRuns: 200 },
    );
  });

  it('JRNL-9 recovered it is silent until a person goes on, with its lanes elsewhere', () => {
    fc.assert(
      fc.property(story, fc.integer({ min: 0, max: 600_000 }), (happenings, by) => {
        const { phone } = play(BARE_DAY, happenings);
        const session = replay(phone.journal);
        if (session === undefined || !isUnderWay(session)) return;
        const layout = shiftLanes(session, by);
        const { state, effects } = reduce(session, {
          type: 'recovered',
          wall: phone.wall + 60_000,
          layout,
          medium: 'sound',
        });
        expect(state.name).toBe('interrupted');
        expect(state.place).toBe(session.place);
        expect(effects.map(({ type }) => type)).toEqual(['journal']);
        const left = (s: Session) => (s.extraUntil ?? s.track) - s.track;
        expect(left(state)).toBe(left(session));
      }),
      { numRuns: 200 },
    );
  });
});

/** The same phone after a kill: the app is open again and the person goes on. */
function goOnAfterKill(session: Session, before: Phone): Phone {
  const phone = new Phone(session.score);
  phone.wall = before.wall + 60_000;
  phone.session = session;
  phone.send({
    type: 'recovered',
    wall: phone.wall,
    layout: session.score.layout,
    medium: 'sound',
  });
  return phone.say('go-on');
}

function shiftLanes({ score }: Session, by: number): Session['score']['layout'] {
  const { layout } = score;
  const moved = <L extends { start: number; end: number }>(lane: L): L => ({
    ...lane,
    start: ms(lane.start + by),
    end: ms(lane.end + by),
  });
  return {
    ...layout,
    holding: moved(layout.holding),
    oneMore: { ...moved(layout.oneMore), minute: moved(layout.oneMore.minute) },
    ...(layout.coolDown && { coolDown: moved(layout.coolDown) }),
    total: ms(layout.total + by),
  };
}
