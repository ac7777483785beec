import { cleanup, configure, render, screen, waitFor, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { afterEach, beforeAll, beforeEach, describe, expect, it, vi } from 'vitest';
import { Route, Router } from 'wouter';
import { useHashLocation } from 'wouter/use-hash-location';
import type { Came } from '../../src/app/exchange-contract.ts';
import { tell } from '../../src/copy/tell.ts';
import type { LogEntry } from '../../src/domain/log/entry.ts';
import type { Person } from '../../src/domain/log/person.ts';
import type { Programme } from '../../src/domain/programme/programme.ts';
import { fail } from '../../src/domain/result.ts';
import { openSealed, type SealPair } from '../../src/platform/keys/seal.ts';
import { AppProvider } from '../../src/ui/app-context.tsx';
import { Tell } from '../../src/ui/screens/Tell.tsx';
import { EVENING, entry, sealPair } from '../drivers/exchange/answers.ts';
import type { TellingWish } from '../drivers/exchange/memory-telling.ts';
import { openResponse } from '../drivers/exchange/open-response.ts';
import { DEMO, type FakeApp, fakeApp } from '../drivers/fake-app.ts';

configure({ asyncUtilTimeout: 30_000 });
afterEach(cleanup);

let pair: SealPair;
let user: ReturnType<typeof userEvent.setup>;
const copied: string[] = [];
beforeAll(async () => {
  pair = await sealPair();
});
beforeEach(() => {
  user = userEvent.setup();
  copied.length = 0;
  vi.spyOn(navigator.clipboard, 'writeText').mockImplementation(async (text) => {
    copied.push(text);
  });
});

const LOG: readonly LogEntry[] = [
  entry({
    id: 'one',
    day: 0,
    programme: DEMO.id,
    feeling: { effort: 5, note: 'Wind on the wall' },
  }),
  entry({ id: 'two', day: 2, programme: DEMO.id, feeling: { niggle: { place: 'knee' } } }),
  entry({ id: 'three', day: 4, programme: DEMO.id, feeling: { warningSign: true } }),
  entry({ id: 'else', day: 5, programme: 'marsh-mile' }),
];
const person = (more: Partial<Person> = {}): Person => ({
  format: 'towpath-person/1',
  programmeId: DEMO.id,
  secret: '7f'.repeat(16),
  told: [],
  ...more,
});
const came: Came = {
  id: DEMO.id,
  revision: 1,
  leader: 'Imogen',
  title: DEMO.title,
  at: 0,
  signed: true,
  apart: false,
};

interface Wish {
  readonly entries?: readonly LogEntry[];
  readonly telling?: TellingWish;
  readonly plain?: boolean;
}

function open({ entries = LOG, telling = {}, plain = false }: Wish = {}): FakeApp {
  const programme: Programme = {
    ...DEMO,
    leader: { ...DEMO.leader, seal: plain ? null : pair.seal },
  };
  const app = fakeApp({
    entries,
    chosen: { [DEMO.id]: 'wren' },
    programmes: { programmes: [programme] },
    received: { came: plain ? {} : { [DEMO.id]: came } },
    telling: { signed: plain ? [] : [DEMO.id], ...telling },
  });
  window.history.replaceState(null, '', `#/tell/${DEMO.id}`);
  render(
    <AppProvider app={app}>
      <Router hook={useHashLocation}>
        <Route path="/tell/:id" component={Tell} />
      </Router>
    </AppProvider>,
  );
  return app;
}

const box = (name: RegExp | string) => screen.findByRole<HTMLInputElement>('checkbox', { name });
const button = (name: string) => screen.findByRole('button', { name });
const isThere = (name: RegExp | string): boolean =>
  screen.queryByRole('checkbox', { name }) !== null;
const look = async () => user.click(await button(tell.look));
const title = () => screen.findByRole('heading', { name: tell.reviewTitle });

const keys = {
  open: async (sealed: Uint8Array) => {
    const opened = await openSealed(pair, sealed);
    return opened.ok ? opened : fail({ code: opened.error });
  },
};
async function openCopied(): Promise<Awaited<ReturnType<typeof openResponse>>> {
  const [, code = ''] = copied.at(-1)?.split('#/answer/') ?? [];
  return openResponse(code, keys);
}

describe('choosing', () => {
  it('TELL-20 ticks what the leader has not heard of, and says of the others that they were told', async () => {
    open({ telling: { people: [person({ told: [{ at: EVENING, ids: ['one'] }] })] } });
    expect((await box(/^Mon, 1 March 2027/)).checked).toBe(false);
    expect((await box(/^Wed, 3 March 2027/)).checked).toBe(true);
    expect(screen.getByText(/Told already/)).toBeDefined();
    expect(screen.getAllByRole('checkbox', { name: /March 2027/ })).toHaveLength(3);
    expect(screen.getByText(tell.toldOn('Sun, 11 April 2027', 1))).toBeDefined();
  });

  it('TELL-20 asks only for what the chosen sessions have', async () => {
    open();
    await box(tell.niggles);
    expect([tell.warningSigns, tell.notes].map(isThere)).toEqual([true, true]);
    await user.click(await button(tell.noneTicked));
    expect([tell.niggles, tell.warningSigns, tell.notes].map(isThere)).toEqual([
      false,
      false,
      false,
    ]);
    expect(screen.getByText(tell.nothingMore)).toBeDefined();
    await look();
    expect(await screen.findByText(tell.chooseOne)).toBeDefined();
    await user.click(await button(tell.all));
    expect(isThere(tell.niggles)).toBe(true);
  });

  it('TELL-20 what was chosen is still chosen after a look, and nothing was noted', async () => {
    const app = open();
    await user.click(await box(/^Mon, 1 March 2027/));
    await user.type(screen.getByLabelText(tell.name), 'Rosa');
    await look();
    await title();
    await user.click(screen.getByRole('link', { name: new RegExp(tell.back) }));
    expect((await box(/^Mon, 1 March 2027/)).checked).toBe(false);
    expect(screen.getByLabelText<HTMLInputElement>(tell.name).value).toBe('Rosa');
    expect(app.told.people.get(DEMO.id)?.told).toEqual([]);
  });

  it('TELL-21 notes are off at first, and what hurt goes along', async () => {
    open();
    expect((await box(tell.notes)).checked).toBe(false);
    expect((await box(tell.niggles)).checked).toBe(true);
    expect((await box(tell.warningSigns)).checked).toBe(true);
    expect((await box(tell.nameAlong)).checked).toBe(true);
  });

  it('TELL-21 younger than 16 the name is off too, and somebody grown up says yes first', async () => {
    const app = open();
    await user.click(await box(tell.notes));
    await user.type(screen.getByLabelText(tell.name), 'Rosa');
    await user.click(await box(tell.under16));
    expect((await box(tell.nameAlong)).checked).toBe(false);
    expect((await box(tell.notes)).checked).toBe(false);
    await look();
    expect(await screen.findByText(tell.guardianNeeded)).toBeDefined();
    expect(app.told.people.size).toBe(0);
    await user.click(await box(tell.guardian));
    await look();
    await title();
    expect(screen.getByText(/Your name is not in it/)).toBeDefined();
    expect(app.told.people.get(DEMO.id)).toMatchObject({ under16: true });
  });

  it('TELL-21 where anyone could read it, nothing of the body is ticked, and the page says so', async () => {
    open({ plain: true });
    expect((await box(tell.niggles)).checked).toBe(false);
    expect((await box(tell.warningSigns)).checked).toBe(false);
    expect(screen.getByText(tell.plain['no-key'])).toBeDefined();
  });

  it('TELL-20 with no session of the programme there is nothing to send', async () => {
    open({ entries: LOG.slice(3) });
    expect(await screen.findByText(tell.none)).toBeDefined();
    expect(screen.queryByRole('button', { name: tell.look })).toBeNull();
  });

  it('TELL-16 a phone that cannot keep anything says so and makes nothing', async () => {
    open({ telling: { canKeep: false } });
    await look();
    expect(await screen.findByText(/storage could not be used/)).toBeDefined();
    expect(screen.queryByRole('heading', { name: tell.reviewTitle })).toBeNull();
  });
});

describe('looking and sending', () => {
  it('TELL-22 shows all that is in it in plain words, and that is what the leader opens', async () => {
    open();
    await user.type(await screen.findByLabelText(tell.name), 'Rosa');
    await user.click(await box(tell.notes));
    await user.click(await box(/^Wed, 3 March 2027/));
    await look();
    await title();
    const list = within(screen.getByRole('main'));
    expect(list.getByText('Name: Rosa. Group: Wren.')).toBeDefined();
    expect(list.getByText(/Note: “Wind on the wall”/)).toBeDefined();
    expect(list.getByText(/Warning sign: felt a sign to stop/)).toBeDefined();
    expect(list.queryByText(/knee/i)).toBeNull();
    expect(list.getByText('1 session is left out; only the number is told.')).toBeDefined();
    await user.click(await button(tell.copyLink));
    const opened = await openCopied();
    if (!opened.ok) throw new Error(opened.error.code);
    expect(opened.value).toMatchObject({ name: 'Rosa', group: 'wren', leftOut: 1 });
    expect(opened.value.entries.map(({ id, note }) => [id, note])).toEqual([
      ['one', 'Wind on the wall'],
      ['three', undefined],
    ]);
  });

  it('TELL-22 of a plain message every word is shown as it goes out', async () => {
    open({ plain: true });
    await look();
    await title();
    await user.click(await button(tell.copyMessage));
    const [sent = ''] = copied;
    expect(sent).toContain('anyone who sees it can read it');
    const shown = screen.getByText(/^To Imogen, about/);
    expect(shown.textContent).toBe(sent);
    expect(screen.queryByRole('button', { name: tell.copyLink })).toBeNull();
  });

  it('TELL-23 what was copied is noted as told, and can be taken back', async () => {
    const app = open();
    await look();
    await user.click(await button(tell.copyMessage));
    expect(await screen.findByText(tell.noted(3))).toBeDefined();
    const told = () => app.told.people.get(DEMO.id)?.told.map(({ ids }) => ids);
    expect(told()).toEqual([['one', 'two', 'three']]);
    await user.click(await button(tell.notSent));
    expect(await screen.findByText(tell.takenBack)).toBeDefined();
    expect(told()).toEqual([]);
    expect((await openCopied()).ok).toBe(true);
  });

  it('TELL-23 what the browser did not copy is not noted', async () => {
    vi.mocked(navigator.clipboard.writeText).mockRejectedValue(new Error('refused'));
    const app = open();
    await look();
    await user.click(await button(tell.copyMessage));
    await screen.findByText(/mark the text and copy it/);
    expect(app.told.people.get(DEMO.id)?.told).toEqual([]);
  });

  it.each([
    [true, 1],
    [false, 0],
  ])('TELL-23 through the share sheet: handed on %s, noted %i times', async (sheet, times) => {
    const app = open({ telling: { sheet } });
    await look();
    await user.click(await button(tell.share));
    expect(app.told.words).toHaveLength(1);
    await waitFor(() => expect(app.told.people.get(DEMO.id)?.told).toHaveLength(times));
    expect(screen.queryByText(tell.noted(3)) === null).toBe(times === 0);
  });

  it('TELL-23 as a file whose first line says in words what it is', async () => {
    const app = open();
    await look();
    await user.click(await button(tell.file));
    expect(await screen.findByText(tell.noted(3))).toBeDefined();
    expect(app.told.files[0]?.text).toMatch(/^An answer for Imogen/);
    expect(app.told.files[0]).toMatchObject({ type: 'text/plain' });
  });

  it('TELL-23 as a code, noted only when the leader has scanned it', async () => {
    const app = open();
    await look();
    await user.click(await screen.findByText(tell.code));
    expect(screen.getByRole('img', { name: `${DEMO.title}. ${tell.part(1, 1)}` })).toBeDefined();
    expect(app.told.drawn[0]).toContain('#/answer/');
    expect(app.told.people.get(DEMO.id)?.told).toEqual([]);
    await user.click(await button(tell.scanned));
    expect(await screen.findByText(tell.noted(3))).toBeDefined();
  });
});
