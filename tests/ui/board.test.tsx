import { screen, waitFor, within } from '@testing-library/react';
import { beforeEach, describe, expect, it } from 'vitest';
import { calledOf, cellWords, noReplyText, board as said } from '../../src/copy/board.ts';
import { boards, boardPage as words } from '../../src/copy/board-page.ts';
import { lead } from '../../src/copy/lead.ts';
import { tell } from '../../src/copy/tell.ts';
import { boardOf } from '../../src/domain/board/board-of.ts';
import { DEMO } from '../drivers/fake-app.ts';
import { BOARD_STATES, CLUB, JORY, LONG } from '../drivers/gallery/board.ts';
import { askedFor, here, show, user } from './show.tsx';

const state = (name: string) => {
  const found = BOARD_STATES[name];
  if (found === undefined) throw new Error(name);
  return found;
};
const open = (name: string) => show(state(name).path, state(name).options);

const INPUT = {
  programme: DEMO,
  heard: CLUB.heard?.[DEMO.id] ?? [],
  days: CLUB.days?.[DEMO.id] ?? [],
  setup: CLUB.setups?.[DEMO.id],
  today: '2027-03-21',
};
const BOARD = boardOf({ ...INPUT, setup: INPUT.setup ?? fail() });
function fail(): never {
  throw new Error('no setup');
}

/** A desk or a phone: this window has no size of its own. */
function wide(is: boolean): void {
  window.matchMedia = (media: string) =>
    ({
      matches: is && media.includes('min-width'),
      media,
      addEventListener: () => undefined,
      removeEventListener: () => undefined,
    }) as unknown as MediaQueryList;
}
const lines = () =>
  [...document.querySelectorAll('.board-list > li')].map((line) => line.textContent ?? '');
const names = () =>
  [...document.querySelectorAll('.board-list .board-who a')].map((a) => a.textContent ?? '');
const choose = async (field: string, option: string) =>
  user.selectOptions(await screen.findByLabelText(field), option);

beforeEach(() => wide(false));

describe('the board', () => {
  it('UI-68 where nothing was sent no board is read', async () => {
    const app = show('/lead', { board: { programmes: [] } });
    await screen.findByRole('heading', { level: 1 });
    await new Promise((resolve) => setTimeout(resolve, 700));
    expect(askedFor(app, 'loadBoard')).toEqual([]);
  });

  it('UI-60 on a phone one week of everybody stands in a list by group, in marks and in words', async () => {
    open('board');
    await screen.findByRole('heading', { level: 1, name: DEMO.title });
    expect(screen.getByLabelText(words.week)).toHaveProperty('value', '3');
    // The first of the first group come with the page, all else right behind it.
    for (const group of DEMO.groups)
      expect(await screen.findByRole('heading', { level: 2, name: group.name })).toBeDefined();
    await waitFor(() => expect(lines()).toHaveLength(BOARD.people.length));
    const jory = BOARD.people.find(({ person }) => person === JORY);
    const cell = jory?.cells[2];
    const line = lines().find((each) => each.startsWith('Jory'));
    expect(cell && line?.includes(cellWords(cell))).toBe(true);
    expect(line).toContain(words.signs(1));
    expect(line).toContain(words.niggles(1));
    await choose(words.week, '1');
    expect(lines().find((each) => each.startsWith('Jory'))).toContain(
      cellWords(jory?.cells[0] ?? fail()),
    );
  });

  it('UI-61 on a desk people stand by all weeks in a table with groups; a row leads to its person', async () => {
    wide(true);
    open('board');
    const table = await screen.findByRole('table', { name: words.table });
    const heads = within(table).getAllByRole('columnheader');
    expect(heads).toHaveLength(1 + DEMO.weeks.length);
    const row = (await within(table).findByRole('rowheader', { name: /^Jory/ })).closest('tr');
    const cells = row?.querySelectorAll('td') ?? [];
    const jory = BOARD.people.find(({ person }) => person === JORY) ?? fail();
    expect(
      [...cells].map((cell) => within(cell).getByRole('img').getAttribute('aria-label')),
    ).toEqual(jory.cells.map((cell) => cellWords(cell)));
    await user.click(within(table).getByRole('link', { name: 'Jory' }));
    expect(here()).toBe(`/board/${DEMO.id}/who/${JORY}`);
  });

  it('UI-62 no reply is a number for its group and never nothing done; nothing told is a state of its own', async () => {
    open('board');
    await screen.findByRole('heading', { level: 1 });
    for (const group of BOARD.groups) {
      const week = group.weeks[2] ?? fail();
      if (week.of > week.heard)
        expect(
          (await screen.findByRole('heading', { level: 2, name: group.name })).parentElement
            ?.textContent,
        ).toContain(noReplyText(week));
    }
    const shown = document.body.textContent ?? '';
    expect(shown).not.toMatch(/\b0 sessions/);
    expect(shown).not.toMatch(/\b0 of \d/);
    const [silent, none] = (['unknown', 'none-told'] as const).map((wanted) =>
      BOARD.people
        .flatMap(({ cells }) => cells)
        .find(({ state: is, week }) => is === wanted && week < 3),
    );
    expect(silent && none && cellWords(silent) !== cellWords(none)).toBe(true);
    expect(shown).toContain(said.compare);
  });

  it('UI-63 people are found by name whatever its accents, by group, by reply and by need; ordered, never by a raw rating', async () => {
    open('board');
    await screen.findByRole('heading', { level: 1 });
    const all = BOARD.people.length;
    await waitFor(() => expect(names()).toHaveLength(all));
    expect(screen.getByText(words.chosen([words.everyone(all), words.sorts.name]))).toBeDefined();
    await user.type(screen.getByLabelText(words.search), 'JORY');
    await waitFor(() => expect(names()).toEqual(['Jory']));
    expect(screen.getByText(words.found(1, all))).toBeDefined();
    await user.clear(screen.getByLabelText(words.search));
    await choose(words.group, 'Curlew');
    const curlew = BOARD.people.filter(({ group }) => group === 'curlew');
    await waitFor(() => expect(names()).toHaveLength(curlew.length));
    await choose(words.show, words.shows.silent);
    await waitFor(() =>
      expect(names()).toEqual(
        curlew.filter(({ cells }) => cells[2]?.state === 'unknown').map(calledOf),
      ),
    );
    await choose(words.show, words.shows.all);
    await choose(words.sort, words.sorts.gap);
    await waitFor(() => {
      const gaps = names().map(
        (name) => curlew.find((row) => calledOf(row) === name)?.cells[2]?.gap ?? -99,
      );
      expect(gaps).toEqual([...gaps].sort((a, b) => b - a));
    });
    await choose(words.sort, words.sorts.due);
    await waitFor(() => expect(names()[0]).toBe('Jory'));
    expect(
      screen.getByText(words.chosen(['Curlew', words.shows.all, words.sorts.due])),
    ).toBeDefined();
    expect(Object.values(words.sorts).join()).not.toMatch(/felt effort|rating/i);
  });

  it('UI-64 five hundred people come some at a time, and each group shows the rest when asked', async () => {
    open('board-large');
    await screen.findByRole('heading', { level: 1, name: LONG.title });
    await waitFor(() => expect(names().length).toBe(40));
    const [more] = screen.getAllByRole('button', { name: /^Show 40 more of / });
    await user.click(more ?? fail());
    await waitFor(() => expect(names().length).toBe(80));
    await user.type(screen.getByLabelText(words.search), 'rosa');
    await waitFor(() => expect(names().every((name) => name.startsWith('Rosa'))).toBe(true));
    expect(names().length).toBeGreaterThan(0);
  });

  it('UI-65 how many are in a group is said here, and what cannot be is refused', async () => {
    const app = open('board');
    await user.click(await screen.findByText(words.numbers));
    const field = screen.getByLabelText(words.expect('Wren'));
    expect(field).toHaveProperty('value', '14');
    await user.clear(field);
    await user.type(field, 'many');
    const save = screen.getByRole('button', { name: `${words.expectSave}: Wren` });
    await user.click(save);
    expect(screen.getByText(words.expectWrong)).toBeDefined();
    expect(askedFor(app, 'expect')).toEqual([]);
    await user.clear(field);
    await user.type(field, '40');
    await user.click(save);
    expect(askedFor(app, 'expect')).toEqual([[DEMO.id, 'wren', 40]]);
    expect(await screen.findByText(words.expectKept)).toBeDefined();
  });

  it('UI-66 the way back from a person leads to their line, with everything as it was looked at', async () => {
    open('board');
    await choose(words.group, 'Curlew');
    await waitFor(() => expect(names()).toContain('Jory'));
    await user.click(screen.getByRole('link', { name: 'Jory' }));
    await screen.findByRole('heading', { level: 1, name: 'Jory' });
    await user.click(screen.getByRole('link', { name: /The board/ }));
    const link = await screen.findByRole('link', { name: 'Jory' });
    expect(screen.getByLabelText(words.group)).toHaveProperty('value', 'curlew');
    await waitFor(() => expect(document.activeElement).toBe(link));
  });

  it('UI-67 before anything came back it says how people answer; when people go is said with the way to keep them', async () => {
    open('board-empty');
    expect(await screen.findByRole('heading', { name: words.empty.title })).toBeDefined();
    expect(document.body.textContent).toContain(tell.title);
    // The demo was made without a key: nothing can be sealed for it.
    expect(screen.getByText(words.empty.unsealed)).toBeDefined();
    expect(await screen.findByText(words.stays, { exact: false })).toBeDefined();
  });

  it('UI-67 the day on which people go stands on their board', async () => {
    open('board');
    expect(await screen.findByText(/10 July 2027/)).toBeDefined();
    expect(screen.getByRole('link', { name: words.goesLink }).getAttribute('href')).toBe(
      `#/board/${DEMO.id}/keep`,
    );
  });

  it('UI-68 boards are reached from where programmes are sent, and read while the leader is there', async () => {
    const sent = { id: DEMO.id, revision: 1, text: DEMO.text, signature: '', at: 0 };
    const app = show('/lead', {
      publishing: { sent: { [DEMO.id]: sent } },
      board: { programmes: [DEMO] },
    });
    expect(await screen.findByRole('heading', { name: lead.sentTitle })).toBeDefined();
    await waitFor(() => expect(askedFor(app, 'loadBoard')).toHaveLength(1));
    await user.click(screen.getByRole('link', { name: boards.open(DEMO.title) }));
    expect(here()).toBe(`/board/${DEMO.id}`);
    expect(await screen.findByRole('heading', { level: 1, name: DEMO.title })).toBeDefined();
  });
});
