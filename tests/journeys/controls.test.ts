import { expect } from 'vitest';
import { before } from '../../src/copy/before.ts';
import { running } from '../../src/copy/running.ts';
import { journey, seconds } from '../drivers/browser/journey.ts';
import {
  button,
  followMarshMile,
  heard,
  moveTo,
  openSession,
  SEVERAL,
  startOn,
  visit,
} from '../drivers/browser/visit.ts';

/**
 * The session: easy walk 0-10 s, then three times walk 60 s and run 30 s, easy walk to 290 s.
 * Walks begin at 10, 100 and 190 s, runs at 70, 160 and 250 s.
 */
const FIRST_WALK = 10;
const FIRST_RUN = 70;
const SECOND_WALK = 100;

journey(
  'REAL-3 one minute more, asked for twice, is two minutes more and the countdown is heard',
  async (j) => {
    await startOn(j.page, j.site, SEVERAL);
    await moveTo(j.page, FIRST_WALK + 20);
    await button(j.page, running.oneMore).click();
    await j.page.getByRole('heading', { level: 1, name: running.oneMoreTitle }).waitFor();
    const inLane = await heard(j.page);
    expect(inLane.at).toBeGreaterThan(290 + 120 + 30 * 60);
    expect(inLane.paused).toBe(false);

    await button(j.page, running.oneMore).click();
    await seconds(1);
    const left = await j.page.getByRole('timer').innerText();
    expect(left).toMatch(/^(1:5\d|2:0\d)$/);

    // The quiet minute is listened through twice; most of each is skipped by a seek of the element.
    const lane = await heard(j.page);
    await moveTo(j.page, lane.at + 50);
    await seconds(12);
    const again = await heard(j.page);
    await j.page.getByRole('heading', { level: 1, name: running.oneMoreTitle }).waitFor();
    expect(again.at).toBeLessThan(lane.at + 60);
    await moveTo(j.page, lane.at + 55);
    await j.page
      .getByRole('heading', { level: 1, name: running.oneMoreTitle })
      .waitFor({ state: 'detached' });
    const back = await heard(j.page);
    expect(back.at).toBeGreaterThan(FIRST_WALK + 15);
    // At least "ten seconds" and the countdown are still ahead.
    expect(back.at).toBeLessThan(FIRST_RUN - 9);
  },
);

journey('REAL-4 walk now leads to the next walk, and can be taken back', async (j) => {
  await startOn(j.page, j.site, SEVERAL);
  await moveTo(j.page, FIRST_RUN + 5);
  await j.page.getByRole('heading', { level: 1, name: 'RUN' }).waitFor();
  await button(j.page, running.walkNow).click();
  await j.page.getByRole('heading', { level: 1, name: 'WALK' }).waitFor();
  const walking = await heard(j.page);
  expect(walking.at).toBeGreaterThanOrEqual(SECOND_WALK - 0.05);
  expect(walking.at).toBeLessThan(SECOND_WALK + 2);

  await button(j.page, running.undoWalk).click();
  await j.page.getByRole('heading', { level: 1, name: 'RUN' }).waitFor();
  const undone = await heard(j.page);
  expect(undone.at).toBeGreaterThan(FIRST_RUN + 1);
  expect(undone.at).toBeLessThan(FIRST_RUN + 12);

  await button(j.page, running.walkNow).click();
  await j.page.getByRole('heading', { level: 1, name: 'WALK' }).waitFor();
  await button(j.page, running.undoWalk).waitFor({ state: 'detached', timeout: 12_000 });
  expect((await heard(j.page)).at).toBeGreaterThan(SECOND_WALK + 8);
});

journey(
  'REAL-4 skip, back and the way to the cool-down move the sound where they say',
  async (j) => {
    await startOn(j.page, j.site, SEVERAL);
    const more = async (name: string): Promise<number> => {
      await button(j.page, running.more).click();
      await button(j.page, name).click();
      await seconds(0.7);
      return (await heard(j.page)).at;
    };
    expect(await more(running.skip)).toBeCloseTo(FIRST_WALK + 0.6, 0);
    await seconds(4);
    expect(await more(running.back)).toBeCloseTo(FIRST_WALK + 0.6, 0);
    // Within three seconds of a start, back means the part before.
    expect(await more(running.back)).toBeCloseTo(0.6, 0);
    expect(await more(running.coolDown)).toBeCloseTo(280 + 0.6, 0);
  },
);

journey('REAL-48 two taps on Start start the session, and hold nothing', async (j) => {
  await visit(j.page, j.site);
  await followMarshMile(j.page);
  await openSession(j.page, SEVERAL);
  const at = await button(j.page, before.start).boundingBox();
  if (at === null) throw new Error('no Start in sight');
  const [x, y] = [at.x + at.width / 4, at.y + at.height / 2];
  await j.page.evaluate(() => {
    const note = ({ timeStamp }: Event) => Reflect.set(window, 'tapped', timeStamp);
    document.addEventListener('click', note, { capture: true, once: true });
  });
  await j.page.mouse.click(x, y);
  const hold = button(j.page, running.hold);
  await hold.waitFor();
  const now = await hold.boundingBox();
  // Where Start was there is Hold now: the second tap would be its.
  expect(now && x > now.x && x < now.x + now.width && y > now.y && y < now.y + now.height).toBe(
    true,
  );
  // Told to the page as one that came a tenth of a second after the first, however busy the machine is.
  await j.page.evaluate(
    ({ clientX, clientY }) => {
      const second = new MouseEvent('click', { clientX, clientY, detail: 1, bubbles: true });
      Object.defineProperty(second, 'timeStamp', { value: Reflect.get(window, 'tapped') + 100 });
      document.elementFromPoint(clientX, clientY)?.dispatchEvent(second);
    },
    { clientX: x, clientY: y },
  );
  await seconds(1);
  expect((await heard(j.page)).at).toBeLessThan(290);
  await j.page.mouse.click(x, y);
  await button(j.page, running.goOn).waitFor();
});
