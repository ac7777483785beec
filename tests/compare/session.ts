import fc from 'fast-check';
import type { SessionEvent } from '../../src/domain/session/event.ts';
import type { About } from '../../src/domain/session/session.ts';
import { anyWaitStory, story } from '../domain/session/happenings.ts';
import { Phone } from '../drivers/player.ts';
import { BARE_DAY, EASY_DAY, scoreOf, waitScoreOf } from '../drivers/sessions.ts';
import { outcomes } from './outcomes.ts';

type Rules = typeof import('../../src/domain/session/reduce.ts') &
  typeof import('../../src/domain/session/journal.ts') &
  typeof import('../../src/domain/session/recovery.ts') &
  typeof import('../../src/domain/session/wishes.ts') &
  typeof import('../../src/domain/log/entry-of.ts');

/** All that came to a phone in a session or before it, in its order. */
const events = fc
  .oneof(
    fc.tuple(fc.constantFrom(scoreOf(EASY_DAY), scoreOf(BARE_DAY)), fc.constant(0), story),
    fc.tuple(fc.constant(waitScoreOf(EASY_DAY)), fc.integer({ min: 1, max: 540 }), anyWaitStory),
  )
  .map(([score, ahead, happenings]) => {
    const phone = new Recording(score).start(ahead);
    for (const [, happens] of happenings) happens(phone);
    return phone;
  });

class Recording extends Phone {
  readonly all: SessionEvent[] = [];

  override send(event: SessionEvent): this {
    this.all.push(event);
    return super.send(event);
  }
}

/** Every state and effect of a story, and what it is when it was cut off and read back. */
export const session = outcomes({
  parts: [
    'session/reduce',
    'session/journal',
    'session/recovery',
    'session/wishes',
    'log/entry-of',
  ],
  inputs: fc.record({
    phone: events,
    purpose: fc.constantFrom<About['purpose']>('session', 'session', 'lead'),
    cut: fc.nat(),
    later: fc.constantFrom(1000, 60_000, 600_000, 7_200_000),
  }),
  of(rules: Rules, { phone, purpose, cut, later }) {
    let state = rules.readySession({ ...phone.session.about, purpose }, phone.score, phone.medium);
    const steps = phone.all.map((event) => {
      const step = rules.reduce(state, forPurpose(event, purpose));
      state = step.state;
      return [step, rules.skipGoal(state), rules.walkNowGoal(state)];
    });
    const back = rules.replay(phone.journal.slice(0, 1 + (cut % phone.journal.length)));
    if (back === undefined) return [steps, rules.entryOf(state)];
    const wall = phone.wall + later;
    const { layout } = phone.score;
    const again = rules.reduce(back, { type: 'recovered', wall, layout, medium: 'sound' });
    const goesOn = rules.reduce(again.state, { type: 'go-on', wall, track: again.state.track });
    const recovery = rules.recoveryOf(back, wall);
    return [steps, rules.entryOf(state), recovery, again, goesOn, rules.entryOf(goesOn.state)];
  },
});

const forPurpose = (event: SessionEvent, purpose: About['purpose']): SessionEvent =>
  event.type === 'start' ? { ...event, about: { ...event.about, purpose } } : event;
