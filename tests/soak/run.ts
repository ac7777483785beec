/** `npm run soak`, `npm run soak -- 3`: an hour, or so many whole minutes, of a session out of sight. */
import { newProfile, openBrowser } from '../drivers/browser/browser.ts';
import { openSite } from '../drivers/browser/site.ts';
import { firefox } from '../drivers/engines/firefox.ts';
import type { Engine } from '../drivers/engines/tab.ts';
import { visiting } from '../drivers/engines/visit.ts';
import { webkit } from '../drivers/engines/webkit.ts';
import { inEngine } from './any-engine.ts';
import { inChromium } from './chromium.ts';
import { asLines, type Soaked, soak } from './soak.ts';

const minutes = Number(process.argv[2] ?? 60);
if (!Number.isInteger(minutes) || minutes < 2 || minutes > 120) {
  console.error('How many minutes? A whole number from 2 to 120.');
  process.exit(2);
}

const inAny = (engine: Engine): Promise<Soaked> =>
  visiting(engine, 'soak', (visit) => soak(inEngine(visit), minutes, console.log));

/** All engines at once: each hardly works, and an hour apiece is long. */
const runs = await Promise.allSettled([chromium(), inAny(firefox), inAny(webkit)]);
for (const run of runs)
  if (run.status === 'fulfilled') for (const line of asLines(run.value)) console.log(line);
  else {
    console.error(run.reason);
    process.exitCode = 1;
  }

async function chromium(): Promise<Soaked> {
  const site = await openSite();
  const profile = newProfile();
  const browser = await openBrowser(profile);
  try {
    const runner = await inChromium(browser, site, await browser.tab());
    return await soak(runner, minutes, console.log);
  } finally {
    await browser.close();
    profile.remove();
    await site.close();
  }
}
