import { describe, expect, it } from 'vitest';
import { settle } from '../drivers/clock.ts';
import { SHORTER, SHORTER_S } from '../drivers/faults/participant.ts';
import { atMost, tellFault } from '../drivers/faults/tell.ts';
import { asks, CHOICE, reopened, view } from '../drivers/own-session.ts';
import { openTab, type Tab, take } from '../drivers/phone.ts';

interface Fault {
  readonly says: string;
  readonly happens: (tab: Tab) => Promise<unknown>;
  /** What the runner's screen then shows. */
  readonly shows: 'running' | 'interrupted' | 'stalled';
  readonly tellsGap?: true;
  /** What the runner does, where they are asked. */
  readonly answer?: (tab: Tab) => unknown;
}

const goOn = (tab: Tab) => asks(tab).goOn();
const goOnAfterGap = (tab: Tab) => asks(tab).afterGap('go-on');

/** The system takes the sound for so long; then gives it back, or does not. */
const taken =
  (seconds: number, isGivenBack: boolean) =>
  async ({ sound, clock }: Tab): Promise<void> => {
    sound.take();
    await clock.pass(seconds);
    if (isGivenBack) sound.play();
  };

/** The sound says that it plays and stands; then moves again, or does not. */
const stuck =
  (seconds: number, isMovedAgain: boolean) =>
  async ({ sound, clock }: Tab): Promise<void> => {
    sound.stick(true);
    await clock.pass(seconds);
    if (!isMovedAgain) return;
    sound.stick(false);
    await clock.pass(0.5);
  };

const FAULTS: readonly Fault[] = [
  {
    says: 'pauses by itself',
    happens: taken(20, false),
    shows: 'interrupted',
    answer: goOn,
  },
  {
    says: 'pauses by itself and plays again a second later',
    happens: taken(1, true),
    shows: 'running',
  },
  {
    says: 'pauses by itself and plays again after twenty seconds',
    happens: taken(20, true),
    shows: 'running',
    tellsGap: true,
    answer: goOnAfterGap,
  },
  {
    says: 'stands and says that it plays',
    happens: stuck(5, false),
    shows: 'stalled',
    answer: goOn,
  },
  {
    says: 'stands for two seconds and moves again',
    happens: stuck(2, true),
    shows: 'running',
  },
  {
    says: 'stands for twenty seconds and moves again',
    happens: stuck(20, true),
    shows: 'running',
    tellsGap: true,
    answer: goOnAfterGap,
  },
  {
    says: 'reports an error',
    happens: async ({ sound, clock }) => {
      sound.fail();
      // At once: not only when it has stood for a while.
      await clock.pass(1);
    },
    shows: 'stalled',
    answer: goOn,
  },
  {
    says: 'reports an error, and another when it was built anew',
    happens: async (tab) => {
      tab.sound.fail();
      await tab.clock.pass(5);
      goOn(tab);
      tab.sound.fail();
      await tab.clock.pass(1);
    },
    shows: 'stalled',
    answer: goOn,
  },
  {
    says: 'pauses by itself and refuses to go on at the first tap',
    happens: async (tab) => {
      tab.sound.take();
      await tab.clock.pass(5);
      tab.sound.refuses = true;
      goOn(tab);
      tab.sound.refuses = false;
      await tab.clock.pass(5);
    },
    shows: 'interrupted',
    answer: goOn,
  },
];

/** Walking, running, and seconds before the end. */
const PLACES_S = [10, 30, 64];

/** A session that is heard and has come to a place. */
async function at(place: number): Promise<Tab> {
  const tab = await openTab();
  await take(tab.app, SHORTER);
  await asks(tab).prepare(CHOICE, 'sound');
  asks(tab).start();
  await tab.clock.pass(place);
  return tab;
}

describe('the sound of a running session', () => {
  for (const { says, happens, shows, tellsGap, answer } of FAULTS)
    it(`FAULT-4 ${says}: it is shown, the app starts no sound unasked, and the session is kept whole`, async () => {
      const lost: number[] = [];
      for (const place of PLACES_S) {
        const tab = await at(place);
        const before = view(tab).position;
        await happens(tab);
        expect(view(tab), `${place} s`).toMatchObject({ state: shows });
        expect(view(tab).gap !== undefined, `${place} s`).toBe(tellsGap === true);
        const { plays } = tab.sound;
        await tab.clock.pass(1);
        expect(tab.sound.plays, `${place} s`).toBe(plays);
        answer?.(tab);
        expect(view(tab).state, `${place} s`).toBe('running');
        lost.push((before - view(tab).position) / 1000);
        await tab.clock.pass(SHORTER_S + 10);
        await settle();
        tab.kill();
        const again = await reopened(tab);
        const { entries } = again.app.log.getState();
        again.kill();
        expect(entries, `${place} s`).toMatchObject([{ outcome: 'finished' }]);
        const done = entries[0]?.doneSeconds ?? 0;
        expect(Math.abs(done - SHORTER_S), `${place} s: ${done} s done`).toBeLessThanOrEqual(3);
      }
      expect(Math.max(...lost)).toBeLessThanOrEqual(6.5);
      tellFault(`the sound ${says}`, PLACES_S.length, atMost(lost, 'the place'));
    }, 60_000);
});
