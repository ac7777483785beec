import { expect } from 'vitest';
import { welcome } from '../../src/copy/welcome.ts';
import { seconds } from '../drivers/browser/journey.ts';
import { eachEngine } from '../drivers/engines/each.ts';
import { arrive, begin, follow, heard, KEEPING, sounding } from '../drivers/engines/visit.ts';

eachEngine(
  'ENG-1 after one visit it opens without a network, and a session is heard',
  async (visit) => {
    await arrive(visit);
    await visit.close();
    await visit.site.cut();
    await (await visit.open()).tab.goto(visit.site.url);
    await expect(fetch(visit.site.url)).rejects.toThrow();

    await visit.person.go('/start');
    await visit.person.read(welcome.what);
    await follow(visit, '10 s easy walk; 30 s run; 10 s easy walk');
    await begin(visit);
    await sounding(visit);
    const first = await heard(visit);
    await seconds(5);
    const last = await heard(visit);
    expect(last.paused).toBe(false);
    expect(last.at - first.at).toBeCloseTo(last.clock - first.clock, 0);
  },
  KEEPING,
);
