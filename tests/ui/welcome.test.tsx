import { screen } from '@testing-library/react';
import { describe, expect, it } from 'vitest';
import { common } from '../../src/copy/common.ts';
import { inOtherApp } from '../../src/copy/in-other-app.ts';
import { install } from '../../src/copy/install.ts';
import { installSteps } from '../../src/copy/install-steps.ts';
import { join } from '../../src/copy/join.ts';
import { programmeProblem } from '../../src/copy/programme.ts';
import { records } from '../../src/copy/records.ts';
import { running } from '../../src/copy/running.ts';
import { unfinished } from '../../src/copy/unfinished.ts';
import { welcome } from '../../src/copy/welcome.ts';
import type { ProgrammeProblem } from '../../src/domain/programme/problem.ts';
import { STATES } from '../drivers/gallery/states.ts';
import { askedFor, here, show, user } from './show.tsx';

const file = (content: string) => new File([content], 'p.json', { type: 'application/json' });

describe('the welcome', () => {
  it('UI-13 a file is opened on the page where it is looked at before it is kept', async () => {
    const app = show('/start');
    await user.upload(await screen.findByLabelText(welcome.file.open), file('{"a":1}'));
    expect(askedFor(app, 'received.openFile')).toEqual([['application/json']]);
    expect(here()).toBe('/join');
  });

  it('UI-13 a file that is refused says why, place by place, and that nothing changed', async () => {
    const problems: readonly ProgrammeProblem[] = [
      { code: 'type', path: 'weeks[1].effort', detail: { expected: 'number' } },
      { code: 'group-unknown', path: 'weeks[2].sessions.owl', detail: { groups: 'wren' } },
    ];
    show('/join', {
      received: { received: { name: 'refused', problem: { code: 'programme', problems } } },
    });
    expect(await screen.findByText(join.refused)).toBeDefined();
    const told = screen
      .getAllByRole('alert')
      .map((alert) => alert.textContent)
      .join(' ');
    for (const problem of problems) expect(told).toContain(programmeProblem(problem));
  });

  it('UI-13 a backup is taken in from here: a new phone has nothing else to begin with', async () => {
    show('/start');
    await user.click(await screen.findByRole('link', { name: welcome.backup }));
    expect(here()).toBe('/records');
    expect(await screen.findByLabelText(records.choose)).toBeDefined();
  });

  it('UI-14 inside another app the page says what will not work and how to open it', async () => {
    show('/start', { device: { embedded: true, platform: 'ios' } });
    expect(await screen.findByText(inOtherApp.ios)).toBeDefined();
    expect(screen.queryByText(inOtherApp.android)).toBeNull();
  });

  it('UI-14 the steps of this phone come first', async () => {
    show('/install', { device: { platform: 'ios' } });
    const [first] = await screen.findAllByRole('heading', { level: 2 });
    expect(first?.textContent).toBe(installSteps.ios.title);
  });

  it('UI-14 the browser’s own offer to install is used where there is one', async () => {
    let offered = 0;
    show('/start', {
      device: {
        install: async () => {
          offered += 1;
        },
      },
    });
    await user.click(await screen.findByRole('button', { name: install.now }));
    expect(offered).toBe(1);
  });

  it('UI-15 a session that was cut off is offered on every page, the likelier answer first', async () => {
    const state = STATES['weeks-cut-off'];
    const app = show('/done', state?.options);
    const region = await screen.findByRole('region', { name: unfinished.title });
    const names = [...region.querySelectorAll('button')].map((button) => button.textContent);
    expect(names).toEqual(['Go on from 12:31', unfinished.keep]);
    await user.click(screen.getByRole('button', { name: unfinished.keep }));
    expect(askedFor(app, 'recover')).toEqual([['keep']]);
  });

  it('UI-15 the app that wakes on the running screen says what was cut off there', async () => {
    show('/run', STATES['weeks-cut-off']?.options);
    expect(
      await screen.findByRole('heading', { level: 1, name: running.none.title }),
    ).toBeDefined();
    expect(screen.getByRole('button', { name: 'Go on from 12:31' })).toBeDefined();
  });

  it('UI-15 a new version is offered and waits for the answer', async () => {
    const app = show('/start', { updates: { waiting: true } });
    expect(askedFor(app, 'apply')).toEqual([]);
    await user.click(await screen.findByRole('button', { name: common.update.apply }));
    expect(app.updates.getState().waiting).toBe(true);
  });
});
