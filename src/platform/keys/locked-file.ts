import * as v from 'valibot';
import { fromBase64Url, toBase64Url } from '../../domain/exchange/base64url.ts';
import { jsonIn } from '../../domain/exchange/own.ts';
import { tidyPassphrase } from '../../domain/exchange/passphrase.ts';
import type { KeyProblem } from '../../domain/exchange/problem.ts';
import { fail, ok, type Result } from '../../domain/result.ts';

/** What a locked file is: its name, its version, and how long an honest one may be. */
export interface LockedKind {
  /** Without the version. */
  readonly name: string;
  readonly version: number;
  /** Longest file that is looked at, in characters. */
  readonly most: number;
}

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

const FileShape = v.object({
  rounds: v.pipe(v.number(), v.integer(), v.minValue(ROUNDS_LEAST), v.maxValue(ROUNDS_MOST)),
  salt: v.string(),
  iv: v.string(),
  sealed: v.string(),
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

const formatOf = ({ name, version }: LockedKind): string => `${name}/${version}`;

/** Whoever changes how the file is to be opened makes it one that does not open. */
const bound = (kind: LockedKind, rounds: number, salt: string): Uint8Array<ArrayBuffer> =>
  utf8.encode(`${formatOf(kind)} ${rounds} ${salt}`);

/**
 * Bytes as a file that only a passphrase opens: JSON that says in words what it is; in it the bytes
 * under AES-256-GCM with a key made of the passphrase.
 *
 * @param words what a person reads who opens the file years later
 */
export async function lockFile(
  crypto: SubtleCrypto,
  kind: LockedKind,
  inside: Uint8Array<ArrayBuffer>,
  passphrase: string,
  words: string,
): Promise<string> {
  const salt = globalThis.crypto.getRandomValues(new Uint8Array(SALT_BYTES));
  const iv = globalThis.crypto.getRandomValues(new Uint8Array(IV_BYTES));
  const key = await keyOf(crypto, passphrase, salt, ROUNDS);
  const saltText = toBase64Url(salt);
  const how = { name: 'AES-GCM', iv, additionalData: bound(kind, ROUNDS, saltText) };
  const sealed = await crypto.encrypt(how, key, inside);
  const file = {
    about: words,
    format: formatOf(kind),
    rounds: ROUNDS,
    salt: saltText,
    iv: toBase64Url(iv),
    sealed: toBase64Url(new Uint8Array(sealed)),
  };
  return `${JSON.stringify(file, null, 2)}\n`;
}

const problem = (code: KeyProblem['code']): { readonly ok: false; error: KeyProblem } =>
  fail({ code });

function readFile(
  kind: LockedKind,
  text: string,
): Result<v.InferOutput<typeof FileShape>, KeyProblem> {
  const json = text.length > kind.most ? undefined : jsonIn(text.slice(text.indexOf('{')));
  const format = v.safeParse(v.object({ format: v.string() }), json);
  if (!format.success) return problem('backup-damaged');
  if (format.output.format !== formatOf(kind)) {
    const [name, version = ''] = format.output.format.split('/');
    const isOurs = name === kind.name && /^\d+$/.test(version);
    return problem(isOurs ? 'backup-newer' : 'backup-damaged');
  }
  const file = v.safeParse(FileShape, json);
  return file.success ? ok(file.output) : problem('backup-damaged');
}

/** Opens a locked file. A wrong passphrase and a changed file look alike: neither opens. */
export async function openFile(
  crypto: SubtleCrypto,
  kind: LockedKind,
  text: string,
  passphrase: string,
): Promise<Result<Uint8Array<ArrayBuffer>, KeyProblem>> {
  const file = readFile(kind, text);
  if (!file.ok) return file;
  const { rounds, salt, iv, sealed } = file.value;
  const [saltBytes, ivBytes, bytes] = [salt, iv, sealed].map(fromBase64Url);
  if (!saltBytes?.ok || !ivBytes?.ok || !bytes?.ok) return problem('backup-damaged');
  const key = await keyOf(crypto, passphrase, saltBytes.value, rounds);
  const how = { name: 'AES-GCM', iv: ivBytes.value, additionalData: bound(kind, rounds, salt) };
  try {
    return ok(new Uint8Array(await crypto.decrypt(how, key, bytes.value)));
  } catch {
    return problem('passphrase-wrong');
  }
}
