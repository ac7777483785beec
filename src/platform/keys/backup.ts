import * as v from 'valibot';
import { fromBase64Url, toBase64Url } from '../../domain/exchange/base64url.ts';
import { tidyPassphrase } from '../../domain/exchange/passphrase.ts';
import type { KeyProblem } from '../../domain/exchange/problem.ts';
import type { Succession } from '../../domain/exchange/succession.ts';
import { fail, ok, type Result } from '../../domain/result.ts';
import type { SecretKeys } from './curve.ts';

/** What a backup gives back. */
export interface Backup extends SecretKeys {
  readonly was: readonly Succession[];
  readonly madeAt: number;
}

const FORMAT = 'towpath-keys/1';
/** Longest file that is looked at, in characters: an honest one has about a thousand. */
const FILE_MAX = 16 * 1024;
const SALT_BYTES = 16;
/** NIST SP 800-38D, section 8.2.1. */
const IV_BYTES = 12;

/**
 * PBKDF2 with HMAC-SHA-256 (RFC 8018). 600,000 rounds are what the OWASP Password Storage Cheat
 * Sheet asks (2023, number from memory). A file may ask for more, but not for so many that
 * opening it never ends, nor for so few that it was made to be opened by others.
 */
const ROUNDS = 600_000;
const ROUNDS_LEAST = 100_000;
const ROUNDS_MOST = 5_000_000;

const letters = v.pipe(v.string(), v.maxLength(FILE_MAX));
const FileShape = v.object({
  rounds: v.pipe(v.number(), v.integer(), v.minValue(ROUNDS_LEAST), v.maxValue(ROUNDS_MOST)),
  salt: letters,
  iv: letters,
  sealed: letters,
});

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

const utf8 = new TextEncoder();

async function keyOf(
  crypto: SubtleCrypto,
  passphrase: string,
  salt: Uint8Array<ArrayBuffer>,
  rounds: number,
): Promise<CryptoKey> {
  const typed = utf8.encode(tidyPassphrase(passphrase));
  const material = await crypto.importKey('raw', typed, 'PBKDF2', false, ['deriveKey']);
  const how = { name: 'PBKDF2', hash: 'SHA-256', salt, iterations: rounds };
  const cipher = { name: 'AES-GCM', length: 256 };
  return crypto.deriveKey(how, material, cipher, false, ['encrypt', 'decrypt']);
}

/** Whoever changes how the file is to be opened makes it one that does not open. */
const bound = (rounds: number, salt: string): Uint8Array<ArrayBuffer> =>
  utf8.encode(`${FORMAT} ${rounds} ${salt}`);

/**
 * The keys as a file: JSON that says in words what it is; the keys in it under AES-256-GCM with a
 * key made of the passphrase.
 *
 * @param words what a person reads who opens the file years later
 */
export async function lockBackup(
  crypto: SubtleCrypto,
  backup: Backup,
  passphrase: string,
  words: string,
): Promise<string> {
  const salt = globalThis.crypto.getRandomValues(new Uint8Array(SALT_BYTES));
  const iv = globalThis.crypto.getRandomValues(new Uint8Array(IV_BYTES));
  const key = await keyOf(crypto, passphrase, salt, ROUNDS);
  const saltText = toBase64Url(salt);
  const how = { name: 'AES-GCM', iv, additionalData: bound(ROUNDS, saltText) };
  const sealed = await crypto.encrypt(how, key, utf8.encode(JSON.stringify(backup)));
  const file = {
    about: words,
    format: FORMAT,
    rounds: ROUNDS,
    salt: saltText,
    iv: toBase64Url(iv),
    sealed: toBase64Url(new Uint8Array(sealed)),
  };
  return `${JSON.stringify(file, null, 2)}\n`;
}

const problem = (code: KeyProblem['code']): { readonly ok: false; error: KeyProblem } =>
  fail({ code });

function parse(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}

function readFile(text: string): Result<v.InferOutput<typeof FileShape>, KeyProblem> {
  const json = text.length > FILE_MAX ? undefined : parse(text.slice(text.indexOf('{')));
  const format = v.safeParse(v.object({ format: v.string() }), json);
  if (!format.success) return problem('backup-damaged');
  if (format.output.format !== FORMAT) {
    const isOurs = /^towpath-keys\/\d+$/.test(format.output.format);
    return problem(isOurs ? 'backup-newer' : 'backup-damaged');
  }
  const file = v.safeParse(FileShape, json);
  return file.success ? ok(file.output) : problem('backup-damaged');
}

/** Opens a backup file. A wrong passphrase and a changed file look alike: neither opens. */
export async function openBackup(
  crypto: SubtleCrypto,
  text: string,
  passphrase: string,
): Promise<Result<Backup, KeyProblem>> {
  const file = readFile(text);
  if (!file.ok) return file;
  const { rounds, salt, iv, sealed } = file.value;
  const [saltBytes, ivBytes, bytes] = [salt, iv, sealed].map(fromBase64Url);
  if (!saltBytes?.ok || !ivBytes?.ok || !bytes?.ok) return problem('backup-damaged');
  const key = await keyOf(crypto, passphrase, saltBytes.value, rounds);
  const how = { name: 'AES-GCM', iv: ivBytes.value, additionalData: bound(rounds, salt) };
  let inside: ArrayBuffer;
  try {
    inside = await crypto.decrypt(how, key, bytes.value);
  } catch {
    return problem('passphrase-wrong');
  }
  const read = v.safeParse(InsideShape, parse(new TextDecoder().decode(inside)));
  return read.success ? ok(read.output) : problem('backup-damaged');
}
