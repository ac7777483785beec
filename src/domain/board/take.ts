import { ownId } from '../exchange/decide.ts';
import type { Response } from '../exchange/response.ts';
import { AHEAD_MS, CAPACITY } from './capacity.ts';
import { forgottenUntil } from './forget.ts';
import { type Heard, heardKey } from './heard.ts';
import { byStart, mergeHeard } from './merge.ts';
import type { BoardSetup } from './setup.ts';

/** What one response says of the person who sent it. */
export function heardOf({
  programme,
  secret,
  name,
  group,
  sentAt,
  leftOut,
  entries,
}: Response): Heard {
  const programmeId = ownId(programme.id);
  return {
    format: 'towpath-heard/1',
    key: heardKey(programmeId, secret),
    programmeId,
    person: secret,
    told: {
      at: sentAt,
      ...(name === undefined ? {} : { name }),
      group,
      revision: programme.revision,
      leftOut,
    },
    entries: entries
      .map((entry) => ({ ...entry, group: entry.group ?? group, toldAt: sentAt }))
      .sort(byStart),
  };
}

/** Why a response was not taken in. */
export type NotTaken = 'other-programme' | 'ahead' | 'forgotten' | 'full' | 'again';

/** What became of one response. */
export type Outcome =
  | {
      readonly taken: true;
      readonly programmeId: string;
      readonly person: string;
      /** Sessions that nobody had told of before. */
      readonly sessions: number;
    }
  | { readonly taken: false; readonly why: NotTaken };

/** By what a response is judged. */
export interface Terms {
  /** The clock of this device, UTC milliseconds. */
  readonly now: number;
  /** Own ids of programmes that were sent from this device. */
  readonly programmes: ReadonlySet<string>;
  /** How many people each programme has here, by its own id. */
  readonly people: ReadonlyMap<string, number>;
  /** Digest of `heardKey(programmeId, person)`, by that key, for everybody in the responses. */
  readonly digests: ReadonlyMap<string, string>;
}

/** What is kept of those who are in the responses; more may be there. */
export interface Kept {
  readonly heard: readonly Heard[];
  readonly setups: readonly BoardSetup[];
}

/** What is to be written, and what to say of each response. */
export interface TakenIn {
  /** Those that changed, as they are now. */
  readonly heard: readonly Heard[];
  /** One for each response, in their order. */
  readonly outcomes: readonly Outcome[];
}

/**
 * What is known of one person with what somebody else knows of them; nothing when both together
 * have more sessions than a board holds.
 */
export function joinHeard(here: Heard | undefined, more: Heard): Heard | undefined {
  const merged = here === undefined ? more : mergeHeard(here, more);
  return merged !== here && merged.entries.length > CAPACITY.sessions ? undefined : merged;
}

/** Keys of the people who sent some responses, each once. */
export const keysOf = (responses: readonly Response[]): readonly string[] => [
  ...new Set(responses.map(({ programme, secret }) => heardKey(ownId(programme.id), secret))),
];

/**
 * Takes responses in, or says why not. Any order gives the same board: a later response completes
 * an earlier one, and an older one that comes late adds what was missing.
 */
export function takeIn(kept: Kept, responses: readonly Response[], terms: Terms): TakenIn {
  const here = new Map(kept.heard.map((heard) => [heard.key, heard]));
  const setups = new Map(kept.setups.map((setup) => [setup.programmeId, setup]));
  const people = new Map(terms.people);
  const changed = new Map<string, Heard>();

  function outcomeOf(response: Response): Outcome {
    const heard = heardOf(response);
    const { key, programmeId, person } = heard;
    if (!terms.programmes.has(programmeId)) return left('other-programme');
    if (response.sentAt > terms.now + AHEAD_MS) return left('ahead');
    const until = forgottenUntil(setups.get(programmeId), terms.digests.get(key));
    if (until !== undefined && response.sentAt <= until) return left('forgotten');
    const before = here.get(key);
    const count = people.get(programmeId) ?? 0;
    if (before === undefined && count >= CAPACITY.people) return left('full');
    const next = joinHeard(before, heard);
    if (next === undefined) return left('full');
    if (next === before) return left('again');
    if (before === undefined) people.set(programmeId, count + 1);
    here.set(key, next);
    changed.set(key, next);
    const sessions = next.entries.length - (before?.entries.length ?? 0);
    return { taken: true, programmeId, person, sessions };
  }

  const outcomes = responses.map(outcomeOf);
  return { heard: [...changed.values()], outcomes };
}

const left = (why: NotTaken): Outcome => ({ taken: false, why });
