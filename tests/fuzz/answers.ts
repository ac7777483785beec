import { deflateRawSync } from 'node:zlib';
import { answerProblem } from '../../src/copy/tell.ts';
import { crc32, crcBytes } from '../../src/domain/exchange/crc32.ts';
import { RESPONSE_DICTIONARY_1 } from '../../src/domain/exchange/dictionary.ts';
import { encodeAnswer } from '../../src/domain/exchange/packet.ts';
import { ANSWER_CODES } from '../../src/domain/exchange/problem.ts';
import type { Response } from '../../src/domain/exchange/response.ts';
import { responseBytes } from '../../src/domain/exchange/response-bytes.ts';
import { responseOf } from '../../src/domain/exchange/tell.ts';
import { fail } from '../../src/domain/result.ts';
import { openSealed, type SealPair, sealFor } from '../../src/platform/keys/seal.ts';
import { ALL, entry, sealPair, teller } from '../drivers/exchange/answers.ts';
import { openResponse } from '../drivers/exchange/open-response.ts';
import { hostileJson } from './hostile.ts';
import type { Random } from './random.ts';

const dictionary = Buffer.from(RESPONSE_DICTIONARY_1, 'utf8');

/** Answers that were sealed for a leader, and what they hold. */
export interface AnswerSeeds {
  readonly pair: SealPair;
  readonly responses: readonly Response[];
  readonly sealed: readonly Uint8Array<ArrayBuffer>[];
}

async function seal(pair: SealPair, bytes: Uint8Array): Promise<Uint8Array<ArrayBuffer>> {
  const made = await sealFor(pair.seal, bytes);
  if (!made.ok) throw new Error(made.error);
  return made.value;
}

export async function makeAnswers(): Promise<AnswerSeeds> {
  const pair = await sealPair();
  const responses = [1, 3, 12].map((count) => {
    const log = Array.from({ length: count }, (_, n) =>
      entry({
        id: `session-${n}`,
        day: n,
        feeling: { effort: n % 11, niggle: { place: 'knee' }, note: 'Wind on the sea wall' },
      }),
    );
    return responseOf(teller(log), { ids: log.map(({ id }) => id), ...ALL, name: 'Rosa' });
  });
  const sealed = responses.map((response) => {
    const bytes = responseBytes(response);
    if (!bytes.ok) throw new Error(bytes.error);
    return seal(pair, bytes.value);
  });
  return { pair, responses, sealed: await Promise.all(sealed) };
}

export const ANSWER_KINDS = [
  'answer, scratched',
  'answer, checksum right',
  'two answers joined',
  'noise as an answer',
  'hostile content, sealed',
  'bomb, sealed',
] as const;
type Kind = (typeof ANSWER_KINDS)[number];

export interface AnswerCase {
  readonly kind: Kind;
  readonly code: string;
}

function scratched(bytes: Uint8Array, random: Random): Uint8Array<ArrayBuffer> {
  const out = new Uint8Array(bytes);
  for (let n = random.below(3) + 1; n > 0; n--)
    out[random.below(out.length)] = (out[random.below(out.length)] ?? 0) ^ (1 << random.below(8));
  return random.chance(0.3) ? out.slice(0, random.below(out.length)) : out;
}

const withSum = (packet: Uint8Array): string =>
  Buffer.concat([packet, crcBytes(crc32(packet))]).toString('base64url');

/** A damaged or hostile answer: the same number and seeds give the same way of damage. */
export async function hostileAnswer(seeds: AnswerSeeds, random: Random): Promise<AnswerCase> {
  const { pair, responses, sealed } = seeds;
  const kind = random.pick(ANSWER_KINDS);
  const one = random.pick(sealed);
  const raw = (text: string): Buffer => deflateRawSync(Buffer.from(text), { dictionary });
  switch (kind) {
    case 'answer, scratched':
      return { kind, code: scratchedText(encodeAnswer(one), random) };
    case 'answer, checksum right':
      return { kind, code: withSum(scratched(Buffer.from([1, 2, ...one]), random)) };
    case 'two answers joined': {
      const cut = random.below(one.length);
      const other = random.pick(sealed);
      return {
        kind,
        code: encodeAnswer(Buffer.concat([one.subarray(0, cut), other.subarray(cut)])),
      };
    }
    case 'noise as an answer':
      return { kind, code: encodeAnswer(random.bytes(random.below(400))) };
    case 'hostile content, sealed': {
      const text = hostileJson(random.pick(responses), random);
      return { kind, code: encodeAnswer(await seal(pair, raw(text))) };
    }
    case 'bomb, sealed': {
      const bomb = deflateRawSync(Buffer.alloc(300_000 + random.below(3_000_000), 7), {
        dictionary,
      });
      return { kind, code: encodeAnswer(await seal(pair, bomb)) };
    }
  }
}

function scratchedText(text: string, random: Random): string {
  const at = random.below(text.length);
  if (random.chance(0.3)) return text.slice(0, at);
  return text.slice(0, at) + random.pick(['A', '_', '%', '.', '']) + text.slice(at + 1);
}

const known = (seeds: AnswerSeeds): ReadonlySet<string> =>
  new Set(seeds.responses.map((response) => JSON.stringify(response)));

/** What is wrong with what the leader's side made of a case; nothing when all is as it must be. */
export async function answerComplaint(
  seeds: AnswerSeeds,
  { kind, code }: AnswerCase,
): Promise<string | undefined> {
  const opened = await openResponse(code, {
    open: async (sealed) => {
      const result = await openSealed(seeds.pair, sealed);
      return result.ok ? result : fail({ code: result.error });
    },
  });
  if (Object.keys(Object.prototype).length > 0 || 'polluted' in {}) return 'prototype changed';
  if (!opened.ok) {
    if (!ANSWER_CODES.includes(opened.error.code)) return `unknown reason ${opened.error.code}`;
    return answerProblem(opened.error).length > 20 ? undefined : `no sentence for it`;
  }
  // Content under a right seal may be the sender's own: it is as bounded as any.
  if (kind === 'hostile content, sealed') return undefined;
  return known(seeds).has(JSON.stringify(opened.value)) ? undefined : 'opened as something else';
}
