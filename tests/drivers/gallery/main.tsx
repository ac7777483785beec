/** Shows one state: `?state=run-run&theme=dark&text=200`. Without one, the list of all. */
import { createRoot } from 'react-dom/client';
import { Towpath } from '../../../src/ui/Towpath.tsx';
import '../../../src/ui/styles/index.css';
import { fakeApp } from '../fake-app.ts';
import { STATES } from './states.ts';

const query = new URLSearchParams(location.search);
const name = query.get('state') ?? '';
const state = STATES[name];
const root = document.getElementById('root');

if (root !== null && state !== undefined) {
  const theme = query.get('theme');
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
      {Object.keys(STATES).map((each) => (
        <li key={each}>
          <a href={`?state=${each}`}>{each}</a>
        </li>
      ))}
    </ul>,
  );
}
