import { cleanup, screen } from '@testing-library/react';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { groups } from '../../src/copy/groups.ts';
import { weeks } from '../../src/copy/weeks.ts';
import { nextSession, sessionKey } from '../../src/ui/parts/next-session.ts';
import { sessionsOf } from '../../src/ui/parts/plans.ts';
import { DEMO } from '../drivers/fake-app.ts';
import { ENTRIES } from '../drivers/gallery/states.ts';
import { askedFor, here, show, user } from './show.tsx';

const all = DEMO.weeks.flatMap((_, i) =>
  sessionsOf(DEMO, 'curlew', i + 1).map((__, j) => sessionKey(i + 1, j + 1)),
);

describe('finding the session', () => {
  it('UI-12 every group says who it is for, and choosing one leads to its weeks', async () => {
    const app = show('/');
    await user.click(await screen.findByRole('link', { name: 'Choose a group' }));
    for (const group of DEMO.groups) expect(await screen.findByText(`${group.for}.`)).toBeDefined();
    await user.click(screen.getByRole('button', { name: groups.choose('Dunlin') }));
    expect(askedFor(app, 'chooseGroup')).toEqual([[DEMO.id, 'dunlin']]);
    expect(here()).toBe(`/p/${DEMO.id}`);
  });

  it('UI-12 the groups show the week that a change would go on in', async () => {
    show(`/p/${DEMO.id}/groups`, { chosen: { [DEMO.id]: 'curlew' } });
    expect(await screen.findAllByText(/^Week 1, /)).toHaveLength(DEMO.groups.length);
    cleanup();
    const [entry] = ENTRIES;
    if (entry === undefined) throw new Error('no entry');
    const entries = [{ ...entry, week: 3, session: 2, outcome: 'finished' as const }];
    show(`/p/${DEMO.id}/groups`, { chosen: { [DEMO.id]: 'curlew' }, entries });
    expect(await screen.findAllByText(/^Week 4, /)).toHaveLength(DEMO.groups.length);
  });

  it('UI-12 someone who has one group starts at its weeks', async () => {
    show('/', { chosen: { [DEMO.id]: 'wren' } });
    expect(await screen.findByRole('heading', { level: 1, name: DEMO.title })).toBeDefined();
  });

  it('UI-12 any session of any week can be reached', async () => {
    show(`/p/${DEMO.id}`, { chosen: { [DEMO.id]: 'curlew' } });
    await screen.findByRole('heading', { level: 1 });
    for (const key of all) {
      const href = `#/p/${DEMO.id}/${key.replace('.', '/')}`;
      expect(document.querySelector(`.week a[href$="${href}"]`), key).not.toBeNull();
    }
  });

  it('UI-12 the week that a change of group goes on in is that of the first session after the last that was gone through', () => {
    fc.assert(
      fc.property(fc.subarray(all), (done) => {
        const next = nextSession(DEMO, 'curlew', new Set(done));
        const last = done.reduce((at, key) => Math.max(at, all.indexOf(key)), -1);
        expect(next && sessionKey(next.week, next.session)).toBe(all[last + 1]);
      }),
    );
  });

  it('UI-12 a session that ended early is not marked as done, and is asked for again', async () => {
    show(`/p/${DEMO.id}`, { chosen: { [DEMO.id]: 'curlew' }, entries: ENTRIES });
    // Week 1, sessions 1 and 2 were finished; week 2, session 1 was ended early.
    expect(
      await screen.findByRole('heading', { level: 2, name: weeks.session(2, 1) }),
    ).toBeDefined();
    const marked = [...document.querySelectorAll('.week a.done')].map((a) =>
      a.getAttribute('href'),
    );
    expect(marked).toEqual([1, 2].map((session) => `#/p/${DEMO.id}/1/${session}`));
  });

  it('UI-12 one plan stands for all the times of its week', () => {
    expect(sessionsOf(DEMO, 'wren', 1)).toHaveLength(3);
    expect(sessionsOf(DEMO, 'wren', 3)).toHaveLength(2);
    expect(sessionsOf(DEMO, 'nobody', 1)).toEqual([]);
    expect(sessionsOf(DEMO, 'wren', 99)).toEqual([]);
  });

  it('UI-12 an address that leads nowhere says so and leads back', async () => {
    show('/p/unknown/1/1');
    await user.click(await screen.findByRole('link', { name: 'To the start' }));
    expect(here()).toBe('/');
  });
});
