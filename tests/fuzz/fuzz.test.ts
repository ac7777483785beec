import { deflateRawSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { crc32, crcBytes } from '../../src/domain/exchange/crc32.ts';
import { textBy } from '../drivers/exchange/leader.ts';
import { marshProgramme } from '../drivers/exchange/programmes.ts';
import { type Case, KINDS, makeSeeds, mutated } from './mutate.ts';
import { randomFrom } from './random.ts';
import { complaint, createReceiver } from './receiver.ts';

/** `npm run fuzz` runs a hundred thousand; these are as many as a test may take. */
const RUNS = 500;
const seeds = makeSeeds();

const codeOfBytes = (...rows: readonly Uint8Array[]): string => {
  const packet = Buffer.concat(rows);
  const code = Buffer.concat([packet, crcBytes(crc32(packet))]).toString('base64url');
  return `https://club.example/app/#/join/${code}`;
};

const text = textBy(seeds.leader, marshProgramme(4));
const head = Uint8Array.of(1, 1);
const deflated = (content: string): Buffer => deflateRawSync(Buffer.from(content));
const asText = (kind: string, content: string): Case => ({ kind, text: content });

/**
 * Cases worth keeping by name. What `npm run fuzz` finds is added here with what was wrong.
 * The reason is what the person is told.
 */
const NAMED: readonly (readonly [name: string, item: Case, told: string])[] = [
  [
    'a stored block longer than its stream',
    asText('', codeOfBytes(head, Uint8Array.of(1, 255, 255, 0, 0))),
    'damaged',
  ],
  [
    'a match that points before its window',
    asText('', codeOfBytes(head, Uint8Array.of(0x4b, 0x04, 0xff, 0xff, 0))),
    'damaged',
  ],
  [
    'a block of the kind that does not exist',
    asText('', codeOfBytes(head, Uint8Array.of(7))),
    'damaged',
  ],
  [
    'a signed packet of nothing but a head',
    asText('', codeOfBytes(Uint8Array.of(1, 0x11))),
    'damaged',
  ],
  [
    'a bomb of bombs',
    asText('', codeOfBytes(head, deflateRawSync(deflateRawSync(Buffer.alloc(50_000_000))))),
    'damaged',
  ],
  ['a bomb', asText('', codeOfBytes(head, deflateRawSync(Buffer.alloc(50_000_000)))), 'too-large'],
  [
    'JSON nested fifty thousand deep',
    asText('', codeOfBytes(head, deflated('['.repeat(50_000)))),
    'programme',
  ],
  [
    'a key that is not known and ten thousand lists deep',
    asText('', text.replace('{', `{"deep":${'['.repeat(10_000)}${']'.repeat(10_000)},`)),
    'programme',
  ],
  [
    'a key called __proto__',
    asText(
      '',
      text.replace(
        '{',
        '{"__proto__":{"polluted":1},"zz":{"constructor":{"prototype":{"polluted":1}}},',
      ),
    ),
    '',
  ],
  ['a group called __proto__', asText('', text.replaceAll('"wren"', '"__proto__"')), 'programme'],
  ['half of a surrogate pair in a title', asText('', text.replace('Four', '\\ud83e')), 'programme'],
  [
    'a name that turns the writing round',
    asText('', text.replace('Imogen', '\\u202enegomI')),
    'programme',
  ],
  ['markup in a title', asText('', text.replace('Four', '<script>alert(1)</script>')), ''],
  [
    'a revision that is no number',
    asText('', text.replace('"revision":1', '"revision":1e999')),
    'programme',
  ],
  [
    'a thousand weeks',
    asText('', text.replace('"weeks":[', `"weeks":[${'{},'.repeat(1000)}`)),
    'programme',
  ],
  ['a file of zeros', { kind: '', file: new Uint8Array(300_000) }, 'nothing-found'],
  [
    'a file that ends within a letter',
    { kind: '', file: new Uint8Array(Buffer.from('See you – soon').subarray(0, 10)) },
    'file-kind',
  ],
];

describe('hostile links and files', () => {
  it.each(NAMED)('XCHG-23 %s', async (_, item, told) => {
    const receiver = createReceiver(seeds);
    const state = await receiver.give(item);
    expect(complaint(state, seeds)).toBeUndefined();
    expect(state.name === 'refused' ? state.problem.code : '').toBe(told);
    expect(receiver.writes).toEqual([]);
  });

  it('XCHG-23 what is shown of hostile words is the words', async () => {
    const state = await createReceiver(seeds).give(asText('', text.replace('Four', '<b>Four</b>')));
    if (state.name !== 'preview') throw new Error(state.name);
    expect(state.preview.programme.title).toBe('<b>Four</b> weeks to the Heron Loop');
  });

  it.each([20_270_301, Math.floor(Math.random() * 2 ** 32)])(
    'XCHG-23 no damage to a link or file does harm (seed %i)',
    async (seed) => {
      const receiver = createReceiver(seeds);
      const kinds = new Set<string>();
      for (let n = 0; n < RUNS; n++) {
        const item = mutated(seeds, randomFrom(seed + n));
        kinds.add(item.kind);
        const problem = complaint(await receiver.give(item), seeds);
        if (problem !== undefined) throw new Error(`case ${seed + n} (${item.kind}): ${problem}`);
      }
      expect([...kinds].sort()).toEqual([...KINDS].sort());
      expect(receiver.writes).toEqual([]);
    },
  );

  it('XCHG-23 the search for forgeries would see one', async () => {
    const state = await createReceiver(seeds).give(asText('', seeds.codes[0] ?? ''));
    expect(complaint(state, { ...seeds, texts: [] })).toContain('forged');
  });
});
