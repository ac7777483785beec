import type { LeaderKeysPort, NewKeys, OwnKeys } from '../../app/exchange-ports.ts';
import { isLongEnough } from '../../domain/exchange/passphrase.ts';
import type { KeyProblem } from '../../domain/exchange/problem.ts';
import {
  SUCCESSION_MAX,
  type Succession,
  successionBytes,
} from '../../domain/exchange/succession.ts';
import { fail, ok, type Result } from '../../domain/result.ts';
import type { Connection } from '../store/connection.ts';
import type { LeaderRecord } from '../store/schema.ts';
import { type Backup, lockBackup, openBackup } from './backup.ts';
import { lock, makePairs, publicOf, publicText, readOut, signBytes, subtle } from './curve.ts';

const KEY = 'leader';
const problem = (code: KeyProblem['code']): { readonly ok: false; error: KeyProblem } =>
  fail({ code });

/** Without the private halves, which stay here. */
const seen = ({ signWith: _s, openWith: _o, format: _f, ...keys }: LeaderRecord): OwnKeys => keys;

/** The leader's keys in the phone's database. */
export function createLeaderKeys(connection: Connection): LeaderKeysPort {
  async function record(): Promise<Result<LeaderRecord | undefined, KeyProblem>> {
    const read = await connection.read(['keys'], (tx) => tx.objectStore('keys').get(KEY));
    return read.ok ? ok(read.value as LeaderRecord | undefined) : problem('not-kept');
  }

  /** Kept to the disk before anything is signed with it. */
  async function keep(next: LeaderRecord): Promise<Result<OwnKeys, KeyProblem>> {
    const job = async (tx: { objectStore(name: 'keys'): unknown }): Promise<void> => {
      const store = tx.objectStore('keys') as { put(v: unknown, k: string): Promise<unknown> };
      await store.put(next, KEY);
    };
    const written = await connection.write(['keys'], job, true);
    return written.ok ? ok(seen(next)) : problem('not-kept');
  }

  /** New pairs, their backup, and the private halves such that they cannot be read out again. */
  async function makeRecord(
    crypto: SubtleCrypto,
    { passphrase, words, at }: NewKeys,
    before?: LeaderRecord,
  ): Promise<LeaderRecord> {
    const { sign, seal } = await makePairs(crypto);
    const secret = await readOut(crypto, sign.privateKey, seal.privateKey);
    const signText = await publicText(crypto, sign.publicKey);
    const was = before === undefined ? [] : await succeed(crypto, before, signText);
    const backup = await lockBackup(crypto, { ...secret, was, madeAt: at }, passphrase, words);
    return {
      format: 'towpath-leader/1',
      sign: signText,
      seal: await publicText(crypto, seal.publicKey),
      was,
      madeAt: at,
      backup,
      ...(await lock(crypto, secret)),
    };
  }

  return {
    async read() {
      const found = await record();
      return found.ok ? ok(found.value && seen(found.value)) : found;
    },
    async make(wish) {
      const crypto = subtle();
      if (crypto === undefined) return problem('not-secure');
      if (!isLongEnough(wish.passphrase)) return problem('passphrase-short');
      const found = await record();
      if (!found.ok) return found;
      if (found.value !== undefined) return ok(seen(found.value));
      return keep(await makeRecord(crypto, wish));
    },
    async replace(wish) {
      const crypto = subtle();
      if (crypto === undefined) return problem('not-secure');
      if (!isLongEnough(wish.passphrase)) return problem('passphrase-short');
      const found = await record();
      if (!found.ok) return found;
      if (found.value === undefined) return problem('no-keys');
      return keep(await makeRecord(crypto, wish, found.value));
    },
    async restore(backup, passphrase, at) {
      const crypto = subtle();
      if (crypto === undefined) return problem('not-secure');
      const opened = await openBackup(crypto, backup, passphrase);
      if (!opened.ok) return opened;
      const restored = await fromBackup(crypto, opened.value, backup, at);
      return restored === undefined ? problem('backup-damaged') : keep(restored);
    },
    async saved(at) {
      const found = await record();
      if (!found.ok) return found;
      return found.value === undefined ? problem('no-keys') : keep({ ...found.value, savedAt: at });
    },
    async sign(bytes) {
      const crypto = subtle();
      if (crypto === undefined) return problem('not-secure');
      const found = await record();
      if (!found.ok) return found;
      if (found.value === undefined) return problem('no-keys');
      return ok(await signBytes(crypto, found.value.signWith, bytes));
    },
    async open(sealed) {
      const found = await record();
      if (!found.ok) return fail({ code: 'not-kept' });
      if (found.value === undefined) return fail({ code: 'no-keys' });
      const { openSealed } = await import('./seal.ts');
      const opened = await openSealed(found.value, sealed);
      return opened.ok ? opened : fail({ code: opened.error });
    },
  };
}

/** The row of keys that were, with the one that is being replaced at its end. */
async function succeed(
  crypto: SubtleCrypto,
  before: LeaderRecord,
  next: string,
): Promise<readonly Succession[]> {
  const proof = await signBytes(crypto, before.signWith, successionBytes(before.sign, next));
  return [...before.was, { sign: before.sign, proof }].slice(-SUCCESSION_MAX);
}

async function fromBackup(
  crypto: SubtleCrypto,
  opened: Backup,
  backup: string,
  at: number,
): Promise<LeaderRecord | undefined> {
  const [sign, seal] = [publicOf(opened.sign), publicOf(opened.seal)];
  if (sign === undefined || seal === undefined) return undefined;
  try {
    const kept = await lock(crypto, opened);
    const { was, madeAt } = opened;
    // A file that was just read is one that the leader has.
    return { format: 'towpath-leader/1', sign, seal, was, madeAt, savedAt: at, backup, ...kept };
  } catch {
    return undefined;
  }
}
