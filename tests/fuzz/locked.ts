import { webcrypto } from 'node:crypto';
import { KEY_CODES } from '../../src/domain/exchange/problem.ts';
import { type LockedKind, lockFile, openFile } from '../../src/platform/keys/locked-file.ts';
import type { Decoder } from './decoders.ts';
import { hostileJson } from './hostile.ts';
import { polluted, scratchText } from './scratch.ts';

const KIND: LockedKind = { name: 'towpath-keys', version: 1, most: 16 * 1024 };
const PASSPHRASE = 'four herons by the gate';
const INSIDE = 'what is inside';

/** A file under a passphrase. Making the key takes most of a second, so there are few of these. */
export async function lockedDecoder(): Promise<Decoder> {
  const crypto = webcrypto.subtle as unknown as SubtleCrypto;
  const file = await lockFile(
    crypto,
    KIND,
    new TextEncoder().encode(INSIDE),
    PASSPHRASE,
    'A file.',
  );
  // Rounds as few as a file may ask for, so that more cases can be looked at.
  const quick = JSON.stringify({ ...JSON.parse(file), rounds: 100_000 });
  return {
    name: 'locked file',
    share: 1,
    make: (random) => ({
      kind: 'locked',
      content: random.chance(0.7)
        ? hostileJson(JSON.parse(random.pick([file, quick, quick])), random)
        : scratchText(random.pick([file, quick]), random),
    }),
    async look({ content }) {
      const opened = await openFile(crypto, KIND, String(content), PASSPHRASE);
      if (!opened.ok) return KEY_CODES.includes(opened.error.code) ? polluted() : `unknown reason`;
      const same = new TextDecoder().decode(opened.value) === INSIDE;
      return same ? polluted() : 'opened as something else';
    },
  };
}
