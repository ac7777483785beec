import type { ToldEntry } from '../exchange/response.ts';

/** One session as somebody told it, with when it was told: of two that have its id the later holds. */
export interface HeardEntry extends ToldEntry {
  /** Always there: the group in which it was done. */
  readonly group: string;
  /** `sentAt` of the response that it came with. */
  readonly toldAt: number;
}

/** What the latest response of a person said of them. */
export interface ToldOfSelf {
  /** `sentAt` of that response. */
  readonly at: number;
  readonly name?: string;
  /** Id of the group that they follow. */
  readonly group: string;
  /** Of the programme, as their phone had it. */
  readonly revision: number;
  /** Sessions of the programme that they have not told of. */
  readonly leftOut: number;
}

/** What the leader wrote of a person. It goes before what they told. */
export interface KnownOf {
  /** When it was written, UTC milliseconds. */
  readonly at: number;
  readonly name?: string;
  readonly group?: string;
  /** Somebody who was written in by hand is this other person, who has told since. */
  readonly same?: string;
}

/**
 * What a leader's device knows of one person in one programme. Two of the same key become one by
 * `mergeHeard`, in any order and any number of times.
 */
export interface Heard {
  readonly format: 'towpath-heard/1';
  /** `heardKey(programmeId, person)` */
  readonly key: string;
  /** The programme's own id. */
  readonly programmeId: string;
  /** The secret of the person's responses; of somebody written in by hand an id of the leader's. */
  readonly person: string;
  /** Nothing: nobody has heard from them. */
  readonly told?: ToldOfSelf;
  readonly known?: KnownOf;
  /** In the order of `startedAt`, then `id`; each id once. */
  readonly entries: readonly HeardEntry[];
}

/** The place of a person among all programmes' people. Neither part holds a space. */
export const heardKey = (programmeId: string, person: string): string => `${programmeId} ${person}`;

/** Whether somebody was written in by the leader. A secret never begins like this: see `HAND`. */
export const isByHand = ({ person }: Pick<Heard, 'person'>): boolean => person.startsWith(HAND);

/** Begins the ids of people who were written in by hand. A point is in no participant's secret. */
export const HAND = 'hand.';

/** When they last told anything, or the leader last wrote of them: UTC milliseconds, 0 for never. */
export const lastSaid = ({ told, known, entries }: Heard): number =>
  entries.reduce(
    (last, { toldAt }) => Math.max(last, toldAt),
    Math.max(told?.at ?? 0, known?.at ?? 0),
  );
