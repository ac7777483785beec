import { expect } from 'vitest';
import { journey } from '../drivers/browser/journey.ts';
import { inChromium } from '../soak/chromium.ts';
import { asLines, soak } from '../soak/soak.ts';

journey(
  'FAULT-9 three minutes out of sight: every change is reached and nothing drifts',
  async (j) => {
    const soaked = await soak(await inChromium(j.browser, j.site, j.page), 3);
    for (const line of asLines(soaked)) console.log(line);
    expect(soaked.drift.length).toBeGreaterThan(60);
    expect(soaked.seenOrStood).toBe(0);
    // Both are read in one task, but the element tells a place that is up to one buffer old.
    expect(Math.max(...soaked.drift.map(Math.abs))).toBeLessThan(0.1);
    expect(soaked.reached).toBe(soaked.planned);
    expect(soaked.planned).toBe(12);
    expect(soaked.latest).toBeLessThan(1.5);
    const [begun = Number.NaN, ended = Number.NaN] = soaked.heap ?? [];
    expect(ended - begun).toBeLessThan(2e6);
  },
);
