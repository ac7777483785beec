import { createStore, type StoreApi } from 'zustand/vanilla';
import { mergeFollowing } from '../domain/exchange/merge-records.ts';
import type { Following } from '../domain/log/following.ts';
import type { FollowingState } from './contract.ts';
import type { Store } from './ports.ts';
import type { Queue } from './queue.ts';

/** How each programme is gone through, and how what was stored comes into it. */
export interface FollowingHolder {
  readonly store: StoreApi<FollowingState>;
  /** What was stored, as far as this version can read it; changes from before it came are added. */
  show(stored: readonly Following[]): void;
}

/** How the person goes through each programme. Changes count at once and are written in order. */
export function createFollowing(db: Store, queue: Queue): FollowingHolder {
  /** From before the stored ones were read: written alone they would wipe pauses and decisions. */
  let early: Following[] | undefined = [];

  const store = createStore<FollowingState>((set, get) => {
    const keep = (next: Following): Promise<void> => {
      set({ following: { ...get().following, [next.programmeId]: next } });
      return queue.push(() => db.putFollowing(next));
    };
    return {
      ready: false,
      following: {},
      async change(next) {
        if (early === undefined) return keep(next);
        early = [...early.filter(({ programmeId }) => programmeId !== next.programmeId), next];
        set({ following: { ...get().following, [next.programmeId]: next } });
      },
    };
  });

  return {
    store,
    show(stored) {
      const read = stored.filter(({ format }) => format === 'towpath-following/1');
      const known = Object.fromEntries(read.map((each) => [each.programmeId, each]));
      const changes = early ?? [];
      early = undefined;
      store.setState({ ready: true, following: { ...store.getState().following, ...known } });
      for (const each of changes) {
        const there = known[each.programmeId];
        // What was done here has the last word.
        void store.getState().change(there === undefined ? each : mergeFollowing(there, each, -1));
      }
    },
  };
}
