import { screen, within } from '@testing-library/react';
import { describe, expect, it } from 'vitest';
import { DEMO_PROGRAMME_TEXT } from '../../src/app/demo/demo.ts';
import { cellWords } from '../../src/copy/cell.ts';
import { draftForm } from '../../src/copy/draft-form.ts';
import { editRefusal } from '../../src/copy/refusals.ts';
import { checks, desk, details, sendOwn, shelf, week } from '../../src/copy/workshop.ts';
import { REMINDERS } from '../../src/domain/cues/reminders.ts';
import { sheetOf } from '../../src/domain/workshop/file.ts';
import type { Sheet } from '../../src/domain/workshop/sheet.ts';
import { here, show, user } from './show.tsx';

const read = sheetOf(DEMO_PROGRAMME_TEXT);
if (!read.ok) throw new Error('the demo is no sheet');
const LOOP: Sheet = read.value;

const button = (name: string) => screen.findByRole('button', { name });
const link = (name: string | RegExp) => screen.findByRole('link', { name });
const table = () => screen.findByRole('table', { name: desk.table });
const cellLink = (n: number, group: string) => link(new RegExp(`^${desk.cell(n, group, 1, 1)}\\b`));
const sheetNow = async (app: ReturnType<typeof show>) =>
  (await app.workshop()).getState().open?.sheet as Sheet;

describe('my programmes', () => {
  it('UI-29 a programme is begun from nothing, and its first page asks for its words', async () => {
    const app = show('/lead');
    await user.click(await button(shelf.blank));
    expect(await screen.findByRole('heading', { level: 1, name: details.title })).toBeDefined();
    await user.type(await screen.findByLabelText(details.name), 'On the sea wall');
    expect((await sheetNow(app)).title).toBe('On the sea wall');
    await user.click(await link(new RegExp(desk.back)));
    await table();
    await user.click(await link(new RegExp(shelf.backTo)));
    expect(await link(shelf.open('On the sea wall'))).toBeDefined();
  });

  it('UI-29 what was begun from nothing and left as it was is begun with again', async () => {
    const app = show('/lead');
    await user.click(await button(shelf.blank));
    await user.click(await link(new RegExp(desk.back)));
    await user.click(await link(new RegExp(shelf.backTo)));
    await user.click(await button(shelf.draft));
    await screen.findByRole('heading', { level: 1, name: draftForm.title });
    const sheets = async () => (await app.workshop()).getState().shelf;
    expect(await sheets()).toHaveLength(1);
    (await app.workshop()).getState().edit({ kind: 'focus', week: 0, focus: 'Slowly' });
    await user.click(await link(new RegExp(draftForm.back)));
    await user.click(await link(new RegExp(shelf.backTo)));
    await user.click(await button(shelf.blank));
    await screen.findByRole('heading', { level: 1, name: details.title });
    expect(await sheets()).toHaveLength(2);
  });

  it('UI-29 the example becomes a programme of its own', async () => {
    const app = show('/lead');
    await user.click(await button(shelf.example));
    await table();
    const { id, title, weeks } = await sheetNow(app);
    expect([title, weeks.length]).toEqual([LOOP.title, LOOP.weeks.length]);
    expect(id).not.toBe(LOOP.id);
  });

  it('UI-29 a copy has a title of its own, and removing asks first', async () => {
    show('/lead', { sheets: [LOOP] });
    await user.click(await button(`${shelf.copy}: ${LOOP.title}`));
    expect(
      await screen.findByRole('heading', { level: 1, name: shelf.copyTitle(LOOP.title) }),
    ).toBeDefined();
    await user.click(await link(new RegExp(shelf.backTo)));
    const own = shelf.open(LOOP.title);
    await user.click(await button(`${shelf.remove}: ${LOOP.title}`));
    expect(await screen.findByText(shelf.removeAsk(LOOP.title))).toBeDefined();
    await user.click(await button(shelf.removeNo));
    expect(await link(own)).toBeDefined();
    await user.click(await button(`${shelf.remove}: ${LOOP.title}`));
    await user.click(await button(shelf.removeYes));
    expect(screen.queryByRole('link', { name: own })).toBeNull();
    expect(await link(shelf.open(shelf.copyTitle(LOOP.title)))).toBeDefined();
  });

  it('UI-29 an address of no programme says so', async () => {
    show('/lead/nothing');
    expect(await link('To the start')).toBeDefined();
  });
});

describe('the table', () => {
  it('UI-30 every week is a row, every group a column, with what each session comes to', async () => {
    show('/lead/sheet-1', { sheets: [LOOP] });
    const rows = within(await table()).getAllByRole('row');
    expect(rows).toHaveLength(1 + 6);
    const [head, first] = rows.map((row) => within(row));
    expect(head?.getAllByRole('columnheader').map((each) => each.textContent)).toEqual([
      desk.weekColumn,
      ...LOOP.groups.map(({ name }) => name),
    ]);
    // 5 + 7 x (1 + 2) + 5 = 31 min and a main set of 21 min, by hand.
    for (const cell of first?.getAllByRole('cell') ?? [])
      expect(cell.textContent).toContain(`31 min ${desk.main('21 min')}`);
  });

  it('UI-30 a session that cannot be read says so in the table and keeps its last good landscape', async () => {
    show('/lead/sheet-1', { sheets: [LOOP] });
    await user.click(await cellLink(1, 'Curlew'));
    const field = await screen.findByLabelText(cellWords.text);
    await user.clear(field);
    await user.paste('5 min easy walk; 7 x (1 min walk, 2 mn run');
    const cell = await cellLink(1, 'Curlew');
    expect(within(cell).getByText(desk.broken)).toBeDefined();
    expect(within(cell).getByText('31 min')).toBeDefined();
  });

  it('UI-30 every change can be undone and done again from the table', async () => {
    const app = show('/lead/sheet-1/week/2', { sheets: [LOOP] });
    await user.click(await button(week.remove));
    expect((await sheetNow(app)).weeks).toHaveLength(5);
    expect(here()).toBe('/lead/sheet-1');
    await user.click(await button(desk.undo));
    expect(await sheetNow(app)).toEqual(LOOP);
    await user.click(await button(desk.redo));
    expect((await sheetNow(app)).weeks).toHaveLength(5);
  });

  it('UI-30 a change to a session can be undone where it was made', async () => {
    const app = show('/lead/sheet-1/1/curlew/1', { sheets: [LOOP] });
    await user.click(await button(cellWords.addSession));
    expect((await sheetNow(app)).weeks[0]?.sessions.curlew).toHaveLength(2);
    const panel = (await screen.findByRole('heading', { level: 2 })).closest('.desk-panel');
    await user.click(within(panel as HTMLElement).getByRole('button', { name: desk.undo }));
    expect(await sheetNow(app)).toEqual(LOOP);
  });

  it('UI-30 a week is added at the end of the table', async () => {
    const app = show('/lead/sheet-1', { sheets: [LOOP] });
    await user.click(await button(desk.addWeek));
    expect((await sheetNow(app)).weeks).toEqual([...LOOP.weeks, LOOP.weeks.at(-1)]);
  });

  it('UI-30 a week has its focus, effort, times and session done together', async () => {
    const app = show('/lead/sheet-1/week/1', { sheets: [LOOP] });
    const focus = await screen.findByLabelText(week.focus);
    await user.clear(focus);
    await user.type(focus, 'Slow is right{Enter}today');
    await user.selectOptions(screen.getByLabelText(week.effort), '40');
    await user.selectOptions(screen.getByLabelText(week.timesMax), '4');
    await user.selectOptions(screen.getByLabelText(week.together), '0');
    const { together, ...first } = (await sheetNow(app)).weeks[0] ?? {};
    expect(together).toBeUndefined();
    expect(first).toMatchObject({
      focus: 'Slow is right today',
      effort: 40,
      timesPerWeek: { min: 2, max: 4 },
    });
  });

  it('UI-30 weeks move, and the page goes with them', async () => {
    const app = show('/lead/sheet-1/week/1', { sheets: [LOOP] });
    await user.click(await button(week.later));
    expect(here()).toBe('/lead/sheet-1/week/2');
    expect((await sheetNow(app)).weeks[1]?.focus).toBe(LOOP.weeks[0]?.focus);
    await user.click(await button(week.add));
    expect(here()).toBe('/lead/sheet-1/week/3');
    expect((await sheetNow(app)).weeks).toHaveLength(7);
  });

  it('UI-30 nothing stands out in the example, and that is said', async () => {
    show('/lead/sheet-1', { sheets: [LOOP] });
    expect(await screen.findByText(checks.none)).toBeDefined();
  });

  it('UI-30 from a session its neighbours are one step away', async () => {
    show('/lead/sheet-1/2/dunlin/1', { sheets: [LOOP] });
    await user.click(await link('Curlew'));
    expect(here()).toBe('/lead/sheet-1/2/curlew/1');
    await user.click(await link(desk.week(1)));
    expect(here()).toBe('/lead/sheet-1/1/curlew/1');
    expect(document.activeElement?.textContent).toBe(desk.cell(1, 'Curlew', 1, 1));
    await user.click(await button(cellWords.addSession));
    await user.click(await link(week.session(2)));
    expect(here()).toBe('/lead/sheet-1/1/curlew/2');
    expect(await link(week.session(1))).toBeDefined();
  });
});

describe('title, dates, groups', () => {
  it('UI-32 of another day its Monday is taken when the field is left', async () => {
    const app = show('/lead/sheet-1/details', { sheets: [LOOP] });
    const start = await screen.findByLabelText(details.start);
    await user.clear(start);
    await user.type(start, '2027-03-11');
    expect((await sheetNow(app)).startDate).toBe('2027-03-01');
    await user.tab();
    // 11 March 2027 is a Thursday.
    expect((await sheetNow(app)).startDate).toBe('2027-03-08');
  });

  it('UI-32 a distance that is none stays as typed and changes nothing', async () => {
    const app = show('/lead/sheet-1/details', { sheets: [LOOP] });
    const km = await screen.findByLabelText(details.distance);
    await user.clear(km);
    expect((await sheetNow(app)).goal.distanceM).toBe(5000);
    await user.type(km, '7.5');
    expect((await sheetNow(app)).goal.distanceM).toBe(7500);
  });

  it('UI-32 groups are added, named, moved and removed, at most eight', async () => {
    const app = show('/lead/sheet-1/details', { sheets: [LOOP] });
    await user.click(await button(details.up('Swift')));
    await user.click(await button(details.remove('Wren')));
    for (const name of ['Teal', 'Knot', 'Ruff', 'Rail', 'Smew']) {
      await user.type(screen.getByLabelText(details.newName), name);
      await user.click(await button(details.add));
    }
    expect((await sheetNow(app)).groups.map(({ name }) => name)).toEqual([
      'Dunlin',
      'Swift',
      'Curlew',
      'Teal',
      'Knot',
      'Ruff',
      'Rail',
      'Smew',
    ]);
    expect(screen.queryByLabelText(details.newName)).toBeNull();
  });

  it('UI-30 a group that was removed comes back where it was removed', async () => {
    const app = show('/lead/sheet-1/details', { sheets: [LOOP] });
    await user.click(await button(details.remove('Wren')));
    expect((await sheetNow(app)).groups).toHaveLength(LOOP.groups.length - 1);
    // The focus is not lost with the button: it goes to the group that is first now.
    const [, second] = LOOP.groups;
    expect((document.activeElement as HTMLInputElement).value).toBe(second?.name);
    await user.click(await button(desk.undo));
    expect(await sheetNow(app)).toEqual(LOOP);
    await user.click(await link(details.onward));
    await table();
  });

  it('UI-32 reminders are chosen from what the voice can say, or written and marked as not spoken', async () => {
    const app = show('/lead/sheet-1/details', { sheets: [LOOP] });
    await user.click(await screen.findByLabelText(REMINDERS.uphill));
    await user.click(screen.getByLabelText(REMINDERS['stand-tall']));
    const own = within(
      screen.getByRole('heading', { name: details.free }).parentElement as HTMLElement,
    );
    await user.type(own.getByLabelText(details.newReminder), 'Count the lapwings');
    await user.click(await button(details.addReminder));
    await user.click(await button(details.removeReminder('Wave at the herons')));
    const { reminders } = await sheetNow(app);
    expect(reminders).toContain('uphill');
    expect(reminders).toContain('Count the lapwings');
    expect(reminders).not.toContain('stand-tall');
    expect(reminders).not.toContain('Wave at the herons');
  });

  it('UI-32 what cannot be done is answered in a sentence', async () => {
    const app = show('/lead/sheet-1', { sheets: [LOOP] });
    await table();
    const store = await app.workshop();
    const reason = store.getState().edit({ kind: 'remove-group', id: 'wren' });
    expect(reason).toBeUndefined();
    expect(editRefusal({ code: 'last-group' })).toMatch(/\.$/);
  });
});

describe('before sending', () => {
  it('UI-31 everything that stands in the way is listed, each with a way to it', async () => {
    show('/lead');
    await user.click(await button(shelf.blank));
    await user.click(await link(new RegExp(desk.back)));
    await user.click(await link(desk.send));
    expect(await screen.findByRole('heading', { level: 1, name: sendOwn.notYet })).toBeDefined();
    for (const field of [details.name, details.leader, details.goal])
      expect(screen.getByRole('link', { name: field }).getAttribute('href')).toMatch(/\/details$/);
    await user.click((await screen.findAllByRole('link', { name: /^Week 1, / }))[0] as HTMLElement);
    expect(await screen.findByLabelText(cellWords.text)).toBeDefined();
  });
});
