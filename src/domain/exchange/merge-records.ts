import type { Feeling, LogEntry } from '../log/entry.ts';
import type { Decision, Following, Pause } from '../log/following.ts';
import { isoDate } from '../programme/calendar.ts';
import { dayOf } from '../programme/dates.ts';
import type { PersonRecord } from './backup-shapes.ts';
import { canonical, compareStamps, isSame, laterText, mergeFields } from './merge-fields.ts';

/** How recently somebody did something in a programme, on one side: see `sideOf`. */
export type Stamp = readonly (number | string)[];

/**
 * One session from two phones. What was put right by hand goes by `editedAt`, how it felt by
 * `feltAt`: an answer given on one phone and a distance mended on the other are both kept, and so
 * is what only one of them has.
 */
export function mergeEntries(a: LogEntry, b: LogEntry): LogEntry {
  const edited = [a.editedAt ?? 0, b.editedAt ?? 0] as const;
  const felt = [a.feltAt ?? 0, b.feltAt ?? 0] as const;
  const byHand = compareStamps([edited[0], felt[0]], [edited[1], felt[1]]);
  const byFeeling = compareStamps([felt[0], edited[0]], [felt[1], edited[1]]);
  const feeling: Feeling = mergeFields(a.feeling, b.feeling, byFeeling);
  const feltAt = Math.max(...felt);
  // The later `editedAt` comes with what goes by it.
  return { ...mergeFields(a, b, byHand), feeling, ...(feltAt > 0 ? { feltAt } : {}) };
}

/** The gentler way back is chosen where the two disagree. */
const GENTLE: readonly Pause['why'][] = ['other', 'holiday', 'illness'];
const gentler = (a: Pause['why'], b: Pause['why']): Pause['why'] =>
  GENTLE.indexOf(a) >= GENTLE.indexOf(b) ? a : b;

const dayBefore = (date: string): string => isoDate((dayOf(date) ?? 0) - 1);

interface Closed extends Pause {
  readonly to: string;
}
const isClosed = (pause: Pause): pause is Closed => pause.to !== undefined;

const byStart = (a: Pause, b: Pause): number => (a.from < b.from ? -1 : a.from > b.from ? 1 : 0);

/** Pauses that have ended, those that overlap as one. */
function joined(pauses: readonly Closed[]): readonly Closed[] {
  const merged: Closed[] = [];
  for (const pause of [...pauses].sort(byStart)) {
    const last = merged.at(-1);
    if (last === undefined || last.to < pause.from) merged.push(pause);
    else
      merged[merged.length - 1] = {
        ...mergeFields(last, pause, 0),
        from: last.from,
        to: [last.to, pause.to].sort().at(-1) ?? last.to,
        why: gentler(last.why, pause.why),
      };
  }
  return merged;
}

/**
 * Pauses of both, in order. Those that overlap are one. One that is open on one phone and lies in
 * one that has ended on the other has ended; of the others only the last stays open.
 */
export function mergePauses(a: readonly Pause[], b: readonly Pause[]): readonly Pause[] {
  const closed = joined([...a, ...b].filter(isClosed));
  const opened = new Map<string, Pause>();
  for (const pause of [...a, ...b]) {
    const { from } = pause;
    if (isClosed(pause) || closed.some((each) => each.from <= from && from <= each.to)) continue;
    const there = opened.get(from) ?? pause;
    const why = gentler(there.why, pause.why);
    opened.set(from, { ...mergeFields(there, pause, 0), why });
  }
  const all: readonly Pause[] = [...closed, ...opened.values()].sort(byStart);
  return all.map((pause, n) => {
    const next = all[n + 1];
    return isClosed(pause) || next === undefined ? pause : { ...pause, to: dayBefore(next.from) };
  });
}

const hasAll = (list: readonly Decision[], others: readonly Decision[]): boolean => {
  const there = new Set(list.map(canonical));
  return others.every((each) => there.has(canonical(each)));
};

/** What was decided on one day: the list that has it all, else the newer side's has the last word. */
function mergeDay(
  a: readonly Decision[],
  b: readonly Decision[],
  order: number,
): readonly Decision[] {
  const [aHas, bHas] = [hasAll(a, b), hasAll(b, a)];
  if (aHas !== bHas) return aHas ? a : b;
  const last = order > 0 ? a : order < 0 ? b : laterText(a, b);
  const first = last === a ? b : a;
  const there = new Set(last.map(canonical));
  return [...first.filter((each) => !there.has(canonical(each))), ...last];
}

function mergeDecisions(
  a: readonly Decision[],
  b: readonly Decision[],
  order: number,
): readonly Decision[] {
  const days = [...new Set([...a, ...b].map(({ on }) => on))].sort();
  return days.flatMap((day) => {
    const of = (list: readonly Decision[]) => list.filter(({ on }) => on === day);
    return mergeDay(of(a), of(b), order);
  });
}

/** How somebody goes through one programme, from two phones. */
export function mergeFollowing(a: Following, b: Following, order: number): Following {
  return {
    ...mergeFields(a, b, order),
    pauses: mergePauses(a.pauses, b.pauses),
    decisions: mergeDecisions(a.decisions, b.decisions, order),
  };
}

/** Sorted by time; what was told twice stands once. */
function mergeTold(a: PersonRecord['told'], b: PersonRecord['told']): PersonRecord['told'] {
  const byText = new Map([...a, ...b].map((told) => [canonical(told), told]));
  return [...byText]
    .sort(([x, p], [y, q]) => p.at - q.at || (x < y ? -1 : 1))
    .map(([, told]) => told);
}

const firstTold = ({ told }: PersonRecord): number =>
  told.reduce((least, { at }) => Math.min(least, at), Number.POSITIVE_INFINITY);

/** Who somebody is to a leader: the secret that the leader has known longest is kept. */
export function mergePeople(a: PersonRecord, b: PersonRecord): PersonRecord {
  const known = firstTold(b) - firstTold(a);
  const order = Number.isNaN(known) ? 0 : Math.sign(known);
  return {
    ...mergeFields(a, b, order),
    told: mergeTold(a.told, b.told),
    // Once said, the more careful way stays.
    ...(a.under16 || b.under16 ? { under16: true } : {}),
  };
}

/** The newer of two states by a moment that they carry; of the same moment by their text. */
export function newerOf<T>(a: T, b: T, momentOf: (value: T) => Stamp): T {
  const order = compareStamps(momentOf(a), momentOf(b));
  if (order !== 0) return order > 0 ? a : b;
  return isSame(a, b) ? a : laterText(a, b);
}
