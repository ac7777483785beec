import { act, screen } from '@testing-library/react';
import { describe, expect, it } from 'vitest';
import { pocket } from '../../src/copy/pocket.ts';
import { running as words } from '../../src/copy/running.ts';
import { settings } from '../../src/copy/settings.ts';
import { pocketVerdict } from '../../src/ui/parts/pocket-verdict.ts';
import { SETTINGS, viewAt } from '../drivers/fake-app.ts';
import { record, WREN } from '../drivers/gallery/states.ts';
import { askedFor, show, user } from './show.tsx';

const running = { ...viewAt(WREN, 41_000), purpose: 'pocket-check' as const };

describe('the pocket check', () => {
  it('UI-18 explains itself first, and starts inside the tap', async () => {
    const app = show('/pocket');
    for (const step of pocket.steps) expect(await screen.findByText(step)).toBeDefined();
    await user.click(screen.getByRole('button', { name: pocket.start }));
    expect(askedFor(app, 'start')).toHaveLength(1);
  });

  it('PLAY-27 asks for no lock while the sound of the check is late', async () => {
    const app = show('/pocket', {
      view: { ...running, late: true },
      session: { preparePocketCheck: async () => {} },
    });
    const said = await screen.findByText(words.lateKeep);
    expect(screen.queryByText(pocket.runningBody)).toBeNull();
    act(() => app.session.setState({ view: running }));
    expect(said.textContent).toBe(pocket.runningBody);
    expect(said.getAttribute('role')).toBe('status');
  });

  it('UI-18 says what the phone did and what to change', async () => {
    const app = show('/pocket', { view: running, session: { preparePocketCheck: async () => {} } });
    expect(await screen.findByText(pocket.runningBody)).toBeDefined();
    const after = { ...SETTINGS, pocketCheck: { ...record, longestSilenceMs: 14_200 } };
    act(() => {
      app.settings.setState({ settings: after });
      app.session.setState({ view: { ...running, state: 'finished' } });
    });
    expect(await screen.findByText(pocket.gaps('14 seconds'))).toBeDefined();
    for (const line of pocket.advice.android) expect(screen.getByText(line)).toBeDefined();
  });

  it('UI-18 leaving the page stops a check that runs', async () => {
    const app = show('/pocket', { view: running, session: { preparePocketCheck: async () => {} } });
    await screen.findByText(pocket.runningBody);
    act(() => {
      window.location.hash = '#/settings';
    });
    await screen.findByRole('heading', { level: 1, name: settings.title });
    expect(askedFor(app, 'end')).toHaveLength(1);
  });

  it('UI-18 the verdict is the worst thing that happened', () => {
    expect(pocketVerdict(record)).toBe('good');
    expect(pocketVerdict({ ...record, hiddenMs: 9000 })).toBe('not-locked');
    expect(pocketVerdict({ ...record, longestSilenceMs: 3001, hiddenMs: 9000 })).toBe('gaps');
    expect(pocketVerdict({ ...record, heardToEnd: false, longestSilenceMs: 9000 })).toBe('stopped');
  });

  it('UI-18 the record can be read in full before it is copied', async () => {
    show('/pocket', { settings: { pocketCheck: record } });
    await user.click(await screen.findByText(pocket.record));
    expect(screen.getByText(/"longestSilenceMs": 320/)).toBeDefined();
    expect(screen.getByRole('button', { name: pocket.copy })).toBeDefined();
  });
});
