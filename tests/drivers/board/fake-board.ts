import { createStore, type StoreApi } from 'zustand/vanilla';
import type { BoardState } from '../../../src/app/board-contract.ts';
import { ok } from '../../../src/domain/result.ts';

/** A board that shows what it is given and remembers what it was asked. */
export function fakeBoard(
  note: (name: string, ...given: unknown[]) => void,
  given: Partial<BoardState> = {},
): StoreApi<BoardState> {
  const asked =
    <T>(name: string, value: T) =>
    async (...args: unknown[]) => {
      note(name, ...args);
      return ok(value);
    };
  const later =
    (name: string) =>
    async (...args: unknown[]): Promise<void> =>
      note(name, ...args);
  return createStore<BoardState>()(() => ({
    ready: true,
    programmes: [],
    heard: {},
    days: {},
    setups: {},
    goesOn: {},
    went: [],
    intake: { name: 'nothing' },
    load: later('loadBoard'),
    bringIn: later('bringIn'),
    cancelIntake: () => note('cancelIntake'),
    dismissIntake: () => note('dismissIntake'),
    scan: asked('scan', () => undefined),
    addPerson: asked('addPerson', 'hand.1'),
    describe: asked('describe', undefined),
    isSame: asked('isSame', undefined),
    forget: asked('forget', undefined),
    mark: asked('mark', undefined),
    expect: asked('expect', undefined),
    keep: asked('keep', undefined),
    save: asked('save', undefined),
    saveLocked: asked('saveLocked', undefined),
    openLocked: asked('openLocked', {
      programmes: [],
      people: 0,
      newPeople: 0,
      sessions: 0,
      newSessions: 0,
      forgotten: 0,
    }),
    takeIn: asked('takeIn', undefined),
    ...given,
  }));
}
