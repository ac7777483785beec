import { createStore, type StoreApi } from 'zustand/vanilla';
import type { PublishingState, ReceivedState } from '../../../src/app/exchange-contract.ts';
import { fail, ok } from '../../../src/domain/result.ts';

type Note = (name: string, ...given: unknown[]) => void;

/** Receiving as a screen sees it: whatever state is given, and what was asked of it noted. */
export const fakeReceived = (
  note: Note,
  state: Partial<ReceivedState> = {},
): StoreApi<ReceivedState> =>
  createStore<ReceivedState>(() => ({
    received: { name: 'nothing' },
    came: {},
    open: async (text) => note('received.open', text),
    openFile: async (file) => note('received.openFile', file.type),
    scan: async () => fail({ code: 'camera-none' }),
    accept: async (choice) => {
      note('received.accept', choice);
      return ok(undefined);
    },
    dismiss: () => note('received.dismiss'),
    ...state,
  }));

/** Sending as a screen sees it. */
export function fakePublishing(
  note: Note,
  state: Partial<PublishingState> = {},
): StoreApi<PublishingState> {
  const asked =
    (name: string) =>
    async (...given: unknown[]) => {
      note(`publishing.${name}`, ...given);
      return fail({ code: 'no-keys' } as const);
    };
  return createStore<PublishingState>(() => ({
    keys: { name: 'none' },
    sent: {},
    load: async () => note('publishing.load'),
    makeKeys: asked('makeKeys'),
    saveBackup: asked('saveBackup'),
    restore: asked('restore'),
    replaceKeys: asked('replaceKeys'),
    publish: asked('publish'),
    again: asked('again'),
    unsigned: async () => fail({ code: 'damaged' }),
    give: async (sending) => note('publishing.give', sending.fileName),
    ...state,
  }));
}
