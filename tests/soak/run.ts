/** `npm run soak`, `npm run soak -- 3`: an hour, or so many whole minutes, of a session out of sight. */
import { newProfile, openBrowser } from '../drivers/browser/browser.ts';
import { openSite } from '../drivers/browser/site.ts';
import { asLines, soak } from './soak.ts';

const minutes = Number(process.argv[2] ?? 60);
if (!Number.isInteger(minutes) || minutes < 2 || minutes > 120) {
  console.error('How many minutes? A whole number from 2 to 120.');
  process.exit(2);
}
const site = await openSite();
const profile = newProfile();
const browser = await openBrowser(profile);
try {
  for (const line of asLines(await soak(browser, site, minutes, console.log))) console.log(line);
} finally {
  await browser.close();
  profile.remove();
  await site.close();
}
