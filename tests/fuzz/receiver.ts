import { createStore } from 'zustand/vanilla';
import type { ProgrammesState } from '../../src/app/contract.ts';
import type { Received } from '../../src/app/exchange-contract.ts';
import { createReceived } from '../../src/app/exchange-stores.ts';
import type { StoredProgramme } from '../../src/app/ports.ts';
import { exchangeProblem } from '../../src/copy/exchange.ts';
import { INFLATED_MAX } from '../../src/domain/exchange/deflate.ts';
import { EXCHANGE_CODES } from '../../src/domain/exchange/problem.ts';
import { ok } from '../../src/domain/result.ts';
import { createVerifier } from '../../src/platform/keys/index.ts';
import { NO_BOARDS } from '../drivers/board/no-boards.ts';
import { NO_KEYS } from '../drivers/exchange/no-keys.ts';
import { NO_RECORDS } from '../drivers/records/no-records.ts';
import { MemorySheets } from '../drivers/workshop/memory-sheets.ts';
import type { Case, Seeds } from './mutate.ts';

/** The app's own way of receiving, over a memory that nothing may be written to. */
export function createReceiver(seeds: Seeds) {
  const writes: unknown[] = [];
  const stored: readonly StoredProgramme[] = [
    { id: 'heron-loop-spring', text: seeds.texts[2] ?? '', cameAt: 0, key: seeds.leader.sign },
  ];
  const programmes = createStore<ProgrammesState>(() => ({
    ready: true,
    programmes: [],
    chosen: { 'heron-loop-spring': 'wren' },
    chooseGroup: async () => {},
    open: async () => ({ ok: false, error: [] }),
  }));
  const received = createReceived({
    ports: async () => ({
      keys: NO_KEYS,
      address: () => '',
      // Digits are slow on purpose, and have nothing to do with what came in.
      verifier: { ...createVerifier(), digits: async () => ok('123 456') },
      codes: {
        draw: async () => undefined,
        inPicture: async () => ({ ok: false, error: 'picture' }),
        watch: async () => ({ ok: false, error: 'camera-none' }),
      },
      store: {
        programmes: async () => ok(stored),
        putProgramme: async (programme) => {
          writes.push(programme);
          return ok(undefined);
        },
        sent: async () => ok([]),
        putSent: async () => ok(undefined),
      },
      sheets: new MemorySheets(),
      seal: async () => ({ ok: false, error: 'seal' }),
      words: { canShare: () => false, share: async () => false },
      records: NO_RECORDS,
      ...NO_BOARDS,
    }),
    clock: { now: () => 0 },
    programmes,
  });

  return {
    writes,
    /** What the app made of a case. */
    async give(item: Case): Promise<Received> {
      received.getState().dismiss();
      if ('text' in item) await received.getState().open(item.text);
      else await received.getState().openFile(new Blob([item.file]));
      return received.getState().received;
    },
  };
}

const signedTexts = (seeds: Seeds): ReadonlySet<string> => new Set(seeds.texts);

/** What is wrong with what the app made of a case; nothing when all is as it must be. */
export function complaint(state: Received, seeds: Seeds): string | undefined {
  if (Object.keys(Object.prototype).length > 0 || 'polluted' in {}) return 'prototype changed';
  if (state.name === 'refused') {
    const { code } = state.problem;
    if (code === 'not-loaded') return 'something was thrown';
    if (!EXCHANGE_CODES.includes(code)) return `unknown reason ${code}`;
    return exchangeProblem(state.problem).length > 20 ? undefined : `no sentence for ${code}`;
  }
  if (state.name === 'parts') return state.have.length < state.of ? undefined : 'parts without end';
  if (state.name !== 'preview') return `left as ${state.name}`;
  const { programme, signed, verdict } = state.preview;
  if (programme.text.length > INFLATED_MAX) return 'too long a text';
  const isLeaders = signed && programme.leader.sign === seeds.leader.sign;
  if (isLeaders && !signedTexts(seeds).has(programme.text))
    return 'a forged text was taken for signed';
  const needsLeader = ['update', 'conflict', 'older', 'rotated'].includes(verdict.kind);
  return needsLeader && !isLeaders ? `${verdict.kind} without the leader’s key` : undefined;
}
