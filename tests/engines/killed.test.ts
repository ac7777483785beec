import { expect } from 'vitest';
import { log } from '../../src/copy/log.ts';
import { running } from '../../src/copy/running.ts';
import { unfinished } from '../../src/copy/unfinished.ts';
import { seconds } from '../drivers/browser/journey.ts';
import { eachEngine } from '../drivers/engines/each.ts';
import { heard, KEEPING, sounding, startOn, type Visit } from '../drivers/engines/visit.ts';

/** The place that the app says it was cut off at, in seconds. */
async function placeOffered({ person }: Visit): Promise<number> {
  await person.read(unfinished.title);
  const said = /at (\d+):(\d\d) of/.exec(await person.text());
  return Number(said?.[1]) * 60 + Number(said?.[2]);
}

/** Ends the browser's process and comes back. */
async function cutOff(visit: Visit): Promise<void> {
  await visit.kill();
  await visit.open();
}

eachEngine(
  'ENG-4 what is cut off is offered again within five seconds of its place',
  async (visit) => {
    await startOn(visit, '30 s easy walk; 1 min run; 30 s easy walk');
    await seconds(9);
    const { at } = await heard(visit);
    await cutOff(visit);
    await visit.person.tab.goto(visit.site.url);
    const place = await placeOffered(visit);
    console.log(`${visit.engine.name}: cut off at ${at.toFixed(1)} s, offered from ${place} s`);
    expect(place).toBeLessThanOrEqual(at + 1);
    expect(at - place).toBeLessThanOrEqual(6);

    await visit.person.press('button', /^Go on from/);
    await visit.person.see('button', running.hold);
    await sounding(visit);
    await seconds(2);
    const now = await heard(visit);
    expect(now.paused).toBe(false);
    expect(now.at).toBeGreaterThan(place - 3);
    expect(now.at).toBeLessThan(place + 8);

    await cutOff(visit);
    await visit.person.tab.goto(visit.site.url);
    await visit.person.press('button', unfinished.keep);
    await visit.person.go('/done');
    await visit.person.read(new RegExp(log.outcome['ended-early'], 'i'));
  },
  KEEPING,
);
