/** A leader whose keys and signatures are Node's own: another implementation than the app's. */
import {
  createPublicKey,
  ECDH,
  generateKeyPairSync,
  type KeyObject,
  sign,
  verify,
} from 'node:crypto';
import { outgoingText } from '../../../src/domain/exchange/compose.ts';
import { encodePacket } from '../../../src/domain/exchange/packet.ts';
import { type Succession, successionBytes } from '../../../src/domain/exchange/succession.ts';

const JOSE = { dsaEncoding: 'ieee-p1363' } as const;

export interface Leader {
  /** Compressed point, base64url. */
  readonly sign: string;
  readonly seal: string;
  readonly was: readonly Succession[];
  readonly privateKey: KeyObject;
}

function pair(): { readonly text: string; readonly privateKey: KeyObject } {
  const { publicKey, privateKey } = generateKeyPairSync('ec', { namedCurve: 'P-256' });
  const { x = '', y = '' } = publicKey.export({ format: 'jwk' });
  const point = Buffer.concat([
    Buffer.of(4),
    Buffer.from(x, 'base64url'),
    Buffer.from(y, 'base64url'),
  ]);
  const short = ECDH.convertKey(point, 'prime256v1', undefined, undefined, 'compressed');
  return { text: Buffer.from(short as Buffer).toString('base64url'), privateKey };
}

/** A new leader, or the new keys of one whose old key signs them. */
export function newLeader(before?: Leader): Leader {
  const { text, privateKey } = pair();
  const was =
    before === undefined
      ? []
      : [
          ...before.was,
          { sign: before.sign, proof: signWith(before, successionBytes(before.sign, text)) },
        ];
  return { sign: text, seal: pair().text, was, privateKey };
}

export const signWith = (leader: Leader, bytes: Uint8Array): string =>
  sign('sha256', bytes, { key: leader.privateKey, ...JOSE }).toString('base64url');

/** Whether Node's cryptography takes a signature by a key as it stands in a programme. */
export function nodeVerifies(key: string, bytes: Uint8Array, signature: string): boolean {
  const point = ECDH.convertKey(Buffer.from(key, 'base64url'), 'prime256v1') as Buffer;
  const jwk = {
    kty: 'EC',
    crv: 'P-256',
    x: point.subarray(1, 33).toString('base64url'),
    y: point.subarray(33).toString('base64url'),
  };
  const publicKey = createPublicKey({ key: jwk, format: 'jwk' });
  return verify('sha256', bytes, { key: publicKey, ...JOSE }, Buffer.from(signature, 'base64url'));
}

export interface Wish {
  readonly revision?: number;
  readonly change?: string;
}

/** The text of a programme with the leader's keys in it; without a leader, unsigned. */
export const textBy = (
  leader: Leader | undefined,
  programme: object,
  { revision = 1, change }: Wish = {},
): string =>
  outgoingText(JSON.stringify(programme), {
    revision,
    ...(leader && { keys: leader }),
    ...(change && { change }),
  });

/** The code of a text, signed by a leader or by nobody. */
export function codeBy(leader: Leader | undefined, text: string): string {
  const bytes = new Uint8Array(Buffer.from(text, 'utf8'));
  if (leader === undefined) return encodePacket({ bytes });
  const signature = new Uint8Array(Buffer.from(signWith(leader, bytes), 'base64url'));
  return encodePacket({ bytes, signature });
}

export const codeOf = (leader: Leader | undefined, programme: object, wish: Wish = {}): string =>
  codeBy(leader, textBy(leader, programme, wish));
