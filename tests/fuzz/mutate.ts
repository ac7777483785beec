import { deflateRawSync, inflateRawSync } from 'node:zlib';
import { crc32, crcBytes } from '../../src/domain/exchange/crc32.ts';
import { DICTIONARY_1 } from '../../src/domain/exchange/dictionary.ts';
import { joinLink, partLinks } from '../../src/domain/exchange/link.ts';
import { codeBy, codeOf, type Leader, newLeader, textBy } from '../drivers/exchange/leader.ts';
import { marshProgramme } from '../drivers/exchange/programmes.ts';
import { hostileJson } from './hostile.ts';
import type { Random } from './random.ts';
import { scratchText } from './scratch.ts';

const BASE = 'https://club.example/app/';
const dictionary = Buffer.from(DICTIONARY_1, 'utf8');

/** What is mutated: a leader's programmes as they go out, and a stranger's. */
export interface Seeds {
  readonly leader: Leader;
  readonly stranger: Leader;
  /** Texts that the leader signed: no other may ever be shown as signed by that key. */
  readonly texts: readonly string[];
  readonly codes: readonly string[];
}

export function makeSeeds(): Seeds {
  const leader = newLeader();
  const files = [4, 8].map((weeks) => marshProgramme(weeks));
  const texts = [1, 2, 3].flatMap((revision) =>
    files.map((file) => textBy(leader, file, { revision })),
  );
  return { leader, stranger: newLeader(), texts, codes: texts.map((text) => codeBy(leader, text)) };
}

export type Case =
  | { readonly kind: string; readonly text: string }
  | { readonly kind: string; readonly file: Uint8Array<ArrayBuffer> };

type Mutator = (seeds: Seeds, random: Random) => Case;

const withSum = (body: Uint8Array): string =>
  Buffer.concat([body, crcBytes(crc32(body))]).toString('base64url');

const packetOf = (code: string): Buffer => Buffer.from(code, 'base64url').subarray(0, -4);

function scratchBytes(bytes: Uint8Array, random: Random): Uint8Array<ArrayBuffer> {
  let out = new Uint8Array(bytes);
  for (let n = random.below(4) + 1; n > 0; n--) {
    const at = random.below(out.length || 1);
    const way = random.below(4);
    if (way === 0) out = out.slice(0, at);
    else if (way === 1)
      out = new Uint8Array([
        ...out.slice(0, at),
        ...random.bytes(random.below(9)),
        ...out.slice(at),
      ]);
    else out[at] = way === 2 ? random.below(256) : (out[at] ?? 0) ^ (1 << random.below(8));
  }
  return out;
}

/** Bytes behind the head of a signed or unsigned packet of version 1. */
const inPacket = (random: Random, body: Uint8Array, signature?: Uint8Array): string =>
  withSum(
    Buffer.concat([
      Uint8Array.of(1, signature || random.chance(0.2) ? 0x11 : 1),
      signature ?? new Uint8Array(0),
      body,
    ]),
  );

const deflated = (bytes: Uint8Array, random: Random): Buffer =>
  deflateRawSync(bytes, { level: random.below(10), strategy: random.below(5), dictionary });

const signatureOf = (code: string): Uint8Array => packetOf(code).subarray(2, 66);

const BOMBS = [262_145, 1_000_000, 20_000_000].map((size) =>
  deflateRawSync(Buffer.alloc(size, 7), { level: 9 }),
);

const MUTATORS: Readonly<Record<string, Mutator>> = {
  link: ({ codes }, random) => ({
    kind: 'link',
    text: scratchText(joinLink(BASE, random.pick(codes)), random),
  }),
  'packet, checksum right': ({ codes }, random) => ({
    kind: 'packet, checksum right',
    text: withSum(scratchBytes(packetOf(random.pick(codes)), random)),
  }),
  'content, packed again, old signature': ({ codes }, random) => {
    const code = random.pick(codes);
    const content = inflateRawSync(packetOf(code).subarray(66), { dictionary });
    const changed = scratchBytes(content, random);
    const text = inPacket(random, deflated(changed, random), signatureOf(code));
    return { kind: 'content, packed again, old signature', text };
  },
  'signature of another': ({ codes }, random) => {
    const [one, other] = [random.pick(codes), random.pick(codes)];
    const text = inPacket(random, packetOf(one).subarray(66), signatureOf(other));
    return { kind: 'signature of another', text };
  },
  'hostile content, unsigned': ({ texts }, random) => {
    const json = hostileJson(JSON.parse(random.pick(texts)), random);
    const text = inPacket(random, deflated(Buffer.from(json), random));
    return { kind: 'hostile content, unsigned', text };
  },
  'hostile content, signed by a stranger': ({ stranger, leader, texts }, random) => {
    const file = JSON.parse(random.pick(texts));
    const keys = { sign: random.pick([stranger, leader]).sign, seal: stranger.seal };
    file.leader = { ...file.leader, ...keys, was: [{ sign: leader.sign, proof: 'A'.repeat(86) }] };
    const json = random.chance(0.5) ? JSON.stringify(file) : hostileJson(file, random);
    return { kind: 'hostile content, signed by a stranger', text: codeBy(stranger, json) };
  },
  'noise as a packet': (_, random) => ({
    kind: 'noise as a packet',
    text: inPacket(random, random.bytes(random.below(400))),
  }),
  bomb: (_, random) => {
    const body = random.pick(BOMBS);
    const whole = random.chance(0.5) ? body : scratchBytes(body, random);
    return { kind: 'bomb', text: inPacket(random, whole) };
  },
  parts: ({ codes }, random) => {
    const links = [random.pick(codes), random.pick(codes)].flatMap((code) =>
      partLinks(BASE, code, random.below(3) + 2),
    );
    const some = links.filter(() => random.chance(0.7));
    const text = random.chance(0.5) ? some.join('\n') : scratchText(some.join(' '), random);
    return { kind: 'parts', text };
  },
  'file of text': ({ texts }, random) => ({
    kind: 'file of text',
    file: scratchBytes(Buffer.from(random.pick(texts)), random),
  }),
  'hostile file': ({ texts }, random) => ({
    kind: 'hostile file',
    file: new Uint8Array(Buffer.from(hostileJson(JSON.parse(random.pick(texts)), random))),
  }),
  'text with a link': ({ leader }, random) => {
    const code = codeOf(leader, marshProgramme(4), { revision: 1 });
    const around = Buffer.from(random.bytes(random.below(300))).toString('latin1');
    const text = `${around}\n${joinLink(BASE, scratchText(code, random))}${around}`;
    return { kind: 'text with a link', text };
  },
};

export const KINDS = Object.keys(MUTATORS);

/** The case of a number: the same number and seeds of content give the same way of damage. */
export function mutated(seeds: Seeds, random: Random): Case {
  const mutator = MUTATORS[random.pick(KINDS)];
  if (mutator === undefined) throw new Error('no such way');
  return mutator(seeds, random);
}
