import type { Vault } from '../../app/board-contract.ts';
import type { LeaderKeysPort, Verifier } from '../../app/exchange-ports.ts';
import { fail, ok } from '../../domain/result.ts';
import type { Connection } from '../store/connection.ts';

/** Checks what was signed. Its parts are fetched when the first signature comes. */
export const createVerifier = (): Verifier => ({
  async verify({ key, bytes, signature }) {
    const { isRight, subtle } = await import('./curve.ts');
    const crypto = subtle();
    if (crypto === undefined) return fail('not-secure');
    return ok(await isRight(crypto, key, bytes, signature));
  },
  async digits(key, programmeId) {
    const { digitsOf, subtle } = await import('./curve.ts');
    const crypto = subtle();
    return crypto === undefined ? fail('not-secure') : digitsOf(crypto, key, programmeId);
  },
});

/** The leader's own keys. Their parts are fetched when someone begins to lead. */
export function createKeys(connection: Connection): LeaderKeysPort {
  let opened: Promise<LeaderKeysPort> | undefined;
  const keys = (): Promise<LeaderKeysPort> => {
    opened ??= import('./leader.ts').then(({ createLeaderKeys }) => createLeaderKeys(connection));
    return opened;
  };
  return {
    read: async () => (await keys()).read(),
    make: async (wish) => (await keys()).make(wish),
    restore: async (backup, passphrase, at) => (await keys()).restore(backup, passphrase, at),
    replace: async (wish) => (await keys()).replace(wish),
    saved: async (at) => (await keys()).saved(at),
    sign: async (bytes) => (await keys()).sign(bytes),
    open: async (sealed) => (await keys()).open(sealed),
  };
}

/** Locks with a passphrase. Its parts are fetched when something is first locked or forgotten. */
export function createVault(): Vault {
  const vault = async (): Promise<Vault> => (await import('./vault.ts')).openVault();
  return {
    lock: async (text, passphrase, words) => (await vault()).lock(text, passphrase, words),
    open: async (file, passphrase) => (await vault()).open(file, passphrase),
    digest: async (text) => (await vault()).digest(text),
  };
}
