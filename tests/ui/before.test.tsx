import { screen } from '@testing-library/react';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { PackState, Settings } from '../../src/app/contract.ts';
import { IDLE_VIEW } from '../../src/app/session/idle-view.ts';
import type { PlayerState } from '../../src/app/session-contract.ts';
import { before } from '../../src/copy/before.ts';
import { cautions } from '../../src/copy/cautions.ts';
import { nextStep } from '../../src/ui/parts/next-step.ts';
import { DEMO, SETTINGS } from '../drivers/fake-app.ts';
import { askedFor, here, show, user } from './show.tsx';

const PATH = `/p/${DEMO.id}/1/1`;
const chosen = { [DEMO.id]: 'wren' };
const ready: Settings = { ...SETTINGS, cautionsReadOn: '2027-03-01', pocketCheckSkipped: true };
const button = (name: string) => screen.findByRole('button', { name });

describe('the session before it starts', () => {
  it('UI-2 the cautions come first, lead back, and are then remembered', async () => {
    const app = show(PATH, { chosen });
    await user.click(await button(before.readFirst));
    expect(here()).toBe('/cautions');
    for (const section of cautions.sections)
      expect(await screen.findByRole('heading', { name: section.title })).toBeDefined();
    await user.click(await button(cautions.read));
    expect(here()).toBe(PATH);
    const [[change] = []] = askedFor(app, 'change');
    expect(change).toEqual({ cautionsReadOn: expect.stringMatching(/^\d{4}-\d\d-\d\d$/) });
  });

  it('UI-2 then the pocket check, which can be skipped', async () => {
    const app = show(PATH, { chosen, settings: { cautionsReadOn: '2027-03-01' } });
    await user.click(await button(before.checkSkip));
    expect(askedFor(app, 'change')).toEqual([[{ pocketCheckSkipped: true }]]);
    expect(await button(before.start)).toBeDefined();
  });

  it('UI-2 Start starts the session that the page shows, and says the words before it', async () => {
    const app = show(PATH, { chosen, settings: ready });
    expect(await screen.findByText(before.words)).toBeDefined();
    await user.click(await button(before.start));
    const choice = { programmeId: DEMO.id, groupId: 'wren', week: 1, session: 1 };
    expect(askedFor(app, 'prepare')).toEqual([[choice, 'sound']]);
    expect(askedFor(app, 'start')).toHaveLength(1);
  });

  it('UI-2 while the voice is coming the button says how far it is and cannot start', async () => {
    const app = show(PATH, {
      chosen,
      settings: ready,
      pack: { name: 'coming', loaded: 412, total: 1000 },
    });
    await user.click(await button(before.voiceComing(41)));
    expect(askedFor(app, 'start')).toEqual([]);
  });

  it('UI-2 without a voice the reason is said and the silent session is offered', async () => {
    const app = show(PATH, { chosen, settings: ready, pack: { name: 'damaged' } });
    expect(await screen.findByText(before.damaged)).toBeDefined();
    expect(screen.queryByRole('button', { name: before.start })).toBeNull();
    await user.click(await button(before.goSilent));
    await user.click(await button(before.startSilent));
    expect(askedFor(app, 'prepare').at(-1)?.[1]).toBe('screen');
    expect(askedFor(app, 'start')).toHaveLength(1);
  });

  it('UI-2 a part of the app that cannot be fetched is told, and tried again on demand', async () => {
    let tries = 0;
    show(PATH, {
      chosen,
      settings: ready,
      session: {
        prepare: async () => {
          tries += 1;
          throw new Error('no signal');
        },
      },
    });
    expect(await screen.findByText(before.appMissing)).toBeDefined();
    await user.click(await button(before.tryAgain));
    expect(tries).toBe(2);
    expect(screen.queryByRole('button', { name: before.start })).toBeNull();
  });

  it('UI-2 Start is never offered while anything is missing', () => {
    const packs: PackState[] = [
      { name: 'ready' },
      { name: 'missing' },
      { name: 'damaged' },
      { name: 'coming', loaded: 5, total: 9 },
    ];
    const states: PlayerState[] = ['idle', 'composing', 'ready'];
    fc.assert(
      fc.property(
        fc.constantFrom(...packs),
        fc.constantFrom(...states),
        fc.boolean(),
        fc.boolean(),
        fc.boolean(),
        fc.constantFrom('sound' as const, 'screen' as const),
        (pack, state, read, checked, busyElsewhere, medium) => {
          const settings: Settings = {
            ...SETTINGS,
            ...(read ? { cautionsReadOn: '2027-03-01' } : {}),
            ...(checked ? { pocketCheckSkipped: true } : {}),
          };
          const step = nextStep(settings, pack, { state, busyElsewhere }, medium);
          const heard = medium === 'screen' || (pack.name === 'ready' && checked);
          const may = read && heard && !busyElsewhere && state === 'ready';
          expect(step.name === 'start').toBe(may);
        },
      ),
    );
  });

  it('UI-2 a session in another window is told, and nothing can be started here', async () => {
    show(PATH, {
      chosen,
      settings: ready,
      view: { ...IDLE_VIEW, busyElsewhere: true },
      session: { prepare: async () => undefined },
    });
    expect(await screen.findByText(before.elsewhere)).toBeDefined();
    expect(screen.queryByRole('button', { name: before.start })).toBeNull();
  });

  it('UI-2 what is coming, the totals and the effort are said in words', async () => {
    show(PATH, { chosen, settings: ready });
    // 5 + 7 x (1 + 2) + 5 min is 31 min, the main set 21 min (worked by hand).
    expect(await screen.findByText('31 min')).toBeDefined();
    expect(screen.getByText('21 min')).toBeDefined();
    expect(screen.getByText('7 times: walk 1 min, brisk walk 2 min')).toBeDefined();
    expect(screen.getByText('5 of 10: whole sentences, breath deeper')).toBeDefined();
  });

  it('UI-2 the sound and the captions can be saved, and a cue be played', async () => {
    const app = show(PATH, { chosen, settings: ready });
    await user.click(await button(before.playCue));
    await user.click(screen.getByText(before.save));
    await user.click(await button(before.saveMp3));
    await user.click(await button(before.saveVtt));
    expect(askedFor(app, 'playCueNow')).toHaveLength(1);
    expect(askedFor(app, 'track').map(([, what]) => what)).toEqual(['mp3', 'vtt']);
  });
});
