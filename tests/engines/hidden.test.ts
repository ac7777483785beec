import { expect } from 'vitest';
import { felt } from '../../src/copy/felt.ts';
import { seconds } from '../drivers/browser/journey.ts';
import type { Heard } from '../drivers/browser/visit.ts';
import { eachEngine } from '../drivers/engines/each.ts';
import { heard, sounding, startOn } from '../drivers/engines/visit.ts';

/** 30 seconds in all. */
const SESSION = '10 s easy walk; 10 s run; 10 s easy walk';

eachEngine('ENG-2 a session is heard to its end while its page is out of sight', async (visit) => {
  await startOn(visit, SESSION);
  await sounding(visit);
  await visit.person.tab.hide();
  await seconds(1);
  const first = await heard(visit);
  const seen: Heard[] = [];
  for (let look = 0; look < 12; look += 1) {
    await seconds(1.5);
    seen.push(await heard(visit));
  }
  const drift = seen.map(({ at, clock }) => (at - first.at - (clock - first.clock)) * 1000);
  const most = Math.max(...drift.map(Math.abs));
  console.log(`${visit.engine.name}: at most ${most.toFixed(0)} ms from the clock while hidden`);
  expect(seen.every(({ hidden, paused }) => hidden && !paused)).toBe(true);
  expect(most).toBeLessThan(150);
  await seconds(10);
  await visit.person.tab.show();
  await visit.person.see('heading', felt.title);
});
