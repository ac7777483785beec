import 'fake-indexeddb/auto';
import { createDecipheriv, pbkdf2Sync } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import { PASSPHRASE_MIN } from '../../../src/domain/exchange/passphrase.ts';
import { successionClaims } from '../../../src/domain/exchange/succession.ts';
import { toUtf8 } from '../../../src/domain/exchange/utf8.ts';
import { createVerifier } from '../../../src/platform/keys/index.ts';
import { createLeaderKeys } from '../../../src/platform/keys/leader.ts';
import { connect } from '../../../src/platform/store/connection.ts';
import { everythingIn } from '../../drivers/database.ts';
import { newLeader, nodeVerifies, signWith } from '../../drivers/exchange/leader.ts';

const PASSPHRASE = 'four herons by the gate';
const wish = { passphrase: PASSPHRASE, words: 'Backup of keys.', at: 1_800_000_000_000 };
const message = toUtf8('{"format":"towpath-programme/1"}');

let phones = 0;
const newPhone = (name = `keys-${++phones}`) => {
  const connection = connect(name);
  return { name, connection, keys: createLeaderKeys(connection) };
};

/** The value, or the reason as an error: for what must go well. */
async function good<T>(
  result: Promise<{ ok: true; value: T } | { ok: false; error: { code: string } }>,
): Promise<T> {
  const done = await result;
  if (!done.ok) throw new Error(done.error.code);
  return done.value;
}

describe('keys', () => {
  it('XCHG-17 are made once, are two different pairs, and are there when the app opens again', async () => {
    const { name, keys } = newPhone();
    expect(await good(keys.read())).toBeUndefined();
    const made = await good(keys.make(wish));
    expect(made.sign).toMatch(/^[\w-]{44}$/);
    expect(made.seal).toMatch(/^[\w-]{44}$/);
    expect(made.sign).not.toBe(made.seal);
    expect(await good(keys.make({ ...wish, passphrase: 'another passphrase' }))).toEqual(made);
    expect(await good(newPhone(name).keys.read())).toEqual(made);
  });

  it('XCHG-17 cannot be read out of the phone’s memory, only used', async () => {
    const { name, keys } = newPhone();
    await good(keys.make(wish));
    const stored = await everythingIn(name);
    const [record] = stored.keys as readonly { signWith: CryptoKey; openWith: CryptoKey }[];
    for (const key of [record?.signWith, record?.openWith]) {
      if (key === undefined) throw new Error('no key was stored');
      expect(key).toMatchObject({ type: 'private', extractable: false });
      for (const format of ['jwk', 'pkcs8'] as const)
        await expect(crypto.subtle.exportKey(format, key)).rejects.toThrow();
    }
  });

  it('XCHG-5 what they sign, Node’s cryptography verifies, and the other way round', async () => {
    const { keys } = newPhone();
    const { sign } = await good(keys.make(wish));
    const signature = await good(keys.sign(message));
    expect(nodeVerifies(sign, message, signature)).toBe(true);
    expect(nodeVerifies(sign, toUtf8('other'), signature)).toBe(false);
    const leader = newLeader();
    const claim = { key: leader.sign, bytes: message, signature: signWith(leader, message) };
    const { verify } = createVerifier();
    expect(await verify(claim)).toEqual({ ok: true, value: true });
    expect(await verify({ ...claim, bytes: toUtf8('other') })).toEqual({ ok: true, value: false });
    expect(await verify({ ...claim, key: sign })).toEqual({ ok: true, value: false });
    for (const bad of [
      { key: 'A'.repeat(44) },
      { key: '' },
      { signature: '' },
      { signature: 'AA' },
    ])
      expect(await verify({ ...claim, ...bad })).toEqual({ ok: true, value: false });
  });

  it('XCHG-13 new keys are signed by the old, which are gone', async () => {
    const { keys } = newPhone();
    const first = await good(keys.make(wish));
    const second = await good(keys.replace(wish));
    const third = await good(keys.replace(wish));
    expect(new Set([first.sign, second.sign, third.sign]).size).toBe(3);
    expect(third.was.map(({ sign }) => sign)).toEqual([first.sign, second.sign]);
    for (const { by, bytes, proof } of successionClaims(third.was, third.sign))
      expect(nodeVerifies(by, bytes, proof)).toBe(true);
    expect(nodeVerifies(third.sign, message, await good(keys.sign(message)))).toBe(true);
  });

  it('XCHG-17 there is nothing to sign with, replace or save before they are made', async () => {
    const { keys } = newPhone();
    const none = { ok: false, error: { code: 'no-keys' } };
    expect(await keys.sign(message)).toEqual(none);
    expect(await keys.replace(wish)).toEqual(none);
    expect(await keys.saved(1)).toEqual(none);
    const short = { ...wish, passphrase: `  ${'x'.repeat(PASSPHRASE_MIN - 1)}  ` };
    expect(await keys.make(short)).toEqual({ ok: false, error: { code: 'passphrase-short' } });
  });
});

describe('the backup', () => {
  it('XCHG-17 gives the same keys on another phone, however the passphrase was composed', async () => {
    const passphrase = 'vier häringe am tor';
    const made = await good(newPhone().keys.make({ ...wish, passphrase }));
    const other = newPhone().keys;
    const typed = ` ${passphrase.normalize('NFD')} `;
    const restored = await good(other.restore(made.backup, typed, wish.at + 5));
    expect(restored).toEqual({ ...made, savedAt: wish.at + 5 });
    expect(nodeVerifies(made.sign, message, await good(other.sign(message)))).toBe(true);
  });

  it('XCHG-17 carries the row of keys that were', async () => {
    const { keys } = newPhone();
    await good(keys.make(wish));
    const second = await good(keys.replace(wish));
    const restored = await good(newPhone().keys.restore(second.backup, PASSPHRASE, 1));
    expect(restored.was).toEqual(second.was);
  });

  it('XCHG-17 is PBKDF2 with SHA-256 and AES-256-GCM, as Node opens it', async () => {
    const { backup, sign } = await good(newPhone().keys.make(wish));
    const file = JSON.parse(backup);
    expect(file.about).toBe('Backup of keys.');
    // OWASP Password Storage Cheat Sheet: 600,000 rounds of HMAC-SHA-256 (number from memory).
    expect(file.rounds).toBeGreaterThanOrEqual(600_000);
    const bytes = (text: string): Buffer => Buffer.from(text, 'base64url');
    const key = pbkdf2Sync(PASSPHRASE, bytes(file.salt), file.rounds, 32, 'sha256');
    const sealed = bytes(file.sealed);
    const open = createDecipheriv('aes-256-gcm', key, bytes(file.iv));
    open.setAAD(Buffer.from(`${file.format} ${file.rounds} ${file.salt}`));
    open.setAuthTag(sealed.subarray(-16));
    const plain = Buffer.concat([open.update(sealed.subarray(0, -16)), open.final()]).toString();
    const { x } = JSON.parse(plain).sign;
    expect(Buffer.from(sign, 'base64url').subarray(1).toString('base64url')).toBe(x);
    expect(backup).not.toContain(x);
  });

  it('XCHG-17 opens with its passphrase only, and not after a change', async () => {
    const { backup } = await good(newPhone().keys.make(wish));
    const { keys } = newPhone();
    const file = JSON.parse(backup);
    const code = async (text: string, passphrase = PASSPHRASE): Promise<string> => {
      const result = await keys.restore(text, passphrase, 1);
      return result.ok ? 'opened' : result.error.code;
    };
    const changed = (part: object): string => JSON.stringify({ ...file, ...part });
    expect(await code(backup, 'four herons by the gap')).toBe('passphrase-wrong');
    expect(await code(changed({ rounds: 100_000 }))).toBe('passphrase-wrong');
    expect(await code(changed({ sealed: `${file.sealed.slice(0, -3)}AAA` }))).toBe(
      'passphrase-wrong',
    );
    expect(await code(changed({ rounds: 1 }))).toBe('backup-damaged');
    expect(await code(changed({ rounds: 4e9 }))).toBe('backup-damaged');
    expect(await code(changed({ salt: '***' }))).toBe('backup-damaged');
    expect(await code(changed({ format: 'towpath-keys/2' }))).toBe('backup-newer');
    expect(await code('hello')).toBe('backup-damaged');
    expect(await code('')).toBe('backup-damaged');
    expect(await code(`{${' '.repeat(20_000)}}`)).toBe('backup-damaged');
    expect(await good(keys.read())).toBeUndefined();
    expect(await code(`Saved by Imogen\n${backup}`)).toBe('opened');
  });
});

describe('six digits', () => {
  it('XCHG-13 belong to the key and the programme', async () => {
    const { digits } = createVerifier();
    const [one, other] = [newLeader().sign, newLeader().sign];
    const said = await digits(one, 'heron-loop-spring');
    if (!said.ok) throw new Error(said.error);
    expect(said.value).toMatch(/^\d{3} \d{3}$/);
    expect(await digits(one, 'heron-loop-spring')).toEqual(said);
    expect(await digits(other, 'heron-loop-spring')).not.toEqual(said);
    expect(await digits(one, 'marsh-mile')).not.toEqual(said);
    // Node's PBKDF2 and arithmetic, beside the browser's.
    const salt = 'towpath-digits/1 heron-loop-spring';
    const bits = pbkdf2Sync(one, salt, 600_000, 8, 'sha256').readBigUInt64BE();
    expect(said.value.replace(' ', '')).toBe(String(bits % 1_000_000n).padStart(6, '0'));
  });
});
