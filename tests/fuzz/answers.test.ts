import { describe, expect, it } from 'vitest';
import { encodeAnswer } from '../../src/domain/exchange/packet.ts';
import { ANSWER_KINDS, answerComplaint, hostileAnswer, makeAnswers } from './answers.ts';
import { randomFrom } from './random.ts';

/** `npm run fuzz` runs a tenth as many again as of programmes; these are as many as a test may take. */
const RUNS = 300;

describe('hostile answers', () => {
  it.each([20_270_411, Math.floor(Math.random() * 2 ** 32)])(
    'TELL-24 no damage to an answer does harm (seed %i)',
    async (seed) => {
      const seeds = await makeAnswers();
      const kinds = new Set<string>();
      for (let n = 0; n < RUNS; n++) {
        const item = await hostileAnswer(seeds, randomFrom(seed + n));
        kinds.add(item.kind);
        const problem = await answerComplaint(seeds, item);
        if (problem !== undefined) throw new Error(`case ${seed + n} (${item.kind}): ${problem}`);
      }
      expect([...kinds].sort()).toEqual([...ANSWER_KINDS].sort());
    },
  );

  it('TELL-24 the search would see what opens as something else', async () => {
    const seeds = await makeAnswers();
    const other = { ...seeds, responses: [] };
    const item = { kind: 'answer, scratched', code: '' } as const;
    const [sealed = new Uint8Array()] = seeds.sealed;
    expect(await answerComplaint(other, { ...item, code: encodeAnswer(sealed) })).toContain('else');
    expect(await answerComplaint(seeds, { ...item, code: encodeAnswer(sealed) })).toBeUndefined();
  });
});
