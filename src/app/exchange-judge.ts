import type { Acceptance, Decision, Kept, Sender } from '../domain/exchange/decide.ts';
import type { Incoming } from '../domain/exchange/incoming.ts';
import type { ExchangeProblem } from '../domain/exchange/problem.ts';
import type { Programme } from '../domain/programme/programme.ts';
import { fail, ok, type Result } from '../domain/result.ts';
import type { ProgrammesState } from './contract.ts';
import type { Came, Preview } from './exchange-contract.ts';
import type { ExchangePorts, Verifier } from './exchange-ports.ts';
import { decide, ownId, placeOf, readProgramme, successionClaims } from './exchange-reader.ts';
import type { StoredProgramme } from './ports.ts';

/** A programme whose sender is known, beside what is here. */
export interface Judged {
  readonly programme: Programme;
  readonly sender: Sender;
  readonly signature?: string;
  readonly decision: Decision;
  readonly stored: readonly StoredProgramme[];
}

/** Which keys this one came after: from the newest back, as far as each change was signed. */
async function verifiedKeys(
  { claim, was }: Incoming,
  verifier: Verifier,
): Promise<readonly string[]> {
  if (claim === undefined) return [];
  const keys: string[] = [];
  for (const { by, bytes, proof } of [...successionClaims(was, claim.key)].reverse()) {
    const right = await verifier.verify({ key: by, bytes, signature: proof });
    if (!right.ok || !right.value) break;
    keys.unshift(by);
  }
  return keys;
}

/** The sender of a programme, its signatures verified. A wrong one is a reason to take nothing. */
export async function senderOf(
  incoming: Incoming,
  verifier: Verifier,
): Promise<Result<Sender, ExchangeProblem>> {
  const { programme, claim } = incoming;
  if (claim !== undefined) {
    const right = await verifier.verify(claim);
    if (!right.ok) return fail({ code: right.error });
    if (!right.value) return fail({ code: 'signature' });
  }
  const { id, revision, text } = programme;
  const was = await verifiedKeys(incoming, verifier);
  return ok({ id, revision, text, key: claim?.key ?? null, was });
}

/** What is here of a programme's id, as far as this version can read it. */
const keptOf = (stored: readonly StoredProgramme[], id: string): readonly Kept[] =>
  stored.flatMap(({ id: local, text, key = null, retired = [] }) => {
    if (ownId(local) !== id) return [];
    const read = readProgramme(text);
    if (!read.ok) return [];
    return [{ local, id, revision: read.value.revision, text, key, retired }];
  });

/** Verifies a programme that came in and compares it with what is here. Stores nothing. */
export async function judge(
  incoming: Incoming,
  { verifier, store }: Pick<ExchangePorts, 'verifier' | 'store'>,
): Promise<Result<Judged, ExchangeProblem>> {
  const sender = await senderOf(incoming, verifier);
  if (!sender.ok) return sender;
  const stored = await store.programmes();
  if (!stored.ok) return fail({ code: 'store' });
  return ok({
    programme: incoming.programme,
    sender: sender.value,
    ...(incoming.claim === undefined ? {} : { signature: incoming.claim.signature }),
    decision: decide(sender.value, keptOf(stored.value, sender.value.id)),
    stored: stored.value,
  });
}

/** "revision 2, from Imogen, received Mon 20:14", of one that is here. */
export function cameOf({ id, text, cameAt, key }: StoredProgramme): Came | undefined {
  const read = readProgramme(text);
  if (!read.ok) return undefined;
  const { revision, title, leader, id: own } = read.value;
  return {
    id,
    revision,
    title,
    leader: leader.name,
    at: cameAt,
    signed: key !== undefined,
    apart: id !== own,
  };
}

/** What is shown of a programme before anything is stored. */
export async function previewOf(
  { programme, sender, decision, stored }: Judged,
  verifier: Verifier,
  { chosen, programmes }: Pick<ProgrammesState, 'chosen' | 'programmes'>,
): Promise<Preview> {
  const about = stored.find(({ id }) => id === decision.about?.local);
  const came = about && cameOf(about);
  const { verdict, choices } = decision;
  const asksDigits = verdict.kind === 'key-changed' && sender.key !== null;
  const digits = asksDigits ? await verifier.digits(sender.key, programme.id) : undefined;
  const group = about && chosen[about.id];
  const isGone = group !== undefined && !programme.groups.some(({ id }) => id === group);
  const before = programmes.find(({ id }) => id === about?.id);
  return {
    programme,
    verdict,
    choices,
    signed: sender.key !== null,
    ...(came === undefined ? {} : { stored: came }),
    ...(isGone ? { groupGone: before?.groups.find(({ id }) => id === group)?.name ?? group } : {}),
    ...(digits?.ok ? { digits: digits.value } : {}),
  };
}

/** What is stored of a programme that was accepted. */
export function recordOf(
  { sender, decision, signature, stored }: Judged,
  choice: Acceptance,
  at: number,
): StoredProgramme {
  const ids = stored.map(({ id }) => id);
  const { local, retired } = placeOf(sender, decision, choice, ids);
  return {
    id: local,
    text: sender.text,
    cameAt: at,
    ...(sender.key === null || signature === undefined ? {} : { key: sender.key, signature }),
    ...(retired.length > 0 ? { retired } : {}),
  };
}
