import type { Row, Stores } from './backup.ts';
import { asEntry, asFollowing } from './backup-shapes.ts';
import type { Stamp } from './merge-records.ts';

/** How recently, and how much, somebody did something in a programme on one phone. */
export type Side = (programme: string) => Stamp;

interface Seen {
  latest: string;
  things: number;
}

/**
 * Group and start carry no time of their own. The phone on which more was done lately, a session,
 * a decision or a pause, is the one that knows them: by its latest day, then by how much there is. Neither ever
 * shrinks when two phones become one.
 */
export function sideOf(stores: Stores): Side {
  const seen = new Map<string, Seen>();
  const see = (programme: string, day: string, things: number): void => {
    const there = seen.get(programme) ?? { latest: '', things: 0 };
    there.latest = there.latest > day ? there.latest : day;
    there.things += things;
    seen.set(programme, there);
  };
  const rows = (name: string): readonly Row[] =>
    Object.hasOwn(stores, name) ? (stores[name] ?? []) : [];
  for (const [, value] of rows('log')) {
    const entry = asEntry(value);
    if (entry !== undefined) see(entry.programme.id, entry.localDate, 1);
  }
  for (const [, value] of rows('following')) {
    const following = asFollowing(value);
    const programme = following?.programmeId ?? '';
    for (const { on } of following?.decisions ?? []) see(programme, on, 1);
    // Pauses that overlap become one, so their number says nothing; their last day stays.
    for (const { from, to } of following?.pauses ?? []) see(programme, to ?? from, 0);
  }
  return (programme) => {
    const { latest, things } = seen.get(programme) ?? { latest: '', things: 0 };
    return [latest, things];
  };
}
