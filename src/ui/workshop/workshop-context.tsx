import {
  createContext,
  type ReactNode,
  useCallback,
  useContext,
  useEffect,
  useLayoutEffect,
  useMemo,
  useState,
} from 'react';
import { useLocation } from 'wouter';
import { type StoreApi, useStore } from 'zustand';

import type { OpenSheet, WorkshopState } from '../../app/workshop-contract.ts';
import { common } from '../../copy/common.ts';
import { shelf } from '../../copy/workshop.ts';
import type { Edit } from '../../domain/workshop/edit.ts';
import type { EditRefusal } from '../../domain/workshop/refusal.ts';
import { useApp } from '../app-context.tsx';
import { Screen } from '../parts/Screen.tsx';

interface Shared {
  readonly store: StoreApi<WorkshopState>;
  /** Why the last edit was not made; nothing: it was. */
  readonly refusal: EditRefusal | undefined;
  readonly edit: (edit: Edit) => void;
}

const WorkshopContext = createContext<Shared | null>(null);

/** The workshop, fetched with its store. Throws what kept it from coming. */
export function WorkshopProvider({ children }: { children: ReactNode }) {
  const app = useApp();
  const [store, setStore] = useState<StoreApi<WorkshopState>>();
  const [failure, setFailure] = useState<{ readonly error: unknown }>();
  useEffect(() => {
    app.workshop().then(
      (made) => setStore(() => made),
      (error: unknown) => setFailure({ error }),
    );
  }, [app]);
  if (failure !== undefined) throw failure.error;
  return store === undefined ? null : <Provided store={store}>{children}</Provided>;
}

function Provided({ store, children }: { store: StoreApi<WorkshopState>; children: ReactNode }) {
  const [refusal, setRefusal] = useState<EditRefusal>();
  useEffect(() => void store.getState().load(), [store]);
  const ready = useStore(store, (state) => state.ready);
  const isUnread = useStore(store, (state) => state.problem !== undefined);
  const edit = useCallback((each: Edit) => setRefusal(store.getState().edit(each)), [store]);
  const shared = useMemo(() => ({ store, refusal, edit }), [store, refusal, edit]);
  if (!ready) return isUnread ? <Unread /> : null;
  return <WorkshopContext value={shared}>{children}</WorkshopContext>;
}

/** What is kept cannot be read at the moment; it is tried again by itself. */
function Unread() {
  return (
    <Screen title={shelf.title} back={{ href: '/start', name: common.back }}>
      <p role="alert" className="notice">
        {shelf.unread}
      </p>
    </Screen>
  );
}

function useShared(): Shared {
  const shared = useContext(WorkshopContext);
  if (shared === null) throw new Error('the workshop outside of WorkshopProvider');
  return shared;
}

/** The workshop's store. Throws outside of `WorkshopProvider`, as all of these do. */
export const useWorkshopStore = (): StoreApi<WorkshopState> => useShared().store;

/** Part of the workshop's state; drawn again only when that part changes. */
export const useWorkshop = <T,>(pick: (state: WorkshopState) => T): T =>
  useStore(useWorkshopStore(), pick);

/** Does one edit to the open sheet. The same function at every drawing. */
export const useEdit = (): ((edit: Edit) => void) => useShared().edit;

/** Why the last edit was not made. */
export const useRefusal = (): EditRefusal | undefined => useShared().refusal;

/** The sheet that an address names, opened; undefined while it is not there. */
export function useSheet(key: string): OpenSheet | undefined {
  const store = useWorkshopStore();
  const [address, go] = useLocation();
  const open = useWorkshop((state) => state.open);
  // Another tab wrote it too: this one goes on as a sheet of its own, under its own address.
  const isApart = open?.wasKey === key;
  useLayoutEffect(() => {
    const now = store.getState().open;
    if (isApart && open !== undefined)
      go(address.replace(`/lead/${key}`, `/lead/${open.key}`), { replace: true });
    else if (now?.key !== key) store.getState().openSheet(key);
  }, [store, key, isApart, open, address, go]);
  return open?.key === key || isApart ? open : undefined;
}
