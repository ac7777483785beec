/** Shows one state: `?state=run-run&theme=dark&text=200`. Without one, the list of all. */
import type { ReactElement } from 'react';
import { createRoot } from 'react-dom/client';
import { Towpath } from '../../../src/ui/Towpath.tsx';
import '../../../src/ui/styles/index.css';
import { Router } from 'wouter';
import { useHashLocation } from 'wouter/use-hash-location';
import type { App } from '../../../src/app/contract.ts';
import { createPackSource } from '../../../src/platform/audio/pack.ts';
import { AppProvider } from '../../../src/ui/app-context.tsx';
import manifest from '../../../src/voice/pack/manifest.json?url';
import audio from '../../../src/voice/pack/voice.bin?url';
import { fakeApp } from '../fake-app.ts';
import { STATES } from './states.ts';
import { PIECES } from './workshop.tsx';

const query = new URLSearchParams(location.search);
const name = query.get('state') ?? '';
const state = STATES[name];
const piece = PIECES[name];
const root = document.getElementById('root');
const theme = query.get('theme');

if (root !== null && piece !== undefined) {
  document.documentElement.dataset.theme = theme ?? 'light';
  const loaded = await createPackSource({ manifest, audio }).load(() => undefined);
  const app = fakeApp(loaded.ok ? { voice: loaded.value } : { pack: { name: loaded.error } });
  createRoot(root).render(<Alone app={app} piece={piece()} />);
} else if (root !== null && state !== undefined) {
  const text = query.get('text');
  if (text !== null) document.documentElement.style.fontSize = `${Number(text) * 1.0625}%`;
  history.replaceState(null, '', `${location.pathname}${location.search}#${state.path}`);
  const settings = {
    ...state.options.settings,
    ...(theme === 'dark' ? { appearance: 'dark' as const } : {}),
  };
  createRoot(root).render(<Towpath app={fakeApp({ ...state.options, settings })} />);
  const { press } = state;
  if (press !== undefined) {
    const look = setInterval(() => {
      const button = [...document.querySelectorAll('button')].find((b) => b.textContent === press);
      if (button === undefined) return;
      clearInterval(look);
      button.click();
    }, 20);
  }
} else if (root !== null) {
  createRoot(root).render(
    <ul>
      {[...Object.keys(STATES), ...Object.keys(PIECES)].map((each) => (
        <li key={each}>
          <a href={`?state=${each}`}>{each}</a>
        </li>
      ))}
    </ul>,
  );
}

function Alone({ app, piece }: { app: App; piece: ReactElement }) {
  return (
    <AppProvider app={app}>
      <Router hook={useHashLocation}>{piece}</Router>
    </AppProvider>
  );
}
