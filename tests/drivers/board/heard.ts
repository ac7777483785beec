/** People who told their leader, made up; the same every time. */
import type { Heard, HeardEntry } from '../../../src/domain/board/heard.ts';
import { heardKey } from '../../../src/domain/board/heard.ts';
import { NIGGLE_PLACES, type Niggle } from '../../../src/domain/log/entry.ts';
import type { Programme } from '../../../src/domain/programme/programme.ts';
import { layOut } from '../../../src/domain/timeline/lay-out.ts';

const DAY_MS = 86_400_000;

export interface EntryWish {
  /** Both from 1. */
  readonly week: number;
  readonly session: number;
  readonly group: string;
  /** From Monday 1 to Sunday 7. */
  readonly weekday?: number;
  readonly effort?: number;
  /** Of the plan, 0 to 1. */
  readonly share?: number;
  readonly niggle?: Niggle;
  readonly warningSign?: boolean;
  readonly note?: string;
  readonly toldAt?: number;
}

/** A session of a programme that begins on a Monday, at 17:30 UTC, as it was told. */
export function heardEntry(programme: Programme, id: string, wish: EntryWish): HeardEntry {
  const { week, session, group, weekday = 2 * session, effort, share = 1 } = wish;
  const found = programme.weeks[week - 1];
  const plans = found?.sessions[group] ?? [];
  const plan = plans[session - 1] ?? plans[0];
  if (found === undefined || plan === undefined) throw new Error('no such session');
  const monday = Date.parse(`${programme.startDate}T17:30:00Z`);
  const startedAt = monday + (7 * (week - 1) + weekday - 1) * DAY_MS;
  const doneSeconds = Math.round((layOut(plan.plan).total / 1000) * share);
  return {
    id,
    week,
    session,
    group,
    startedAt,
    offsetMinutes: 0,
    zone: 'Europe/London',
    localDate: new Date(startedAt).toISOString().slice(0, 10),
    doneSeconds,
    activeSeconds: doneSeconds,
    target: found.effort,
    toldAt: wish.toldAt ?? startedAt + 4 * 3600_000,
    ...(effort === undefined ? {} : { effort }),
    ...(wish.niggle === undefined ? {} : { niggle: wish.niggle }),
    ...(wish.warningSign === true ? { warningSign: true as const } : {}),
    ...(wish.note === undefined ? {} : { note: wish.note }),
  };
}

export interface PersonWish {
  readonly person: string;
  readonly name?: string;
  readonly group: string;
  readonly leftOut?: number;
  readonly entries: readonly EntryWish[];
  /** Where it is not the last of the entries. */
  readonly toldAt?: number;
}

/** Somebody who told. */
export function heardPerson(programme: Programme, wish: PersonWish): Heard {
  const { person, name, group, leftOut = 0 } = wish;
  const entries = wish.entries
    .map((each, n) => heardEntry(programme, `${person.slice(0, 20)}-${n + 1}`, each))
    .sort((a, b) => a.startedAt - b.startedAt);
  const at = wish.toldAt ?? Math.max(0, ...entries.map(({ toldAt }) => toldAt));
  return {
    format: 'towpath-heard/1',
    key: heardKey(programme.id, person),
    programmeId: programme.id,
    person,
    told: { at, group, revision: 1, leftOut, ...(name === undefined ? {} : { name }) },
    entries,
  };
}

/** Somebody of whom the leader's own list alone knows. */
export const handPerson = (
  programme: Programme,
  { person, name, group }: Pick<PersonWish, 'person' | 'group'> & { readonly name: string },
): Heard => ({
  format: 'towpath-heard/1',
  key: heardKey(programme.id, person),
  programmeId: programme.id,
  person,
  known: { at: Date.parse(`${programme.startDate}T09:00:00Z`), name, group },
  entries: [],
});

export const NAMES = [
  'Ada',
  'Bram',
  'Carys',
  'Dilys',
  'Edda',
  'Fenna',
  'Gwil',
  'Hedda',
  'Ivo',
  'Jory',
  'Keziah',
  'Linnea',
  'Merryn',
  'Nils',
  'Orla',
  'Petra',
  'Quill',
  'Rosa',
  'Sanne',
  'Tegen',
  'Ulla',
  'Vikram',
  'Wenna',
  'Xanthe',
  'Yara',
  'Zoë',
  'Anselm',
  'Britta',
  'Corin',
  'Delphine',
] as const;

/** Numbers that look like chance and are the same every time (Park and Miller's generator). */
function chances(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 48_271) % 2_147_483_647;
    return state / 2_147_483_647;
  };
}

const SECRET = '0123456789abcdefghijkm';

/** A secret that looks like one, 22 signs. */
export const secretOf = (n: number): string => `${SECRET.slice(String(n).length)}${n}`;

/** The whole of a club: people in every group, weeks done, some silent, some hurt. */
export function club(programme: Programme, people: number, weeks: number): readonly Heard[] {
  const chance = chances(7 + people);
  return Array.from({ length: people }, (_, n): Heard => {
    const group = programme.groups[n % programme.groups.length]?.id ?? '';
    const name = NAMES[Math.floor(n / programme.groups.length) % NAMES.length];
    const entries = Array.from({ length: weeks }, (__, w) => w + 1).flatMap((week) => {
      if (chance() < 0.2) return [];
      const times = 1 + Math.floor(chance() * 3);
      const meant = (programme.weeks[week - 1]?.effort ?? 50) / 10;
      return Array.from({ length: times }, (___, s): EntryWish => {
        const felt = Math.min(10, Math.max(0, Math.round(meant + (chance() + chance() - 0.9) * 4)));
        const roll = chance();
        return {
          week,
          session: s + 1,
          group,
          ...(chance() < 0.9 ? { effort: felt } : {}),
          ...(roll < 0.08 ? { share: 0.3 + chance() * 0.4 } : {}),
          ...(roll > 0.95
            ? {
                niggle: {
                  place: NIGGLE_PLACES[n % NIGGLE_PLACES.length] ?? 'knee',
                  severity: 1 as const,
                },
              }
            : {}),
          ...(roll > 0.993 ? { warningSign: true } : {}),
        };
      });
    });
    return heardPerson(programme, {
      person: secretOf(n),
      group,
      entries,
      ...(name === undefined || n % 11 === 10 ? {} : { name: people > 60 ? `${name} ${n}` : name }),
      ...(entries.length === 0 ? { toldAt: Date.parse(`${programme.startDate}T20:00:00Z`) } : {}),
      leftOut: n % 13 === 12 ? 2 : 0,
    });
  });
}
