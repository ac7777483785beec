import type { Row } from '../domain/exchange/backup.ts';
import { asProgramme } from '../domain/exchange/backup-shapes.ts';
import { incomingOf } from '../domain/exchange/incoming.ts';
import type { Vouched } from '../domain/exchange/merge-programmes.ts';
import type { NotTaken } from '../domain/exchange/restore.ts';
import { senderOf } from './exchange-judge.ts';
import type { Verifier } from './exchange-ports.ts';

interface Verified {
  /** Programmes whose signature is right, and those without one. */
  readonly rows: readonly Row[];
  readonly vouched: Vouched;
  readonly refused: readonly NotTaken[];
}

/**
 * The programmes of a backup, their signatures verified anew: a file may have been changed. One
 * that lies here already with the same text and key was verified when it came.
 */
export async function verifiedRows(
  given: readonly Row[],
  here: readonly Row[],
  verifier: Verifier,
): Promise<Verified> {
  const known = new Set(here.map(([, value]) => fingerprint(value)));
  const rows: Row[] = [];
  const vouched: Record<string, readonly string[]> = {};
  const refused: NotTaken[] = [];
  for (const [key, value] of given) {
    const record = asProgramme(value);
    if (record?.key === undefined || known.has(fingerprint(value))) {
      rows.push([key, value]);
      continue;
    }
    const was = await keysBefore(record.text, record.signature, verifier);
    if (was === undefined) refused.push({ store: 'programmes', key, why: 'signature' });
    else {
      vouched[key] = was;
      rows.push([key, value]);
    }
  }
  return { rows, vouched, refused };
}

function fingerprint(value: unknown): string {
  const record = asProgramme(value);
  return record === undefined ? '' : JSON.stringify([record.text, record.key ?? null]);
}

/** Keys that its key verifiably came after; nothing when the signature is not right. */
async function keysBefore(
  text: string,
  signature: string | undefined,
  verifier: Verifier,
): Promise<readonly string[] | undefined> {
  if (signature === undefined) return undefined;
  const incoming = incomingOf(text, signature);
  // What is no programme is told as that, with its reason, when it is looked at.
  if (!incoming.ok) return incoming.error.code === 'programme' ? [] : undefined;
  const sender = await senderOf(incoming.value, verifier);
  return sender.ok ? sender.value.was : undefined;
}
