import { cleanup, configure, render } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { afterEach, beforeAll } from 'vitest';
import { loadLater } from '../../src/ui/later.ts';
import { Towpath } from '../../src/ui/Towpath.tsx';
import { type FakeApp, type FakeOptions, fakeApp } from '../drivers/fake-app.ts';

// A busy machine is not a broken screen.
configure({ asyncUtilTimeout: 30_000 });
beforeAll(async () => {
  await loadLater();
  await import('../../src/ui/workshop/index.ts');
});
afterEach(() => {
  cleanup();
  window.history.replaceState(null, '', '#/');
});

export const user = userEvent.setup();

/** Opens the app at an address, over an app that only remembers what it is asked. */
export function show(path: string, options: FakeOptions = {}): FakeApp {
  window.history.replaceState(null, '', `#${path}`);
  const app = fakeApp(options);
  render(<Towpath app={app} />);
  return app;
}

/** Where the app is now. */
export const here = (): string => window.location.hash.slice(1);

/** What was asked of the app under a name, without the name. */
export const askedFor = (app: FakeApp, name: string): unknown[][] =>
  app.asked.filter(([asked]) => asked === name).map(([, ...args]) => args);
