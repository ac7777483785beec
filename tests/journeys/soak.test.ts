import { expect } from 'vitest';
import { journey } from '../drivers/browser/journey.ts';
import { asLines, soak } from '../soak/soak.ts';

journey(
  'FAULT-9 three minutes out of sight: every change is reached and nothing drifts',
  async (j) => {
    const soaked = await soak(j.browser, j.site, 3, undefined, j.page);
    for (const line of asLines(soaked)) console.log(line);
    expect(soaked.drift.length).toBeGreaterThan(60);
    expect(soaked.seenOrStood).toBe(0);
    // Both are read in one task, but the element tells a place that is up to one buffer old.
    expect(Math.max(...soaked.drift.map(Math.abs))).toBeLessThan(0.1);
    expect(soaked.reached).toBe(soaked.planned);
    expect(soaked.planned).toBe(12);
    expect(soaked.latest).toBeLessThan(1.5);
    expect(soaked.heap[1] - soaked.heap[0]).toBeLessThan(2e6);
  },
);
