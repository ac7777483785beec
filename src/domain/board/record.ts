import { counts, isCutShort, type Went } from '../advice/situation.ts';
import { feltOf, type RatingWay } from '../back/session.ts';
import type { LogEntry } from '../log/entry.ts';
import type { Programme } from '../programme/programme.ts';
import type { BoardSession } from './board.ts';
import type { HeardEntry } from './heard.ts';
import { logOf, noonOf, thereEntry, thereWent, wentOf } from './log-of.ts';
import { type BoardPerson, calledBy, toldEntries } from './people.ts';
import { planRef, plansOf } from './plan-ref.ts';
import { sameDays, type There } from './there.ts';

/** All that is known of one person's sessions, whatever day it is. */
export interface PersonRecord {
  /** In the order of time. */
  readonly sessions: readonly BoardSession[];
  readonly way: RatingWay;
  /** What they told, in the order of time. */
  readonly told: readonly HeardEntry[];
  /** Days that only the leader's list knows of. */
  readonly listed: readonly There[];
}

/** A person's ratings are compared in one way: later where they ever say it later, as their phone does. */
const wayOf = (told: readonly HeardEntry[]): RatingWay =>
  told.some(({ effortLater }) => effortLater !== undefined) ? 'later' : 'at-the-end';

/** Each day of the leader's list to one session of that day: the one it names, or the first. */
function paired(
  told: readonly HeardEntry[],
  there: readonly There[],
): ReadonlyMap<There, HeardEntry> {
  const pairs = new Map<There, HeardEntry>();
  for (const day of there) {
    const own = told.filter(({ localDate }) => localDate === day.date);
    const named = own.find(({ week, session }) => week === day.week && session === day.session);
    const entry = named ?? own[0];
    if (entry !== undefined) pairs.set(day, entry);
  }
  return pairs;
}

type Draft<T> = { -readonly [K in keyof T]: T[K] };

/** What is always there, first and in one order: thousands of these are made at once. */
const begun = (went: Went, programme: Programme, target: number): Draft<BoardSession> => ({
  localDate: '',
  week: went.week,
  session: went.session,
  group: went.group.id,
  there: false,
  target,
  sign: false,
  counts: counts(programme, went),
  cutShort: false,
});

function toldSession(
  told: HeardEntry,
  programme: Programme,
  way: RatingWay,
  there: boolean,
): BoardSession {
  const plan = planRef(plansOf(programme), told);
  const went = wentOf(told, plan);
  const session = begun(went, programme, told.target / 10);
  session.localDate = told.localDate;
  session.there = there;
  session.cutShort = isCutShort(programme, went);
  session.id = told.id;
  session.activeSeconds = told.activeSeconds;
  if (plan !== undefined)
    session.donePercent = Math.min(100, Math.round((told.doneSeconds * 100) / plan.seconds));
  const felt = feltOf({ feeling: told }, way);
  if (felt !== undefined) session.felt = felt;
  if (told.niggle !== undefined) session.niggle = told.niggle;
  if (told.warningSign === true) session.sign = true;
  if (told.note !== undefined) session.note = told.note;
  return session;
}

function listedSession(there: There, group: string, programme: Programme): BoardSession {
  const went = thereWent(there, group, planRef(plansOf(programme), { ...there, group }));
  const target = (programme.weeks[there.week - 1]?.effort ?? 0) / 10;
  return { ...begun(went, programme, target), localDate: there.date, there: true };
}

function made(person: BoardPerson, programme: Programme, there: readonly There[]): PersonRecord {
  const told = toldEntries(person);
  const pairs = paired(told, there);
  const seen = new Set(pairs.values());
  const listed = there.filter((day) => !pairs.has(day));
  const way = wayOf(told);
  const own = told.map((entry) => toldSession(entry, programme, way, seen.has(entry)));
  if (listed.length === 0) return { sessions: own, way, told, listed };
  const { group } = calledBy(person);
  const timed = [
    ...own.map((session, n) => ({ session, at: told[n]?.startedAt ?? 0 })),
    ...listed.map((day) => ({
      session: listedSession(day, group, programme),
      at: noonOf(day.date),
    })),
  ].sort((a, b) => a.at - b.at);
  return { sessions: timed.map(({ session }) => session), way, told, listed };
}

interface Kept {
  readonly programme: Programme;
  readonly there: readonly There[];
  readonly others: BoardPerson['others'];
  readonly record: PersonRecord;
}

const known = new WeakMap<BoardPerson['heard'], Kept>();

const isSameList = <T>(a: readonly T[], b: readonly T[]): boolean =>
  a === b || (a.length === b.length && a.every((each, n) => each === b[n]));

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

/**
 * A person's sessions as a log, which is what advice is asked with.
 *
 * @param since those of this local date (ISO 8601) and later; left out: all
 */
export function logIn(
  { told, listed }: PersonRecord,
  person: BoardPerson,
  programme: Programme,
  since = '',
): readonly LogEntry[] {
  const { group } = calledBy(person);
  return [
    ...logOf({ entries: told.filter(({ localDate }) => localDate >= since) }, programme),
    ...listed.filter(({ date }) => date >= since).map((day) => thereEntry(day, group, programme)),
  ].sort((a, b) => a.startedAt - b.startedAt);
}
