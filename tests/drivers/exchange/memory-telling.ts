import type { StoreApi } from 'zustand/vanilla';
import type { App } from '../../../src/app/contract.ts';
import type { Code } from '../../../src/app/exchange-contract.ts';
import { openTelling } from '../../../src/app/tell.ts';
import type { TellState } from '../../../src/app/tell-contract.ts';
import type { Person } from '../../../src/domain/log/person.ts';
import { fail, ok } from '../../../src/domain/result.ts';
import { createVerifier } from '../../../src/platform/keys/index.ts';
import { sealFor } from '../../../src/platform/keys/seal.ts';
import { NO_BOARDS } from '../board/no-boards.ts';
import { NO_RECORDS } from '../records/no-records.ts';
import { MemorySheets } from '../workshop/memory-sheets.ts';
import { EVENING } from './answers.ts';
import { NO_KEYS } from './no-keys.ts';

export interface TellingWish {
  readonly people?: readonly Person[];
  /** Ids of programmes that came signed. */
  readonly signed?: readonly string[];
  /** What the share sheet answers; nothing: there is none. */
  readonly sheet?: boolean;
  readonly canKeep?: boolean;
  /** UTC milliseconds. */
  readonly now?: () => number;
}

/** What was written, handed on and shown. */
export interface TellingSeen {
  readonly people: Map<string, Person>;
  readonly files: { readonly name: string; readonly type: string; readonly text: string }[];
  readonly words: string[];
  /** What was drawn as codes. */
  readonly drawn: string[];
}

export const seenByTelling = (people: readonly Person[] = []): TellingSeen => ({
  people: new Map(people.map((person) => [person.programmeId, person])),
  files: [],
  words: [],
  drawn: [],
});

const CODE: Code = { size: 29, path: 'M4 4h1v1h-1z', version: 1 };
let secrets = 0;

/** The app's own telling, with its real seals, over a memory. */
export function memoryTelling(
  { programmes, log }: Pick<App, 'programmes' | 'log'>,
  { signed = [], sheet, canKeep = true, now = () => EVENING }: TellingWish,
  seen: TellingSeen,
): Promise<StoreApi<TellState>> {
  const lost = fail({ code: 'full', detail: 'in a test' } as const);
  return openTelling({
    programmes,
    log,
    clock: { now },
    newId: () => (++secrets).toString(16).padStart(32, '0'),
    store: {
      people: async () => ok([...seen.people.values()]),
      putPerson: async (person) => {
        if (!canKeep) return lost;
        seen.people.set(person.programmeId, person);
        return ok(undefined);
      },
    },
    share: {
      give: async (name, type, content) =>
        void seen.files.push({ name, type, text: typeof content === 'string' ? content : '' }),
    },
    exchange: async () => ({
      verifier: createVerifier(),
      keys: NO_KEYS,
      codes: {
        draw: async (text) => {
          seen.drawn.push(text);
          return CODE;
        },
        inPicture: async () => fail('picture'),
        watch: async () => fail('camera-none'),
      },
      store: {
        programmes: async () =>
          ok(signed.map((id) => ({ id, text: '', cameAt: 0, key: 'A'.repeat(44) }))),
        putProgramme: async () => ok(undefined),
        sent: async () => ok([]),
        putSent: async () => ok(undefined),
      },
      sheets: new MemorySheets(),
      records: NO_RECORDS,
      ...NO_BOARDS,
      seal: sealFor,
      words: {
        canShare: () => sheet !== undefined,
        share: async (text) => {
          seen.words.push(text);
          return sheet === true;
        },
      },
      address: () => 'https://club.example/app/',
    }),
  });
}
