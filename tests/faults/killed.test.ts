import { expect, it } from 'vitest';
import { withFeeling } from '../../src/domain/log/by-hand.ts';
import type { LogEntry } from '../../src/domain/log/entry.ts';
import { settle } from '../drivers/clock.ts';
import { failWrites } from '../drivers/faults/failing-writes.ts';
import { SHORTER, SHORTER_S } from '../drivers/faults/participant.ts';
import { atMost, tellFault } from '../drivers/faults/tell.ts';
import { asks, CHOICE, reopened, view } from '../drivers/own-session.ts';
import { openTab, type Tab, take } from '../drivers/phone.ts';
import { type Random, randomFrom } from '../fuzz/random.ts';

const KILLS = 200;
const MINUTE_S = 60;
const AWAY_S = [5, 20 * MINUTE_S, 2 * 60 * MINUTE_S, 10 * 60 * MINUTE_S];
const WISHES = ['hold', 'goOn', 'oneMore', 'walkNow', 'skip', 'back'] as const;

/** Every turn of the event loop is a moment at which a phone may die. */
async function turns(count: number): Promise<void> {
  for (let turn = 0; turn < count; turn += 1) await new Promise((resolve) => setImmediate(resolve));
}

/** What is under way in the database comes to nothing with its page, as in a process that is killed. */
async function killHard(tab: Tab): Promise<void> {
  const dying = failWrites(() => true, 'AbortError');
  tab.kill();
  await settle();
  dying.stop();
}

interface Death {
  /** Seconds of the session by then, by the screen. */
  readonly at: number;
  /** The session had ended on the screen: there must be an entry. */
  readonly ended: LogEntry | undefined;
  /** Said and left alone for a moment before the end. */
  readonly felt: boolean;
}

/** A session with things done in it at random, until the phone dies at a random moment. */
async function liveAndDie(tab: Tab, random: Random): Promise<Death> {
  const dies = 0.25 + random.below(4 * (SHORTER_S + 15)) / 4;
  let passed = 0;
  asks(tab).start();
  while (random.chance(0.6)) {
    const next = passed + random.below(30);
    if (next >= dies) break;
    await tab.clock.pass(next - passed);
    passed = next;
    asks(tab)[random.pick(WISHES)]();
  }
  await tab.clock.pass(dies - passed);
  const [ended] = tab.app.log.getState().entries;
  const before = view(tab).position;
  let felt = false;
  if (ended !== undefined) {
    const feeling = { effort: random.below(11) };
    await tab.app.log.getState().write(withFeeling(ended, feeling, undefined, tab.clock.now()));
    felt = random.chance(0.5);
    if (felt) await settle();
  } else asks(tab)[random.pick(WISHES)]();
  await turns(random.below(6));
  // A tap in the same moment may have moved the place and be lost with the phone.
  const at = Math.min(before, view(tab).position) / 1000;
  await killHard(tab);
  return { at, ended, felt };
}

/** Where the next visit has the session; what is in the log has lost nothing of it. */
function foundAt(again: Tab, { at }: Death): number {
  const { unfinished } = asks(again);
  const entries = again.app.log.getState().entries.length;
  expect(entries + (unfinished === undefined ? 0 : 1)).toBe(1);
  return unfinished === undefined ? at : unfinished.position / 1000;
}

it(`FAULT-1 killed at ${KILLS} random moments, what was finished and entered is there`, async () => {
  const seed = Number(process.env.SEED ?? Date.now() % 1e9);
  console.log(`seed ${seed} (SEED=${seed} makes the same kills again)`);
  const random = randomFrom(seed);
  const lost: number[] = [];
  const counts = { finished: 0, felt: 0, goneOn: 0 };
  for (let kill = 0; kill < KILLS; kill += 1) {
    const tab = await openTab();
    await take(tab.app, SHORTER);
    await asks(tab).prepare(CHOICE, 'sound');
    const death = await liveAndDie(tab, random);
    const away = random.pick(AWAY_S);
    tab.clock.sleep(away);
    const again = await reopened(tab);
    const [entry] = again.app.log.getState().entries;
    const which = `kill ${kill}, at ${death.at} s`;
    if (death.ended !== undefined) {
      counts.finished += 1;
      expect(asks(again).unfinished, which).toBeUndefined();
      expect(entry, which).toMatchObject({
        outcome: death.ended.outcome,
        doneSeconds: death.ended.doneSeconds,
      });
      if (death.felt) {
        counts.felt += 1;
        expect(entry?.feeling.effort, which).toBeDefined();
      }
    } else {
      lost.push(death.at - foundAt(again, death));
      expect(lost.at(-1), which).toBeLessThanOrEqual(5.25);
    }
    if (asks(again).unfinished !== undefined && random.chance(0.25)) {
      counts.goneOn += 1;
      await asks(again).recover('go-on');
      await again.clock.pass(SHORTER_S + 180);
      const { entries } = again.app.log.getState();
      expect(
        entries.map(({ outcome }) => outcome),
        which,
      ).toEqual(['finished']);
    }
    again.kill();
  }
  console.log(
    `${counts.finished} had ended, ${counts.felt} of them with the effort said; ${counts.goneOn} gone on with to the end`,
  );
  const place = atMost(lost, 'the place, no finished session and nothing entered');
  tellFault(`killed at a random moment of a session (seed ${seed})`, KILLS, place);
}, 180_000);
