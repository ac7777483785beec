import { readProgramme } from '../programme/read.ts';
import type { Row } from './backup.ts';
import { asProgramme, type ProgrammeRecord } from './backup-shapes.ts';
import { apartId, decide, type Kept, ownId, placeOf, type Sender } from './decide.ts';
import { laterText } from './merge-fields.ts';

/** Why a record of a backup was not taken. */
export type NotTakenWhy =
  /** It has not the shape of such a record. */
  | 'shape'
  /** A later version of the app wrote it. */
  | 'newer'
  /** This version keeps no such records. */
  | 'unknown'
  /** A programme that cannot be read. */
  | 'programme'
  /** A programme whose signature is not right, or could not be verified. */
  | 'signature'
  /** A programme whose leader has replaced the key that signed it. */
  | 'retired'
  /** What lies here under the same key cannot be read, and is left alone. */
  | 'unreadable-here';

/** Of each signed programme of a backup: the keys that its key verifiably came after. */
export type Vouched = Readonly<Record<string, readonly string[]>>;

/** The programmes of a phone after a backup was merged into them, by their ids here. */
export interface MergedProgrammes {
  readonly rows: ReadonlyMap<string, unknown>;
  /** Under which id each programme of the backup is kept here. */
  readonly ids: ReadonlyMap<string, string>;
  readonly notTaken: readonly { readonly key: string; readonly why: NotTakenWhy }[];
}

interface Read {
  readonly record: ProgrammeRecord;
  readonly kept: Kept;
}

function readRecord(key: string, value: unknown): Read | NotTakenWhy {
  const record = asProgramme(value);
  if (record === undefined || record.id !== key) return 'shape';
  const read = readProgramme(record.text);
  if (!read.ok) return read.error[0]?.code === 'file-version' ? 'newer' : 'programme';
  const { id, revision, leader } = read.value;
  if (id !== ownId(key)) return 'shape';
  if (record.key !== undefined && record.key !== leader.sign) return 'signature';
  const { text, key: signer = null, retired = [] } = record;
  return { record, kept: { local: key, id, revision, text, key: signer, retired } };
}

/** Two records of one programme by one sender that say different things: the later revision's. */
function laterOf(a: Read, b: Read): ProgrammeRecord {
  const order = a.kept.revision - b.kept.revision || a.record.cameAt - b.record.cameAt;
  if (order !== 0) return order > 0 ? a.record : b.record;
  return laterText(a.record.text, b.record.text) === a.record.text ? a.record : b.record;
}

/** What stays under an id: the record chosen, with everything that both know of replaced keys. */
function underId(id: string, chosen: ProgrammeRecord, a: Read, retired: readonly string[]): object {
  const all = [...new Set([...(a.record.retired ?? []), ...retired])].filter(
    (key) => key !== chosen.key,
  );
  const { retired: _retired, ...rest } = chosen;
  return { ...a.record, ...rest, id, ...(all.length > 0 ? { retired: all.sort() } : {}) };
}

/** The same text twice is one programme; the copy that is signed says more. */
function sameText(here: Read, next: Read): object {
  const isSigned = here.record.key !== undefined;
  const signed = isSigned ? here : next.record.key === undefined ? here : next;
  const cameAt = Math.min(here.record.cameAt, next.record.cameAt);
  return underId(here.kept.local, { ...signed.record, cameAt }, here, []);
}

/**
 * The programmes of a backup beside those that are here, by the same rules as one that comes in:
 * only the same key, or one that it signed, takes a programme's place, and what nothing vouches
 * for is kept apart under an id of its own. Signatures have been verified before.
 */
export function mergeProgrammes(
  here: readonly Row[],
  given: readonly Row[],
  vouched: Vouched,
): MergedProgrammes {
  const rows = new Map<string, unknown>(here);
  const ids = new Map<string, string>();
  const notTaken: { key: string; why: NotTakenWhy }[] = [];
  const kept = here.flatMap(([key, value]) => {
    const read = readRecord(key, value);
    return typeof read === 'string' ? [] : [read];
  });

  const keep = (next: Read): NotTakenWhy | undefined => {
    const { local } = next.kept;
    const same = kept.find((each) => each.kept.text === next.kept.text);
    if (same !== undefined) {
      ids.set(local, same.kept.local);
      rows.set(same.kept.local, sameText(same, next));
      return undefined;
    }
    const sender: Sender = { ...next.kept, was: vouched[local] ?? [] };
    const decision = decide(
      sender,
      kept.map((each) => each.kept),
    );
    const about = kept.find((each) => each.kept.local === decision.about?.local);
    switch (decision.verdict.kind) {
      case 'retired':
        ids.set(local, decision.about?.local ?? local);
        return 'retired';
      case 'update':
      case 'rotated':
      case 'conflict':
      case 'older':
        if (about !== undefined)
          replace(about, next, placeOf(sender, decision, 'keep', []).retired);
        return undefined;
      default: {
        const id = rows.has(local) ? apartId(next.kept.id, [...rows.keys()]) : local;
        ids.set(local, id);
        // Which keys were replaced is said by signatures, never by the file alone.
        const { retired: _said, ...record } = next.record;
        const retired = [...sender.was];
        rows.set(id, { ...record, id, ...(retired.length > 0 ? { retired } : {}) });
        return undefined;
      }
    }
  };

  function replace(about: Read, next: Read, retired: readonly string[]): void {
    const { local } = about.kept;
    ids.set(next.kept.local, local);
    const now = readRecord(local, rows.get(local));
    const before = typeof now === 'string' ? about : now;
    rows.set(local, underId(local, laterOf(before, next), before, retired));
  }

  for (const [key, value] of given) {
    const next = readRecord(key, value);
    const why = typeof next === 'string' ? next : keep(next);
    if (why !== undefined) notTaken.push({ key, why });
  }
  return { rows, ids, notTaken };
}
