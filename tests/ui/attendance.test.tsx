import { cleanup, screen, waitFor, within } from '@testing-library/react';
import { describe, expect, it, vi } from 'vitest';
import type { BoardState } from '../../src/app/board-contract.ts';
import { attendance as words } from '../../src/copy/attendance.ts';
import { boardProblem } from '../../src/copy/keep.ts';
import { day as dayWords } from '../../src/copy/times.ts';
import { type Attendance, attendanceKey } from '../../src/domain/board/attendance.ts';
import { fail, ok } from '../../src/domain/result.ts';
import { handPerson, heardPerson, NAMES, secretOf } from '../drivers/board/heard.ts';
import { DEMO, type FakeOptions } from '../drivers/fake-app.ts';
import { askedFor, show, user } from './show.tsx';

const ID = DEMO.id;
/** The Saturday of week 2. */
const NOW = Date.UTC(2027, 2, 13, 9);
const DAY = '2027-03-13';
const WHICH = { week: 2, session: 1 };

const ada = heardPerson(DEMO, { person: secretOf(1), name: 'Ada', group: 'curlew', entries: [] });
const bram = heardPerson(DEMO, { person: secretOf(2), name: 'Bram', group: 'curlew', entries: [] });
const tam = handPerson(DEMO, { person: 'hand.7', name: 'Tam', group: 'wren' });

function dayWith(marks: Readonly<Record<string, boolean>>, date = DAY, which = WHICH): Attendance {
  return {
    format: 'towpath-attendance/1',
    key: attendanceKey(ID, date),
    programmeId: ID,
    date,
    which: { ...which, at: 1 },
    marks: Object.fromEntries(
      Object.entries(marks).map(([who, present]) => [who, { present, at: 1 }]),
    ),
  };
}

function list(board: Partial<BoardState> = {}, more: FakeOptions = {}) {
  return show(`/board/${ID}/list`, {
    now: NOW,
    board: { programmes: [DEMO], heard: { [ID]: [bram, tam, ada] }, ...board },
    ...more,
  });
}

const tick = (name: string) => screen.findByRole('checkbox', { name });

describe('who came', () => {
  it('UI-86 opens at today and the session done together, people by group and by name', async () => {
    list();
    await tick('Ada');
    expect(screen.getByLabelText<HTMLInputElement>(words.day).value).toBe(DAY);
    expect(screen.getByLabelText<HTMLSelectElement>(words.week).value).toBe('2');
    const together = DEMO.weeks[1]?.together ?? 1;
    expect(screen.getByLabelText<HTMLSelectElement>(words.session).value).toBe(String(together));
    expect(screen.getAllByRole('checkbox').map((box) => box.parentElement?.textContent)).toEqual([
      'Tam',
      'Ada',
      'Bram',
    ]);
    expect(
      within(screen.getByRole('region', { name: 'Curlew' })).getByText(words.thereOf(0, 2)),
    ).toBeDefined();
  });

  it('UI-86 each tick is kept at once with its day and session, and so is taking it back', async () => {
    const app = list({ days: { [ID]: [dayWith({ [bram.person]: true })] } });
    await user.click(await tick('Ada'));
    await user.click(await tick('Bram'));
    expect(askedFor(app, 'mark')).toEqual([
      [ID, { date: DAY, ...WHICH }, ada.person, true],
      [ID, { date: DAY, ...WHICH }, bram.person, false],
    ]);
  });

  it('UI-86 a tick shows while it is being written, and is counted', async () => {
    let written = (_: unknown) => {};
    list({
      mark: () =>
        new Promise((done) => {
          written = () => done({ ok: true, value: undefined });
        }),
    });
    const box = await tick('Ada');
    await user.click(box);
    expect((box as HTMLInputElement).checked).toBe(true);
    expect(screen.getByText(words.there(1))).toBeDefined();
    written(undefined);
    // The store that is not a real one has kept nothing.
    await waitFor(() => expect((box as HTMLInputElement).checked).toBe(false));
  });

  it('UI-86 another session of another week is kept with the ticks that are there', async () => {
    const app = list({ days: { [ID]: [dayWith({ [ada.person]: true })] } });
    await user.selectOptions(await screen.findByLabelText(words.week), '3');
    const session = DEMO.weeks[2]?.together ?? 1;
    expect(askedFor(app, 'mark')).toEqual([
      [ID, { date: DAY, week: 3, session }, ada.person, true],
    ]);
    await user.click(await tick('Bram'));
    expect(askedFor(app, 'mark').at(-1)).toEqual([
      ID,
      { date: DAY, week: 3, session },
      bram.person,
      true,
    ]);
  });

  it('UI-86 an earlier list can be opened, and says which session it was', async () => {
    const other = dayWith({ [ada.person]: true, [tam.person]: false }, '2027-03-06', {
      week: 1,
      session: 2,
    });
    list({ days: { [ID]: [other] } });
    await user.click(await screen.findByText(words.earlier));
    await user.click(screen.getByText(words.earlierDay(dayWords('2027-03-06'), 1)));
    expect(((await tick('Ada')) as HTMLInputElement).checked).toBe(true);
    expect(((await tick('Tam')) as HTMLInputElement).checked).toBe(false);
    expect(screen.getByLabelText<HTMLSelectElement>(words.week).value).toBe('1');
    expect(screen.getByLabelText<HTMLSelectElement>(words.session).value).toBe('2');
  });

  it('UI-86 somebody who was written in by hand and told since is one, ticked under either id', async () => {
    const same = { ...tam, known: { at: 2, name: 'Tam', group: 'wren', same: ada.person } };
    const app = list({
      heard: { [ID]: [same, ada] },
      days: { [ID]: [dayWith({ [tam.person]: true })] },
    });
    const boxes = await screen.findAllByRole<HTMLInputElement>('checkbox');
    expect(boxes).toHaveLength(1);
    expect(boxes[0]?.checked).toBe(true);
    await user.click(boxes[0] as HTMLInputElement);
    expect(askedFor(app, 'mark')).toEqual([[ID, { date: DAY, ...WHICH }, tam.person, false]]);
  });

  it('UI-86 a long list is searched by name, whatever marks its letters have', async () => {
    const many = NAMES.map((name, n) =>
      heardPerson(DEMO, { person: secretOf(n), name, group: 'swift', entries: [] }),
    );
    list({ heard: { [ID]: many } });
    await user.type(await screen.findByLabelText(words.search), 'zoe');
    expect(screen.getAllByRole('checkbox')).toHaveLength(1);
    expect(await tick('Zoë')).toBeDefined();
    // The count of the group stays that of everybody in it.
    expect(screen.getByText(words.thereOf(0, NAMES.length))).toBeDefined();
    cleanup();
    list();
    await tick('Ada');
    expect(screen.queryByLabelText(words.search)).toBeNull();
  });

  it('UI-87 somebody new is added with their group and ticked', async () => {
    const app = list();
    await user.click(await screen.findByRole('button', { name: words.add }));
    await user.click(screen.getByRole('button', { name: words.addYes }));
    expect(screen.getByText(words.nameNeeded)).toBeDefined();
    expect(askedFor(app, 'addPerson')).toEqual([]);
    await user.type(screen.getByLabelText(words.name), '  Wenna ');
    await user.selectOptions(screen.getByLabelText(words.group), 'swift');
    await user.click(screen.getByRole('button', { name: words.addYes }));
    expect(await screen.findByText(words.added('Wenna'))).toBeDefined();
    expect(askedFor(app, 'addPerson')).toEqual([[ID, { name: 'Wenna', group: 'swift' }]]);
    expect(askedFor(app, 'mark')).toEqual([[ID, { date: DAY, ...WHICH }, 'hand.1', true]]);
    await user.click(screen.getByRole('button', { name: words.addDone }));
    expect(screen.queryByRole('dialog')).toBeNull();
  });

  it('UI-87 two taps while somebody is being added add them once', async () => {
    const made: string[] = [];
    let letGo = (): void => {};
    const wait = new Promise<void>((resolve) => {
      letGo = resolve;
    });
    list({
      addPerson: async (_, { name }) => {
        made.push(name);
        await wait;
        return ok('hand.1');
      },
    });
    await user.click(await screen.findByRole('button', { name: words.add }));
    await user.type(screen.getByLabelText(words.name), 'Wenna');
    await user.dblClick(screen.getByRole('button', { name: words.addYes }));
    letGo();
    expect(await screen.findByText(words.added('Wenna'))).toBeDefined();
    expect(made).toEqual(['Wenna']);
  });

  it('UI-87 a name that is on the list already is said to be', async () => {
    list();
    await user.click(await screen.findByRole('button', { name: words.add }));
    await user.type(screen.getByLabelText(words.name), 'ada');
    expect(screen.getByText(words.known('Ada', 'Curlew'))).toBeDefined();
  });

  it('UI-87 UI-88 who cannot be added is not ticked, and why is said', async () => {
    const app = list({ addPerson: async () => fail({ code: 'full', detail: '' }) });
    await user.click(await screen.findByRole('button', { name: words.add }));
    await user.type(screen.getByLabelText(words.name), 'Wenna');
    await user.click(screen.getByRole('button', { name: words.addYes }));
    expect(await screen.findByText(boardProblem({ code: 'full' }))).toBeDefined();
    expect(askedFor(app, 'mark')).toEqual([]);
  });

  it('UI-88 a tick that cannot be kept is taken back in sight, and why is said', async () => {
    list({ mark: async () => fail({ code: 'lost', detail: '' }) });
    const box = await tick('Ada');
    await user.click(box);
    expect(await screen.findByText(boardProblem({ code: 'lost' }))).toBeDefined();
    await waitFor(() => expect((box as HTMLInputElement).checked).toBe(false));
  });

  it('UI-89 the print has title, day, session, leader, a box for every name and empty lines', async () => {
    const print = vi.fn();
    vi.stubGlobal('print', print);
    list({
      days: { [ID]: [dayWith({ [ada.person]: true })] },
      setups: {
        [ID]: {
          format: 'towpath-board/1',
          programmeId: ID,
          expected: { curlew: { count: 11, at: 1 } },
          forgotten: [],
        },
      },
    });
    await user.click(await screen.findByRole('button', { name: words.print }));
    expect(print).toHaveBeenCalledTimes(1);
    vi.unstubAllGlobals();
    const paper = document.querySelector<HTMLElement>('.attendance-paper');
    expect(paper?.querySelector('h2')?.textContent).toBe(DEMO.title);
    for (const fact of [dayWords(DAY), words.paper.what(2, 1), words.paper.with('Imogen')])
      expect(paper?.querySelector('.attendance-facts')?.textContent).toContain(fact);
    const blocks = [...(paper?.querySelectorAll('.attendance-block') ?? [])];
    expect(blocks.map((each) => each.querySelector('h3')?.textContent)).toEqual([
      'Wren (1)',
      'Dunlin',
      'Curlew (2)',
      'Swift',
    ]);
    const curlew = blocks[2];
    // Eleven were said to be in it, and two are known by name.
    expect(curlew?.querySelectorAll('.attendance-box')).toHaveLength(11);
    expect(curlew?.querySelectorAll('.attendance-line')).toHaveLength(9);
    expect(curlew?.querySelectorAll('[data-ticked="true"]')).toHaveLength(1);
    // As many as the page has room for.
    expect(blocks[0]?.querySelectorAll('.attendance-line')).toHaveLength(6);
  });
});
