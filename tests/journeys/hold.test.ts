import { expect } from 'vitest';
import { running } from '../../src/copy/running.ts';
import { journey, seconds } from '../drivers/browser/journey.ts';
import { button, heard, moveTo, SEVERAL, startOn } from '../drivers/browser/visit.ts';

/** The session is 290 s; two minutes of quiet follow, then the holding lane. */
const HOLDING_FROM = 290 + 120;
const HOLDING_TO = HOLDING_FROM + 30 * 60;

journey('REAL-2 a hold of any length goes on three seconds before its place', async (j) => {
  await startOn(j.page, j.site, SEVERAL);
  let place = 14;
  for (const length of [5, 30]) {
    await moveTo(j.page, place);
    await seconds(2);
    const before = await heard(j.page);
    await button(j.page, running.hold).click();
    await button(j.page, running.goOn).waitFor();
    await seconds(length);
    const held = await heard(j.page);
    expect(held.paused).toBe(false);
    expect(held.at).toBeGreaterThan(HOLDING_FROM + length - 1);
    expect(held.at).toBeLessThan(HOLDING_FROM + length + 2);
    await button(j.page, running.goOn).click();
    await button(j.page, running.hold).waitFor();
    const after = await heard(j.page);
    expect(after.at).toBeGreaterThan(before.at - 3.1);
    expect(after.at).toBeLessThan(before.at - 1.5);
    place += 20;
  }
});

journey(
  'REAL-2 a hold that outlasts its lane stays a hold, and goes on in its place',
  async (j) => {
    await startOn(j.page, j.site, SEVERAL);
    await moveTo(j.page, 30);
    await seconds(1);
    const before = await heard(j.page);
    await button(j.page, running.hold).click();
    await button(j.page, running.goOn).waitFor();
    await moveTo(j.page, HOLDING_TO - 4);
    await seconds(8);
    const round = await heard(j.page);
    expect(round.paused).toBe(false);
    expect(round.at).toBeGreaterThanOrEqual(HOLDING_FROM);
    expect(round.at).toBeLessThan(HOLDING_FROM + 8);
    await j.page.getByRole('heading', { level: 1, name: running.holdingTitle }).waitFor();
    await button(j.page, running.goOn).click();
    await button(j.page, running.hold).waitFor();
    const after = await heard(j.page);
    expect(after.at).toBeGreaterThan(before.at - 3.1);
    expect(after.at).toBeLessThan(before.at - 1.5);
  },
);
