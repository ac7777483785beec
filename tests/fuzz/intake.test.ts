import { describe, expect, it } from 'vitest';
import { encodeAnswer } from '../../src/domain/exchange/packet.ts';
import { answerLink } from '../drivers/exchange/sealed.ts';
import { makeAnswers } from './answers.ts';
import { hostileIntake, INTAKE_KINDS, intakeComplaint } from './intake.ts';
import { randomFrom } from './random.ts';

/** `npm run fuzz` runs many more; these are as many as a test may take. */
const RUNS = 250;

describe('hostile chats, archives and records', () => {
  it.each([20_270_306, Math.floor(Math.random() * 2 ** 32)])(
    'IN-19 nothing of them does harm, and no answer in them is dropped (seed %i)',
    async (seed) => {
      const seeds = await makeAnswers();
      const kinds = new Set<string>();
      for (let n = 0; n < RUNS; n++) {
        const item = hostileIntake(seeds, randomFrom(seed + n));
        kinds.add(item.kind);
        const problem = await intakeComplaint(seeds, item);
        if (problem !== undefined) throw new Error(`case ${seed + n} (${item.kind}): ${problem}`);
      }
      expect([...kinds].sort()).toEqual([...INTAKE_KINDS].sort());
    },
  );

  it('IN-19 the search would see what opens as something else', async () => {
    const seeds = await makeAnswers();
    const [sealed = new Uint8Array()] = seeds.sealed;
    const item = { kind: 'chat, scratched', text: answerLink(encodeAnswer(sealed)) } as const;
    expect(await intakeComplaint({ ...seeds, responses: [] }, item)).toContain('else');
    expect(await intakeComplaint(seeds, item)).toBeUndefined();
  });
});
