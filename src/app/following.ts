import { createStore, type StoreApi } from 'zustand/vanilla';
import type { Following } from '../domain/log/following.ts';
import type { FollowingState } from './contract.ts';
import type { Store } from './ports.ts';
import type { Queue } from './queue.ts';

/** How the person goes through each programme. Changes count at once and are written in order. */
export function createFollowing(store: Store, queue: Queue): StoreApi<FollowingState> {
  return createStore<FollowingState>((set, get) => ({
    ready: false,
    following: {},
    async change(next) {
      set({ following: { ...get().following, [next.programmeId]: next } });
      await queue.push(() => store.putFollowing(next));
    },
  }));
}

/** Shows what is stored, as far as this version can read it; what was changed since stays. */
export function showFollowing(
  following: StoreApi<FollowingState>,
  stored: readonly Following[],
): void {
  const read = stored.filter(({ format }) => format === 'towpath-following/1');
  const known = Object.fromEntries(read.map((each) => [each.programmeId, each]));
  const { following: changed } = following.getState();
  following.setState({ ready: true, following: { ...known, ...changed } });
}
