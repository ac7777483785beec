import { describe, expect, it } from 'vitest';
import { scanWith } from '../../src/app/board/scanning.ts';
import type { IntakeSource } from '../../src/app/board-contract.ts';
import { ANSWER, fewestLinks } from '../../src/domain/exchange/link.ts';
import { encodeAnswer } from '../../src/domain/exchange/packet.ts';
import { ok } from '../../src/domain/result.ts';

describe('answers before the camera', () => {
  it('IN-20 go in one after another, each once, and parts of a code together with those before them', async () => {
    const address = 'https://marsh.example/';
    const codes = [1, 2].map((n) => encodeAnswer(new Uint8Array(900).fill(n)));
    const links = codes.map((code) => fewestLinks(address, code, 500, ANSWER) ?? []);
    const [first = [], second = []] = links;
    expect(first.length).toBeGreaterThan(1);
    const given: string[] = [];
    let under = 0;
    const bringIn = async ([source]: readonly IntakeSource[]): Promise<void> => {
      under += 1;
      expect(under).toBe(1);
      await new Promise((resolve) => setTimeout(resolve, 1));
      given.push(String(source?.content));
      under -= 1;
    };
    let saw: (text: string) => void = () => undefined;
    const codesSeen = {
      watch: async (_: HTMLVideoElement, tell: (text: string) => void) => {
        saw = tell;
        return ok(() => undefined);
      },
    };
    await scanWith(codesSeen, {} as HTMLVideoElement, bringIn);
    // The camera sees the same symbol many times over, and two phones by turns.
    for (const text of [first[0], first[0], second[0], first[1], second[1], first[1]])
      saw(text ?? '');
    await new Promise((resolve) => setTimeout(resolve, 50));
    expect(given).toEqual([
      first[0],
      second[0],
      `${first[0]}\n${first[1]}`,
      `${second[0]}\n${second[1]}`,
    ]);
  });
});
