import type { LogEntry } from '../log/entry.ts';
import type { Person, Told } from '../log/person.ts';
import { firstForbidden } from '../programme/unseen.ts';
import { inOneLine } from '../workshop/one-line.ts';
import { ownId } from './decide.ts';
import { RESPONSE_LIMITS, type Response, type ToldEntry } from './response.ts';

/** What a person decides about a response. Everything that is not chosen stays on the phone. */
export interface Telling {
  /** Ids of the log entries that go along. */
  readonly ids: readonly string[];
  /** Go along with the sessions that have them. */
  readonly niggles: boolean;
  readonly warningSigns: boolean;
  readonly notes: boolean;
  /** What the leader may call the person; nothing: no name goes along. */
  readonly name?: string;
}

/** Whether a session was told: `changed` is put right or rated since it was. */
export type Standing = 'new' | 'told' | 'changed';

/** Tells of sessions whether the leader was told, by what this phone knows was handed on. */
export function standingIn(
  told: readonly Told[],
): (entry: Pick<LogEntry, 'id' | 'feltAt' | 'editedAt'>) => Standing {
  const latest = new Map<string, number>();
  for (const { at, ids } of told)
    for (const id of ids) latest.set(id, Math.max(latest.get(id) ?? at, at));
  return ({ id, feltAt = 0, editedAt = 0 }) => {
    const at = latest.get(id);
    if (at === undefined) return 'new';
    return Math.max(feltAt, editedAt) > at ? 'changed' : 'told';
  };
}

/** The sessions of a programme, newest first. */
export const entriesOf = (log: readonly LogEntry[], programmeId: string): readonly LogEntry[] =>
  log
    .filter(({ programme }) => programme.id === programmeId)
    .sort((one, other) => other.startedAt - one.startedAt);

/** What is ticked at first: what the leader was not told yet, the newest that one response holds. */
export function untold(entries: readonly LogEntry[], told: readonly Told[]): readonly string[] {
  const standing = standingIn(told);
  return entries
    .filter((entry) => standing(entry) !== 'told')
    .slice(0, RESPONSE_LIMITS.entries)
    .map(({ id }) => id);
}

/** A name or a note without what cannot be seen, and no longer than a response takes. */
function tidy(text: string, limit: number, { lines }: { readonly lines: boolean }): string {
  const seen = lines
    ? [...text].filter((letter) => firstForbidden(letter, { lines }) === undefined)
    : [...inOneLine(text)];
  return seen.slice(0, limit).join('').trim();
}

/** A name as it goes along. Empty: none. */
export const tidyName = (name: string): string =>
  tidy(name, RESPONSE_LIMITS.name, { lines: false });

const noteOf = (note = ''): string => tidy(note, RESPONSE_LIMITS.note, { lines: true });

/** One session as it is told: only what is named here, and of that only what was chosen. */
function toldEntry(entry: LogEntry, group: string, telling: Telling): ToldEntry {
  const { effort, effortLater, niggle, warningSign, note } = entry.feeling;
  const told = noteOf(note);
  return {
    id: entry.id,
    week: entry.week,
    session: entry.session,
    ...(entry.group.id === group ? {} : { group: entry.group.id }),
    startedAt: entry.startedAt,
    offsetMinutes: entry.offsetMinutes,
    zone: entry.zone,
    localDate: entry.localDate,
    doneSeconds: entry.doneSeconds,
    activeSeconds: entry.activeSeconds,
    target: entry.target,
    ...(effort === undefined ? {} : { effort }),
    ...(effortLater === undefined ? {} : { effortLater }),
    ...(telling.niggles && niggle !== undefined ? { niggle } : {}),
    ...(telling.warningSigns && warningSign === true ? { warningSign } : {}),
    ...(telling.notes && told !== '' ? { note: told } : {}),
  };
}

/** Somebody who tells, and all that their phone could tell of. */
export interface Teller {
  /** The programme as this phone keeps it, and the group that the person follows. */
  readonly programme: { readonly id: string; readonly revision: number };
  readonly group: string;
  readonly person: Pick<Person, 'secret' | 'told'>;
  /** Every session on this phone, of any programme. */
  readonly log: readonly LogEntry[];
  /** UTC milliseconds. */
  readonly now: number;
}

/**
 * The response that a person chose. What is left out is counted and nothing else is said of it:
 * sessions of this programme that are neither in this response nor were told before.
 */
export function responseOf(
  { programme, group, person, log, now }: Teller,
  telling: Telling,
): Response {
  const all = entriesOf(log, programme.id);
  const standing = standingIn(person.told);
  const ids = new Set(telling.ids);
  const chosen = all.filter(({ id }) => ids.has(id));
  const leftOut = all.filter((entry) => !ids.has(entry.id) && standing(entry) === 'new');
  const name = tidyName(telling.name ?? '');
  return {
    format: 'towpath-response/1',
    programme: { id: ownId(programme.id), revision: programme.revision },
    secret: person.secret,
    ...(name === '' ? {} : { name }),
    group,
    sentAt: now,
    leftOut: leftOut.length,
    entries: chosen.map((entry) => toldEntry(entry, group, telling)).reverse(),
  };
}
