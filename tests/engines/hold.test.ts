import { expect } from 'vitest';
import { running } from '../../src/copy/running.ts';
import { seconds } from '../drivers/browser/journey.ts';
import { eachEngine } from '../drivers/engines/each.ts';
import { heard, moveTo, startOn } from '../drivers/engines/visit.ts';

/** 120 seconds; two minutes of quiet follow, then the half hour of the holding lane. */
const SESSION = '30 s easy walk; 1 min run; 30 s easy walk';
const HOLDING_FROM = 120 + 120;
const HOLDING_TO = HOLDING_FROM + 30 * 60;

eachEngine(
  'ENG-3 a hold outlasts its lane and goes on three seconds before its place',
  async (visit) => {
    const { person } = await startOn(visit, SESSION);
    await moveTo(visit, 40);
    await seconds(2);
    const before = await heard(visit);
    await person.press('button', running.hold);
    await person.see('button', running.goOn);
    await seconds(2);
    const held = await heard(visit);
    expect(held.paused).toBe(false);
    expect(held.at).toBeGreaterThan(HOLDING_FROM);
    expect(held.at).toBeLessThan(HOLDING_FROM + 12);

    await moveTo(visit, HOLDING_TO - 3);
    await seconds(7);
    const round = await heard(visit);
    expect(round.paused).toBe(false);
    expect(round.at).toBeGreaterThanOrEqual(HOLDING_FROM);
    expect(round.at).toBeLessThan(HOLDING_FROM + 10);
    await person.see('heading', running.holdingTitle);

    const asked = performance.now();
    await person.press('button', running.goOn);
    await person.see('button', running.hold);
    const after = await heard(visit);
    const since = (performance.now() - asked) / 1000;
    expect(after.at).toBeGreaterThan(before.at - 3.3);
    expect(after.at).toBeLessThan(before.at + 2 - 3 + since);
  },
);
