/** The long session in an engine that is asked through its driver alone. */
import { felt } from '../../src/copy/felt.ts';
import { arrive, begin, follow, heard, sounding, type Visit } from '../drivers/engines/visit.ts';
import { planOf, type Runner, readTold, watchTold } from './soak.ts';

export const inEngine = (visit: Visit): Runner => ({
  name: visit.engine.name,
  async start(minutes) {
    await arrive(visit);
    await visit.person.tab.run(watchTold);
    await follow(visit, planOf(minutes));
    await begin(visit);
    await sounding(visit);
  },
  hide: () => visit.person.tab.hide(),
  heard: () => heard(visit),
  told: () => visit.person.tab.run(readTold),
  async back() {
    await visit.person.tab.show();
    await visit.person.see('heading', felt.title);
  },
});
