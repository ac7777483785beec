import * as v from 'valibot';
import { jsonIn } from '../../domain/exchange/own.ts';
import type { KeyProblem } from '../../domain/exchange/problem.ts';
import type { Succession } from '../../domain/exchange/succession.ts';
import { fail, ok, type Result } from '../../domain/result.ts';
import type { SecretKeys } from './curve.ts';
import { type LockedKind, lockFile, openFile } from './locked-file.ts';

/** What a backup gives back. */
export interface Backup extends SecretKeys {
  readonly was: readonly Succession[];
  readonly madeAt: number;
}

/** An honest one has about a thousand characters. */
const KEYS: LockedKind = { name: 'towpath-keys', version: 1, most: 16 * 1024 };

const coordinate = v.pipe(v.string(), v.regex(/^[\w-]{43}$/));
const PairShape = v.object({
  kty: v.literal('EC'),
  crv: v.literal('P-256'),
  x: coordinate,
  y: coordinate,
  d: coordinate,
});
const InsideShape = v.object({
  sign: PairShape,
  seal: PairShape,
  was: v.pipe(
    v.array(
      v.object({
        sign: v.pipe(v.string(), v.regex(/^[\w-]{44}$/)),
        proof: v.pipe(v.string(), v.regex(/^[\w-]{86}$/)),
      }),
    ),
    v.maxLength(16),
  ),
  madeAt: v.number(),
});

/**
 * The keys as a file that only a passphrase opens.
 *
 * @param words what a person reads who opens the file years later
 */
export const lockBackup = (
  crypto: SubtleCrypto,
  backup: Backup,
  passphrase: string,
  words: string,
): Promise<string> =>
  lockFile(crypto, KEYS, new TextEncoder().encode(JSON.stringify(backup)), passphrase, words);

/** Opens a backup file. A wrong passphrase and a changed file look alike: neither opens. */
export async function openBackup(
  crypto: SubtleCrypto,
  text: string,
  passphrase: string,
): Promise<Result<Backup, KeyProblem>> {
  const inside = await openFile(crypto, KEYS, text, passphrase);
  if (!inside.ok) return inside;
  const read = v.safeParse(InsideShape, jsonIn(new TextDecoder().decode(inside.value)));
  return read.success ? ok(read.output) : fail({ code: 'backup-damaged' });
}
