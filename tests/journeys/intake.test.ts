import { beforeAll, expect } from 'vitest';
import { buildIntake, type Files, visitIntake } from '../drivers/browser/intake-page.ts';
import { type Journey, journey } from '../drivers/browser/journey.ts';
import { marshProgramme } from '../drivers/exchange/programmes.ts';
import { answerLink, chatLine, otherCode, weekly } from '../drivers/exchange/sealed.ts';

const PROGRAMME = 'heron-loop-spring';
let files: Files = {};
beforeAll(async () => {
  files = await buildIntake();
});

/** A chat of some people's first two weeks, sealed by another implementation of RFC 9180. */
async function withChat({ site, page }: Journey, people: number): Promise<void> {
  await visitIntake(page, site, files);
  const programme = JSON.stringify(marshProgramme(6));
  const seal = await page.evaluate((text) => window.intake.leaderKey(text), programme);
  const told = Array.from({ length: people * 2 }, (_, n) => weekly(n >> 1, 1 + (n % 2)));
  const codes = await Promise.all(told.map((each) => otherCode(seal, each)));
  site.replace('/chat.txt', codes.map((code, n) => chatLine(n, answerLink(code))).join(''));
}

journey(
  'IN-18 a worker of its own opens what was sealed for this browser, under the app’s policy',
  async (j) => {
    await withChat(j, 60);
    const worker = j.page.waitForEvent('worker');
    const seen = await j.page.evaluate(() => window.intake.bringIn('./chat.txt'));
    expect((await worker).url()).toMatch(/\/assets\/worker-[\w-]+\.js$/);
    expect(seen).toMatchObject({
      people: 60,
      last: {
        name: 'done',
        cancelled: false,
        report: {
          found: 120,
          taken: { [PROGRAMME]: { answers: 120, people: 60, sessions: 240 } },
          left: [],
        },
      },
    });
    expect(j.page.workers(), 'and is gone afterwards').toEqual([]);
  },
);

journey('IN-18 it can be cancelled, and what was taken by then stays', async (j) => {
  await withChat(j, 150);
  const seen = await j.page.evaluate(() => window.intake.bringIn('./chat.txt', 0.01));
  expect(seen.last).toMatchObject({ name: 'done', cancelled: true });
  expect(seen.people).toBeGreaterThan(0);
  expect(seen.people).toBeLessThan(150);
});

journey('IN-18 where no worker can be had the page does the same in slices', async (j) => {
  await withChat(j, 60);
  const seen = await j.page.evaluate(() => {
    Reflect.deleteProperty(window, 'Worker');
    return window.intake.bringIn('./chat.txt');
  });
  expect(seen).toMatchObject({ people: 60, last: { name: 'done', report: { found: 120 } } });
});
