import { cleanup, render, screen } from '@testing-library/react';
import { afterEach, describe, expect, it } from 'vitest';
import { weeks } from '../../src/copy/weeks.ts';
import type { Following } from '../../src/domain/log/following.ts';
import { Towpath } from '../../src/ui/Towpath.tsx';
import { DEMO, type FakeOptions, fakeApp } from '../drivers/fake-app.ts';
import { ENTRIES } from '../drivers/gallery/states.ts';

afterEach(cleanup);

/** The sessions that the page asks for, week and session each. */
const named = (): (string | null)[] =>
  screen
    .queryAllByRole('heading', { level: 2, name: /^Week \d+, session \d+$/ })
    .map((heading) => heading.textContent);

/** As the page is drawn first: what comes later is not there, and only the last test waits for it. */
function open(options: FakeOptions): void {
  window.history.replaceState(null, '', `#/p/${DEMO.id}`);
  render(<Towpath app={fakeApp({ chosen: { [DEMO.id]: 'curlew' }, ...options })} />);
}

describe('the first page before what comes later', () => {
  it('UI-12 names the first session to someone who begins', () => {
    open({});
    expect(named()).toEqual([weeks.session(1, 1)]);
  });

  it('UI-12 names none to someone who felt a stop sign in another programme', () => {
    const [entry] = ENTRIES;
    if (entry === undefined) throw new Error('no entry');
    open({ entries: [{ ...entry, programme: { ...entry.programme, id: 'another' } }] });
    expect(screen.getByRole('heading', { level: 1 }).textContent).toBe(DEMO.title);
    expect(named()).toEqual([]);
  });

  it('UI-12 names none to someone who has paused the programme', () => {
    const paused: Following = {
      format: 'towpath-following/1',
      programmeId: DEMO.id,
      pauses: [{ from: '2027-03-01', why: 'holiday' }],
      decisions: [],
    };
    open({ following: [paused] });
    expect(screen.getByRole('heading', { level: 1 }).textContent).toBe(DEMO.title);
    expect(named()).toEqual([]);
  });

  it('UI-12 names none over what was done and felt, until it is known what follows from it', async () => {
    open({ entries: ENTRIES });
    expect(named()).toEqual([]);
    expect(
      await screen.findByRole('heading', { name: weeks.session(2, 1) }, { timeout: 30_000 }),
    ).toBeDefined();
    expect(named()).toEqual([weeks.session(2, 1)]);
  });
});
