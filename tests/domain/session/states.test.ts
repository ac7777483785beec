import { describe, expect, it } from 'vitest';
import { activeMs, doneMs } from '../../../src/domain/session/credit.ts';
import type { Button, Sign, Wish } from '../../../src/domain/session/event.ts';
import type { StateName } from '../../../src/domain/session/session.ts';
import { Phone } from '../../drivers/player.ts';
import { EASY_DAY, scoreOf, waitScoreOf } from '../../drivers/sessions.ts';

/** At 0:40 of the first easy walk, or four minutes before the start, in each of the states. */
const IN: Readonly<Record<StateName, () => Phone>> = {
  ready: () => new Phone(scoreOf(EASY_DAY)),
  waiting: () => new Phone(waitScoreOf(EASY_DAY)).start(280).pass(40),
  'waiting-silent': () => IN.waiting().take(),
  running: () => new Phone(scoreOf(EASY_DAY)).start().pass(40),
  holding: () => IN.running().say('hold').pass(5),
  interrupted: () => IN.running().take().pass(5),
  stalled: () => IN.running().stick(true).pass(5),
  finished: () => new Phone(scoreOf(EASY_DAY)).start().pass(391),
  'ended-early': () => IN.running().say('end'),
  left: () => IN.waiting().say('end'),
};

/** What comes of it: the state, and where the sound is to be (or that nothing happens). */
type Outcome = readonly [StateName, string];

/** One row for each state and event: what no row says must leave everything as it is. */
const TABLE: readonly (readonly [StateName, Sign | Wish | Button, ...Outcome])[] = [
  ['ready', 'tick', 'ready', ''],
  ['ready', 'hold', 'ready', ''],
  ['ready', 'go-on', 'ready', ''],
  ['ready', 'playing', 'ready', ''],
  ['ready', 'button-play', 'ready', ''],

  ['waiting', 'tick', 'waiting', ''],
  ['waiting', 'woke', 'waiting', ''],
  ['waiting', 'playing', 'waiting', ''],
  ['waiting', 'paused', 'waiting-silent', ''],
  ['waiting', 'failed', 'waiting-silent', ''],
  ['waiting', 'go-on', 'running', 'seek 0'],
  ['waiting', 'wrong', 'holding', 'seek 510'],
  ['waiting', 'end', 'left', 'pause, leave'],
  ['waiting', 'hold', 'waiting', ''],
  ['waiting', 'button-pause', 'waiting', ''],
  ['waiting', 'button-play', 'waiting', ''],
  ['waiting', 'one-more', 'waiting', ''],
  ['waiting', 'walk-now', 'waiting', ''],
  ['waiting', 'skip', 'waiting', ''],
  ['waiting', 'back', 'waiting', ''],
  ['waiting', 'undo', 'waiting', ''],
  ['waiting', 'cool-down', 'waiting', ''],
  ['waiting', 'all-right', 'waiting', ''],
  ['waiting', 'catch-up', 'waiting', ''],
  ['waiting', 'leave-gap', 'waiting', ''],

  ['waiting-silent', 'tick', 'waiting-silent', ''],
  ['waiting-silent', 'woke', 'waiting-silent', ''],
  ['waiting-silent', 'playing', 'waiting', ''],
  ['waiting-silent', 'paused', 'waiting-silent', ''],
  ['waiting-silent', 'failed', 'waiting-silent', ''],
  ['waiting-silent', 'go-on', 'waiting', 'seek -240, play'],
  ['waiting-silent', 'button-play', 'waiting', 'seek -240, play'],
  ['waiting-silent', 'leave-gap', 'waiting', 'seek -240, play'],
  ['waiting-silent', 'catch-up', 'waiting-silent', ''],
  ['waiting-silent', 'wrong', 'holding', 'seek 510'],
  ['waiting-silent', 'end', 'left', 'pause, leave'],
  ['waiting-silent', 'hold', 'waiting-silent', ''],
  ['waiting-silent', 'button-pause', 'waiting-silent', ''],
  ['waiting-silent', 'skip', 'waiting-silent', ''],
  ['waiting-silent', 'back', 'waiting-silent', ''],
  ['waiting-silent', 'one-more', 'waiting-silent', ''],
  ['waiting-silent', 'walk-now', 'waiting-silent', ''],
  ['waiting-silent', 'undo', 'waiting-silent', ''],
  ['waiting-silent', 'cool-down', 'waiting-silent', ''],
  ['waiting-silent', 'all-right', 'waiting-silent', ''],

  ['running', 'tick', 'running', ''],
  ['running', 'woke', 'running', ''],
  ['running', 'playing', 'running', ''],
  ['running', 'paused', 'interrupted', ''],
  ['running', 'failed', 'stalled', ''],
  ['running', 'hold', 'holding', 'seek 510'],
  ['running', 'button-pause', 'holding', 'seek 510'],
  ['running', 'wrong', 'holding', 'seek 510'],
  ['running', 'go-on', 'running', ''],
  ['running', 'button-play', 'running', ''],
  ['running', 'one-more', 'running', 'seek 2430'],
  ['running', 'walk-now', 'running', ''],
  ['running', 'skip', 'running', 'seek 60'],
  ['running', 'back', 'running', 'seek 0'],
  ['running', 'undo', 'running', ''],
  ['running', 'cool-down', 'running', 'seek 330'],
  ['running', 'end', 'ended-early', 'pause, close'],
  ['running', 'all-right', 'running', ''],
  ['running', 'catch-up', 'running', ''],
  ['running', 'leave-gap', 'running', ''],

  ['holding', 'tick', 'holding', ''],
  ['holding', 'woke', 'holding', ''],
  ['holding', 'playing', 'holding', ''],
  ['holding', 'paused', 'holding', ''],
  ['holding', 'failed', 'holding', ''],
  ['holding', 'hold', 'holding', ''],
  ['holding', 'wrong', 'holding', ''],
  ['holding', 'all-right', 'holding', ''],
  ['holding', 'go-on', 'running', 'seek 37, play'],
  ['holding', 'button-play', 'running', 'seek 37, play'],
  ['holding', 'button-pause', 'running', 'seek 37, play'],
  ['holding', 'cool-down', 'running', 'seek 330, play'],
  ['holding', 'end', 'ended-early', 'pause, close'],
  ['holding', 'skip', 'holding', ''],
  ['holding', 'back', 'holding', ''],
  ['holding', 'one-more', 'holding', ''],
  ['holding', 'walk-now', 'holding', ''],
  ['holding', 'undo', 'holding', ''],
  ['holding', 'catch-up', 'holding', ''],
  ['holding', 'leave-gap', 'holding', ''],

  ['interrupted', 'tick', 'interrupted', ''],
  ['interrupted', 'woke', 'interrupted', ''],
  ['interrupted', 'playing', 'running', ''],
  ['interrupted', 'paused', 'interrupted', ''],
  ['interrupted', 'failed', 'stalled', ''],
  ['interrupted', 'go-on', 'running', 'seek 37, play'],
  ['interrupted', 'button-play', 'running', 'seek 37, play'],
  ['interrupted', 'leave-gap', 'running', 'seek 37, play'],
  ['interrupted', 'catch-up', 'running', 'seek 45, play'],
  ['interrupted', 'hold', 'holding', 'seek 510'],
  ['interrupted', 'wrong', 'holding', 'seek 510'],
  ['interrupted', 'cool-down', 'running', 'seek 330, play'],
  ['interrupted', 'end', 'ended-early', 'pause, close'],
  ['interrupted', 'button-pause', 'interrupted', ''],
  ['interrupted', 'skip', 'interrupted', ''],
  ['interrupted', 'back', 'interrupted', ''],
  ['interrupted', 'one-more', 'interrupted', ''],
  ['interrupted', 'walk-now', 'interrupted', ''],
  ['interrupted', 'undo', 'interrupted', ''],
  ['interrupted', 'all-right', 'interrupted', ''],

  ['stalled', 'tick', 'stalled', ''],
  ['stalled', 'woke', 'stalled', ''],
  ['stalled', 'playing', 'stalled', ''],
  ['stalled', 'paused', 'interrupted', ''],
  ['stalled', 'failed', 'stalled', ''],
  ['stalled', 'go-on', 'running', 'rebuild 37'],
  ['stalled', 'button-play', 'running', 'rebuild 37'],
  ['stalled', 'leave-gap', 'running', 'rebuild 37'],
  ['stalled', 'catch-up', 'running', 'rebuild 45'],
  ['stalled', 'hold', 'holding', 'seek 510'],
  ['stalled', 'wrong', 'holding', 'seek 510'],
  ['stalled', 'cool-down', 'running', 'rebuild 330'],
  ['stalled', 'end', 'ended-early', 'pause, close'],
  ['stalled', 'button-pause', 'stalled', ''],
  ['stalled', 'skip', 'stalled', ''],
  ['stalled', 'back', 'stalled', ''],
  ['stalled', 'one-more', 'stalled', ''],
  ['stalled', 'walk-now', 'stalled', ''],
  ['stalled', 'undo', 'stalled', ''],
  ['stalled', 'all-right', 'stalled', ''],

  ['finished', 'tick', 'finished', ''],
  ['finished', 'paused', 'finished', ''],
  ['finished', 'go-on', 'finished', ''],
  ['finished', 'hold', 'finished', 'pause'],
  ['finished', 'button-pause', 'finished', 'pause'],
  ['finished', 'end', 'finished', ''],
  ['finished', 'cool-down', 'finished', ''],

  ['ended-early', 'tick', 'ended-early', ''],
  ['ended-early', 'playing', 'ended-early', ''],
  ['ended-early', 'go-on', 'ended-early', ''],
  ['ended-early', 'button-play', 'ended-early', ''],
  ['ended-early', 'undo', 'ended-early', ''],

  ['left', 'tick', 'left', ''],
  ['left', 'playing', 'left', ''],
  ['left', 'go-on', 'left', ''],
  ['left', 'button-play', 'left', ''],
  ['left', 'end', 'left', ''],
  ['left', 'wrong', 'left', ''],
];

const told = (phone: Phone, since: number): string =>
  phone.effects
    .slice(since)
    .flatMap((effect) => {
      if (effect.type === 'seek') return [`seek ${effect.to / 1000}`];
      if (effect.type === 'rebuild') return [`rebuild ${effect.at / 1000}`];
      return ['play', 'pause', 'close', 'leave'].includes(effect.type) ? [effect.type] : [];
    })
    .join(', ');

describe('every state and every event', () => {
  for (const [state, event, then, effects] of TABLE) {
    it(`PLAY-2 ${state} + ${event}: ${then}${effects === '' ? '' : `, ${effects}`}`, () => {
      const phone = IN[state]();
      expect(phone.session.name).toBe(state);
      const before = phone.effects.length;
      phone.say(event);
      expect(phone.session.name).toBe(then);
      expect(told(phone, before)).toBe(effects);
    });
  }

  it('PLAY-3 sound is only ever started in answer to a person', () => {
    const signs: readonly Sign[] = ['tick', 'woke', 'playing', 'paused', 'failed'];
    for (const state of Object.values(IN)) {
      for (const sign of signs) {
        const phone = state();
        const before = phone.effects.length;
        phone.say(sign).pass(10);
        const effects = phone.effects.slice(before).map(({ type }) => type);
        expect(effects).not.toContain('play');
        expect(effects).not.toContain('rebuild');
      }
    }
  });

  it('PLAY-2 a person who is not running is credited nothing', () => {
    for (const name of ['holding', 'interrupted', 'stalled'] as const) {
      const phone = IN[name]().pass(600);
      expect(doneMs(phone.session.credit), name).toBe(40_000);
      expect(activeMs(phone.session.credit), name).toBe(40_000);
    }
  });
});
