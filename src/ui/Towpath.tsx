import { Component, type ReactNode, useEffect } from 'react';
import { Route, Router, Switch, useLocation } from 'wouter';
import { useHashLocation } from 'wouter/use-hash-location';
import type { App } from '../app/contract.ts';
import { common } from '../copy/common.ts';
import { afterPaint } from './after-paint.ts';
import { AppProvider, useApp, useProgrammes, useSettings } from './app-context.tsx';
import { LaterScreens, loadLater } from './later.ts';
import { isOver, isUnderWay } from './parts/session-state.ts';
import { Groups } from './screens/Groups.tsx';
import { Weeks } from './screens/Weeks.tsx';
import { Start, Welcome } from './screens/Welcome.tsx';

/** All screens over one app. Addresses live in the fragment: any host and path will do. */
export function Towpath({ app }: { app: App }) {
  return (
    <AppProvider app={app}>
      <Router hook={useHashLocation}>
        <Appearance />
        <FollowSession />
        <Failure>
          <Screens />
        </Failure>
      </Router>
    </AppProvider>
  );
}

function Screens() {
  const ready = useProgrammes((p) => p.ready);
  useEffect(() => {
    if (!ready) return;
    // After the first page: a failure here is told by the screen that needs the piece.
    return afterPaint(() => void loadLater().catch(() => undefined));
  }, [ready]);
  return (
    <Switch>
      <Route path="/" component={Start} />
      <Route path="/start" component={Welcome} />
      <Route path="/p/:id/groups" component={Groups} />
      <Route path="/p/:id" component={Weeks} />
      <Route component={LaterScreens} />
    </Switch>
  );
}

/** The page follows the session: to the running screen when it starts, to the rating when it ends. */
function FollowSession() {
  const session = useApp().session;
  const [, go] = useLocation();
  useEffect(
    () =>
      session.subscribe((now, before) => {
        if (now.view.purpose !== 'session') return;
        const [is, was] = [now.view.state, before.view.state];
        if (isUnderWay(is) && !isUnderWay(was)) go('/run');
        const ended = isOver(is) && now.entryId !== undefined;
        if (ended && (!isOver(was) || before.entryId === undefined))
          go(`/felt/${now.entryId}`, { replace: true });
      }),
    [session, go],
  );
  return null;
}

const PAPER = { light: '#faf6ec', dark: '#14120d' } as const;

/** Light or dark, by choice or as the phone is set; the page's frame takes the same colour. */
function Appearance() {
  const choice = useSettings((s) => s.appearance);
  useEffect(() => {
    const prefers = window.matchMedia('(prefers-color-scheme: dark)');
    const apply = () => {
      const theme = choice === 'auto' ? (prefers.matches ? 'dark' : 'light') : choice;
      document.documentElement.dataset.theme = theme;
      document.documentElement.dataset.choice = choice;
      for (const meta of document.querySelectorAll('meta[name="theme-color"]'))
        meta.setAttribute('content', PAPER[theme]);
    };
    apply();
    prefers.addEventListener('change', apply);
    return () => prefers.removeEventListener('change', apply);
  }, [choice]);
  return null;
}

/** A page that fails takes nothing with it: the sound and the journal are elsewhere. */
class Failure extends Component<{ children: ReactNode }, { failed: boolean }> {
  override state = { failed: false };
  static getDerivedStateFromError() {
    return { failed: true };
  }
  override render() {
    if (!this.state.failed) return this.props.children;
    return (
      <div className="page">
        <main className="stack">
          <h1>{common.broken.title}</h1>
          <p>{common.broken.body}</p>
          <div>
            <button
              type="button"
              className="button primary"
              onClick={() => this.setState({ failed: false })}
            >
              {common.broken.again}
            </button>
          </div>
        </main>
      </div>
    );
  }
}
