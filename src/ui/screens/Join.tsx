import { useEffect } from 'react';
import { useLocation, useParams } from 'wouter';
import { common } from '../../copy/common.ts';
import { join } from '../../copy/join.ts';
import { useApp, useReceived } from '../app-context.tsx';
import { JoinPreview } from '../parts/JoinPreview.tsx';
import { JoinWays } from '../parts/JoinWays.tsx';
import { Screen } from '../parts/Screen.tsx';

/** A programme that came from somebody: opened, looked at, and kept only when the person says so. */
export function Join() {
  const { code } = useParams<{ code?: string }>();
  const store = useApp().received;
  const state = useReceived((r) => r.received);
  const [, go] = useLocation();

  useEffect(() => {
    if (code === undefined || code === '') return;
    // Out of the address, so that it is neither kept in the history nor shown to others.
    go('/join', { replace: true });
    void store.getState().open(`#/join/${code}`);
  }, [code, store, go]);

  useEffect(() => {
    if (state.name !== 'kept') return;
    store.getState().dismiss();
    go(`/p/${state.id}`, { replace: true });
  }, [state, store, go]);

  // Parts stay: the next one may come as a link of its own.
  useEffect(
    () => () => {
      if (store.getState().received.name !== 'parts') store.getState().dismiss();
    },
    [store],
  );

  return (
    <Screen
      title={state.name === 'preview' ? state.preview.programme.title : join.title}
      sub={join.sub}
      back={{ href: '/start', name: common.back }}
    >
      <div role="status">{state.name === 'reading' && <p>{join.reading}</p>}</div>
      {state.name === 'preview' ? <JoinPreview preview={state.preview} /> : <JoinWays />}
    </Screen>
  );
}
