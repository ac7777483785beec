import fc from 'fast-check';
import { TALK_LEVELS } from '../../src/domain/cues/cue.ts';
import type { SessionEvent } from '../../src/domain/session/event.ts';
import type { About } from '../../src/domain/session/session.ts';
import { layOut } from '../../src/domain/timeline/lay-out.ts';
import { ms } from '../../src/domain/units.ts';
import { anyPlan } from '../domain/cues/plans.ts';
import { anyReminders, anyVoice } from '../domain/cues/voices.ts';
import { anyWaitStory, story } from '../domain/session/happenings.ts';
import { Phone } from '../drivers/player.ts';
import { BARE_DAY, EASY_DAY, scoreOf, waitScoreOf } from '../drivers/sessions.ts';

/** What a folder of rules gives for an input made by chance, as far as anybody outside can tell. */
export interface Outcomes<Rules, Input> {
  readonly inputs: fc.Arbitrary<Input>;
  /** @param root of a copy of `src/domain` */
  load(root: string): Promise<Rules>;
  /** Something that JSON can write. */
  of(rules: Rules, input: Input): unknown;
}

const outcomes = <Rules, Input>(each: Outcomes<Rules, Input>): Outcomes<unknown, unknown> =>
  each as unknown as Outcomes<unknown, unknown>;

const cues = outcomes({
  inputs: fc.record({
    timeline: anyPlan.map(layOut),
    talk: fc.constantFrom(...TALK_LEVELS),
    reminders: anyReminders,
    target: fc.integer({ min: 0, max: 100 }),
    lengths: anyVoice,
    ahead: fc.oneof(fc.integer({ min: 1, max: 20_000 }), fc.integer({ min: 1, max: 1_800_000 })),
    groups: fc.subarray([1, 2, 3, 4, 5, 6, 7, 8], { minLength: 1 }),
  }),
  async load(root) {
    const part = <Part>(name: string): Promise<Part> => import(`${root}/cues/${name}.ts`);
    return {
      ...(await part<typeof import('../../src/domain/cues/plan-cues.ts')>('plan-cues')),
      ...(await part<typeof import('../../src/domain/cues/waiting.ts')>('waiting')),
      ...(await part<typeof import('../../src/domain/cues/lanes.ts')>('lanes')),
      ...(await part<typeof import('../../src/domain/cues/phrases.ts')>('phrases')),
    };
  },
  of(rules, { timeline, ahead, groups, ...options }) {
    const { lengths } = options;
    const said = [...rules.sayGroups(groups), ...rules.sayTimeLeft(ms(Math.max(1000, ahead)))];
    const pauses = said.map((clip, i) => rules.pauseBetween(said[i - 1] ?? 'tone.wake', clip));
    return [
      rules.planCues(timeline, options),
      rules.planWaiting(ms(ahead), lengths),
      rules.planHolding(lengths),
      rules.planOneMore(lengths),
      rules.planCoolDown(options),
      rules.planPocketCheck(lengths),
      rules.planSample(lengths),
      [said, pauses, rules.captionOf(said)],
    ];
  },
});

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

const session = outcomes({
  inputs: fc.record({
    phone: events,
    purpose: fc.constantFrom<About['purpose']>('session', 'session', 'lead'),
    cut: fc.nat(),
    later: fc.constantFrom(1000, 60_000, 600_000, 7_200_000),
  }),
  async load(root) {
    const part = <Part>(name: string): Promise<Part> => import(`${root}/${name}.ts`);
    return {
      ...(await part<typeof import('../../src/domain/session/reduce.ts')>('session/reduce')),
      ...(await part<typeof import('../../src/domain/session/journal.ts')>('session/journal')),
      ...(await part<typeof import('../../src/domain/session/recovery.ts')>('session/recovery')),
      ...(await part<typeof import('../../src/domain/session/wishes.ts')>('session/wishes')),
      ...(await part<typeof import('../../src/domain/log/entry-of.ts')>('log/entry-of')),
    };
  },
  of(rules, { phone, purpose, cut, later }) {
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

/** The folders whose outcomes can be compared, by their names. */
export const OUTCOMES: Readonly<Record<string, Outcomes<unknown, unknown>>> = { cues, session };
