import { describe, expect, it } from 'vitest';
import { makeDecoders } from './decoders.ts';
import { randomFrom } from './random.ts';

/** `npm run fuzz` runs a million; these are as many as a test may take, shared out as there. */
const RUNS = 3000;
/** These have tests of their own beside this one, with more. */
const OTHERS = ['programme: link, parts, file', 'answer', 'chat, archive, record'];

const decoders = (await makeDecoders()).filter(({ name }) => !OTHERS.includes(name));
const chance = Math.floor(Math.random() * 2 ** 32);

describe('hostile bytes and text', () => {
  it.each(decoders.map((each) => [each.name, each] as const))(
    `SAFE-3 do no harm as: %s (seeds 20270412 and ${chance})`,
    async (_, { make, look, share }) => {
      for (const seed of [20_270_412, chance])
        for (let n = 0; n < Math.max(4, (RUNS * share) / 1000); n++) {
          const item = await make(randomFrom(seed + n));
          const problem = await look(item);
          if (problem !== undefined) throw new Error(`case ${seed + n} (${item.kind}): ${problem}`);
        }
    },
  );

  it('SAFE-3 cases differ, so that many are looked at and not one often', async () => {
    for (const { name, make } of decoders) {
      const cases = await Promise.all(
        Array.from({ length: 20 }, (_, n) => make(randomFrom(20_270_412 + n))),
      );
      const different = new Set(cases.map(({ content }) => String(content)));
      expect(different.size, name).toBeGreaterThan(10);
    }
  });
});
