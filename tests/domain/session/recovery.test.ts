import { describe, expect, it } from 'vitest';
import { entryOf } from '../../../src/domain/log/entry-of.ts';
import { replay } from '../../../src/domain/session/journal.ts';
import { DEAD_AFTER_MS, mayTake } from '../../../src/domain/session/lease.ts';
import { closed, recoveryOf } from '../../../src/domain/session/recovery.ts';
import type { Session } from '../../../src/domain/session/session.ts';
import { Phone } from '../../drivers/player.ts';
import { BARE_DAY, EASY_DAY, scoreOf } from '../../drivers/sessions.ts';

const MINUTE = 60_000;
const HOUR = 60 * MINUTE;

/** What the journal says of a phone that died now. */
const found = (phone: Phone): Session => replay(phone.journal) as Session;
const running = (seconds: number) => new Phone(scoreOf(EASY_DAY)).start().pass(seconds);

describe('a session that was cut off', () => {
  it('JRNL-5 is gone on with for half an hour, kept for six hours, and then saved as ended early', () => {
    const session = found(running(100));
    const at = (age: number) => recoveryOf(session, session.seenAt + age);
    expect(at(0)).toBe('go-on');
    expect(at(30 * MINUTE)).toBe('go-on');
    expect(at(30 * MINUTE + 1)).toBe('keep');
    expect(at(6 * HOUR)).toBe('keep');
    expect(at(6 * HOUR + 1)).toBe('save-ended-early');
  });

  it('JRNL-5 ended when it was last seen, with what was done until then', () => {
    const phone = running(100);
    const entry = entryOf(closed(found(phone), 'ended-early'));
    expect(entry.outcome).toBe('ended-early');
    expect(entry.doneSeconds).toBeGreaterThanOrEqual(95);
    expect(entry.doneSeconds).toBeLessThanOrEqual(100);
  });

  it('JRNL-6 in its last ten seconds it was finished as soon as the wall clock is past its end', () => {
    const session = found(running(385));
    const left = 390_000 - session.place;
    expect(left).toBeLessThanOrEqual(10_000);
    expect(recoveryOf(session, session.seenAt + left - 1)).toBe('go-on');
    expect(recoveryOf(session, session.seenAt + left)).toBe('save-finished');
    expect(recoveryOf(session, session.seenAt + 20 * HOUR)).toBe('save-finished');
  });

  it('JRNL-6 before its last ten seconds, or on hold in them, it was not', () => {
    const before = found(running(375));
    expect(recoveryOf(before, before.seenAt + MINUTE)).toBe('go-on');
    const held = found(running(385).say('hold'));
    expect(recoveryOf(held, held.seenAt + MINUTE)).toBe('go-on');
    const silent = found(running(385).take());
    expect(recoveryOf(silent, silent.seenAt + MINUTE)).toBe('go-on');
  });

  it('JRNL-6 in the offered cool-down its own end counts', () => {
    const phone = new Phone(scoreOf(BARE_DAY)).start().pass(30).say('cool-down').pass(295);
    const session = found(phone);
    expect(session.lane).toBe('cool-down');
    expect(recoveryOf(session, session.seenAt + MINUTE)).toBe('save-finished');
  });

  it('JRNL-7 that was over and not logged yet is closed as what it was', () => {
    const finished = found(running(391));
    expect(recoveryOf(finished, finished.seenAt)).toBe('close');
    expect(entryOf(closed(finished, 'ended-early')).outcome).toBe('finished');
    const ended = found(running(100).say('end'));
    expect(recoveryOf(ended, ended.seenAt + 9 * HOUR)).toBe('close');
    expect(entryOf(closed(ended, 'finished')).outcome).toBe('ended-early');
  });

  it('JRNL-2 without a start there is no session', () => {
    expect(replay([])).toBeUndefined();
    expect(replay(running(20).journal.slice(1))).toBeUndefined();
  });

  it('JRNL-3 a person’s acts and new states wait for the disk, places do not and come every five seconds', () => {
    const phone = running(60.5).say('hold').pass(10).say('go-on').pass(20);
    const written = phone.effects.flatMap((e) => (e.type === 'journal' ? [e] : []));
    const strict = written.filter((e) => e.strict).map(({ event }) => event.type);
    expect(strict).toEqual(['start', 'tick', 'hold', 'go-on']);
    expect(written[1]?.event).toMatchObject({ type: 'tick', track: 250 });
    const running60 = written.filter(({ event }) => event.wall <= phone.wall - 30_000);
    for (let i = 1; i < running60.length; i++) {
      const apart = (running60[i]?.event.wall ?? 0) - (running60[i - 1]?.event.wall ?? 0);
      expect(apart).toBeLessThanOrEqual(5000);
    }
    expect(running60.length).toBeGreaterThanOrEqual(12);
    expect(running60.length).toBeLessThanOrEqual(18);
  });
});

describe('who may run a session', () => {
  const now = 1_000_000;
  const lease = (age: number) => ({ session: 's', tab: 'other', beatAt: now - age });

  it('JRNL-8 another tab’s sign of life of under 30 s refuses, an older one does not', () => {
    expect(mayTake(undefined, 'me', now, false)).toBe(true);
    expect(mayTake(lease(0), 'me', now, false)).toBe(false);
    expect(mayTake(lease(DEAD_AFTER_MS - 1), 'me', now, false)).toBe(false);
    expect(mayTake(lease(DEAD_AFTER_MS), 'me', now, false)).toBe(true);
  });

  it('JRNL-8 one’s own lease, and one of a tab that is known to be gone, do not refuse', () => {
    expect(mayTake({ ...lease(0), tab: 'me' }, 'me', now, false)).toBe(true);
    expect(mayTake(lease(0), 'me', now, true)).toBe(true);
  });

  it('JRNL-8 a sign from the future, after the clock was put back, does not refuse for ever', () => {
    expect(mayTake(lease(-3_600_000), 'me', now, false)).toBe(true);
    expect(mayTake(lease(-5000), 'me', now, false)).toBe(false);
  });
});
