import { counts, isCutShort } from '../advice/situation.ts';
import { feltOf, type RatingWay } from '../back/session.ts';
import type { LogEntry } from '../log/entry.ts';
import type { Programme } from '../programme/programme.ts';
import type { BoardSession } from './board.ts';
import { logOf, thereEntry } from './log-of.ts';
import { type BoardPerson, calledBy, toldEntries } from './people.ts';
import { planRef } from './plan-ref.ts';
import { sameDays, type There } from './there.ts';

/** A session with what the rules of advice say of it. */
export interface Judged {
  readonly session: BoardSession;
  /** It counts as one of its week. */
  readonly counts: boolean;
  readonly cutShort: boolean;
}

/** All that is known of one person's sessions, whatever day it is. */
export interface PersonRecord {
  /** As a log: what advice is asked with. */
  readonly log: readonly LogEntry[];
  /** In the order of time. */
  readonly judged: readonly Judged[];
  readonly way: RatingWay;
}

/** A person's ratings are compared in one way: later where they ever say it later, as their phone does. */
const wayOf = (log: readonly LogEntry[]): RatingWay =>
  log.some(({ feeling }) => feeling.effortLater !== undefined) ? 'later' : 'at-the-end';

/** Each day of the leader's list to one session of that day: the one it names, or the first. */
function paired(log: readonly LogEntry[], there: readonly There[]): ReadonlyMap<There, LogEntry> {
  const pairs = new Map<There, LogEntry>();
  for (const day of there) {
    const own = log.filter(({ localDate }) => localDate === day.date);
    const named = own.find(({ week, session }) => week === day.week && session === day.session);
    const entry = named ?? own[0];
    if (entry !== undefined) pairs.set(day, entry);
  }
  return pairs;
}

function sessionOf(
  entry: LogEntry,
  programme: Programme,
  way: RatingWay,
  there: boolean,
): BoardSession {
  const { id, localDate, week, session, group, feeling, how } = entry;
  const plan = how === 'there' ? undefined : planRef(programme, { week, session, group: group.id });
  const felt = feltOf(entry, way);
  return {
    ...(how !== 'there' && { id, activeSeconds: entry.activeSeconds }),
    localDate,
    week,
    session,
    group: group.id,
    there,
    ...(plan && {
      donePercent: Math.min(100, Math.round((entry.doneSeconds * 100) / plan.seconds)),
    }),
    ...(felt !== undefined && { felt }),
    target: entry.target / 10,
    ...(feeling.niggle && { niggle: feeling.niggle }),
    sign: feeling.warningSign === true,
    ...(feeling.note !== undefined && { note: feeling.note }),
  };
}

function made(person: BoardPerson, programme: Programme, there: readonly There[]): PersonRecord {
  const own = logOf({ entries: toldEntries(person) }, programme);
  const pairs = paired(own, there);
  const { group } = calledBy(person);
  const listed = there.filter((day) => !pairs.has(day));
  const seen = new Set(pairs.values());
  const log = [...own, ...listed.map((day) => thereEntry(day, group, programme))].sort(
    (a, b) => a.startedAt - b.startedAt,
  );
  const way = wayOf(own);
  const judged = log.map((entry): Judged => {
    const isListed = entry.how === 'there';
    return {
      session: sessionOf(entry, programme, way, isListed || seen.has(entry)),
      counts: counts(programme, entry),
      cutShort: !isListed && isCutShort(programme, entry),
    };
  });
  return { log, judged, way };
}

interface Kept {
  readonly programme: Programme;
  readonly there: readonly There[];
  readonly others: BoardPerson['others'];
  readonly record: PersonRecord;
}

const known = new WeakMap<BoardPerson['heard'], Kept>();

const isSameList = <T>(a: readonly T[], b: readonly T[]): boolean =>
  a.length === b.length && a.every((each, n) => each === b[n]);

/** A person's sessions; the same person in the same programme, on the same days, is read once. */
export function recordOf(
  person: BoardPerson,
  programme: Programme,
  there: readonly There[],
): PersonRecord {
  const kept = known.get(person.heard);
  if (
    kept !== undefined &&
    kept.programme === programme &&
    sameDays(kept.there, there) &&
    isSameList(kept.others, person.others)
  )
    return kept.record;
  const record = made(person, programme, there);
  known.set(person.heard, { programme, there, others: person.others, record });
  return record;
}
