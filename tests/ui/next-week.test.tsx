import { cleanup, screen, waitFor, within } from '@testing-library/react';
import { describe, expect, it } from 'vitest';
import { clubMessage, groupMessage } from '../../src/copy/board-message.ts';
import { nextWords, suggestionSaid, WAY } from '../../src/copy/board-next.ts';
import { nextPage as words } from '../../src/copy/next-page.ts';
import { wordsPage } from '../../src/copy/words-page.ts';
import type { BoardInput } from '../../src/domain/board/board.ts';
import { boardOf } from '../../src/domain/board/board-of.ts';
import type { Heard } from '../../src/domain/board/heard.ts';
import { previewOf } from '../../src/domain/board/next-edits.ts';
import type { Way } from '../../src/domain/board/next-week.ts';
import { suggestionsFor } from '../../src/domain/board/suggest.ts';
import { sheetOfProgramme } from '../../src/domain/workshop/file.ts';
import { cellsOf } from '../../src/domain/workshop/places.ts';
import type { Sheet } from '../../src/domain/workshop/sheet.ts';
import { heardPerson, secretOf } from '../drivers/board/heard.ts';
import { DEMO, type FakeApp, type FakeOptions } from '../drivers/fake-app.ts';
import { here, show, user } from './show.tsx';

const ID = DEMO.id;
/** Sunday of week 3. */
const NOW = Date.UTC(2027, 2, 21, 19);
const SHEET = sheetOfProgramme(DEMO);

/** Five swifts, each of whom rated two sessions so. */
const swifts = (effort: number, week = 3): readonly Heard[] =>
  Array.from({ length: 5 }, (_, n) =>
    heardPerson(DEMO, {
      person: secretOf(n),
      name: ['Ada', 'Bram', 'Carys', 'Dilys', 'Edda'][n] ?? '',
      group: 'swift',
      entries: [1, 2].map((session) => ({ week, session, group: 'swift', effort })),
    }),
  );
const HARD = swifts(8);
const VERY_HARD = swifts(10);

const input = (heard: readonly Heard[]): BoardInput => ({
  programme: DEMO,
  heard,
  days: [],
  today: '2027-03-21',
});
function suggested(heard: readonly Heard[], looked = 3) {
  const found = suggestionsFor(input(heard), looked).find(({ group }) => group === 'swift');
  if (found === undefined) throw new Error('nothing suggested');
  return found;
}

function page(heard: readonly Heard[], more: FakeOptions = {}) {
  return show(`/board/${ID}/next`, {
    now: NOW,
    board: { programmes: [DEMO], heard: { [ID]: heard } },
    sheets: [SHEET],
    ...more,
  });
}

const swift = () =>
  within(
    screen.getByRole('heading', { level: 2, name: 'Swift' }).closest('section') as HTMLElement,
  );
const arrived = () => screen.findByRole('heading', { level: 2, name: 'Swift' });
const take = words.take(4, 'Swift');

async function sheets(app: FakeApp): Promise<readonly Sheet[]> {
  return (await app.workshop()).getState().shelf.map(({ sheet }) => sheet);
}
const textsOf = (sheet: Sheet | undefined, week = 4): readonly string[] =>
  cellsOf(sheet?.weeks[week - 1], 'swift').map(({ text }) => text);
const wanted = (heard: readonly Heard[], way: Way): readonly (string | undefined)[] =>
  previewOf({ ...suggested(heard), way }, SHEET).flatMap(({ after }) => after ?? []);
async function choose(way: Way): Promise<void> {
  await user.click(swift().getByText(words.other));
  await user.click(swift().getByRole('radio', { name: new RegExp(`^${WAY[way]}`) }));
}

describe('what the answers suggest for the next week', () => {
  it('UI-82 has the reason and every number, and the session before and after as landscapes', async () => {
    page(VERY_HARD);
    await arrived();
    const suggestion = suggested(VERY_HARD);
    expect(suggestion.way).toBe('ease');
    const said = suggestionSaid(suggestion);
    for (const each of [said.title, said.why, ...said.numbers])
      expect(swift().getAllByText(each).length).toBeGreaterThan(0);
    const strips = swift().getAllByRole('img');
    expect(strips.map((each) => each.getAttribute('aria-label')?.split(':')[0])).toEqual([
      words.before,
      words.after,
    ]);
    expect(swift().getByText(textsOf(SHEET)[0] ?? '')).toBeDefined();
    expect(swift().getByText(wanted(VERY_HARD, 'ease')[0] ?? '')).toBeDefined();
  });

  it('UI-82 a group of whom too few were heard goes on, and nothing is to be tapped', async () => {
    page(HARD);
    await arrived();
    const wren = screen.getByRole('heading', { level: 2, name: 'Wren' }).closest('section');
    const inWren = within(wren as HTMLElement);
    expect(inWren.getAllByText(WAY['go-on']).length).toBeGreaterThan(0);
    expect(inWren.getByText(words.same)).toBeDefined();
    expect(inWren.queryByRole('button')).toBeNull();
  });

  it('UI-82 another week can be looked at', async () => {
    page(swifts(8, 1));
    await arrived();
    expect(screen.getByLabelText<HTMLSelectElement>(words.looked).value).toBe('3');
    expect(swift().getAllByText(WAY['go-on']).length).toBeGreaterThan(0);
    await user.selectOptions(screen.getByLabelText(words.looked), '1');
    expect(swift().getByText(suggestionSaid(suggested(swifts(8, 1), 1)).why)).toBeDefined();
    expect(swift().getByRole('button', { name: words.take(2, 'Swift') })).toBeDefined();
  });

  it('UI-82 before the programme begins there is nothing to decide', async () => {
    page([], { now: Date.UTC(2027, 1, 20) });
    expect(await screen.findByText(nextWords.nothing)).toBeDefined();
    expect(screen.queryByText(words.message)).toBeNull();
  });

  it('UI-83 UI-84 one tap takes it into the sheet, says so, and leads to the desk and to sending', async () => {
    const app = page(HARD);
    await arrived();
    expect(suggested(HARD).way).toBe('repeat');
    await user.click(swift().getByRole('button', { name: take }));
    expect(await swift().findByText(new RegExp(words.inIt(WAY.repeat, 4, 'Swift')))).toBeDefined();
    expect(textsOf((await sheets(app))[0])).toEqual(wanted(HARD, 'repeat'));
    expect(textsOf((await sheets(app))[0])).toEqual(textsOf(SHEET, 3));
    // Nothing else is another.
    const [now] = await sheets(app);
    const putBack = {
      ...now,
      weeks: now?.weeks.map((week, n) => (n === 3 ? SHEET.weeks[3] : week)),
    };
    expect(JSON.parse(JSON.stringify(putBack))).toEqual(JSON.parse(JSON.stringify(SHEET)));
    expect(screen.getByRole('link', { name: words.send }).getAttribute('href')).toBe(
      '#/lead/sheet-1/send',
    );
    await user.click(swift().getByRole('link', { name: words.toDesk('Swift') }));
    expect(here()).toBe('/lead/sheet-1/4/swift/1');
  });

  it('UI-83 without a sheet one is made from what was sent', async () => {
    const app = page(HARD, { sheets: [] });
    await arrived();
    await user.click(swift().getByRole('button', { name: take }));
    await swift().findByRole('link', { name: words.toDesk('Swift') });
    const made = await sheets(app);
    expect(made).toHaveLength(1);
    expect(made[0]?.id).toBe(ID);
    expect(textsOf(made[0])).toEqual(wanted(HARD, 'repeat'));
  });

  it('UI-83 of two sheets of one programme the one changed last is written on', async () => {
    const app = page(HARD, {
      sheets: [
        { ...SHEET, title: 'Newer' },
        { ...SHEET, title: 'Older' },
      ],
    });
    await arrived();
    await user.click(swift().getByRole('button', { name: take }));
    await swift().findByRole('link', { name: words.toDesk('Swift') });
    const all = await sheets(app);
    const by = (title: string) => all.find((each) => each.title === title);
    expect(textsOf(by('Newer'))).toEqual(wanted(HARD, 'repeat'));
    expect(textsOf(by('Older'))).toEqual(textsOf(SHEET));
  });

  it('UI-83 another choice goes in the place of the first, not on top of it', async () => {
    const app = page(VERY_HARD);
    await arrived();
    await user.click(swift().getByRole('button', { name: take }));
    await swift().findByRole('link', { name: words.toDesk('Swift') });
    await choose('repeat');
    await user.click(swift().getByRole('button', { name: take }));
    await swift().findByText(new RegExp(words.inIt(WAY.repeat, 4, 'Swift')));
    expect(textsOf((await sheets(app))[0])).toEqual(wanted(VERY_HARD, 'repeat'));
    await choose('ease');
    await user.click(swift().getByRole('button', { name: take }));
    await swift().findByText(new RegExp(words.inIt(WAY.ease, 4, 'Swift')));
    expect(textsOf((await sheets(app))[0])).toEqual(wanted(VERY_HARD, 'ease'));
  });

  it('UI-84 what was taken can be undone, also once the page was left', async () => {
    const app = page(HARD);
    await arrived();
    await user.click(swift().getByRole('button', { name: take }));
    await swift().findByRole('button', { name: words.undo('Swift') });
    window.location.hash = `#/board/${ID}/words`;
    await screen.findByRole('heading', { level: 1, name: wordsPage.title });
    window.location.hash = `#/board/${ID}/next`;
    await arrived();
    await user.click(await swift().findByRole('button', { name: words.undo('Swift') }));
    expect(await swift().findByText(words.undone(4, 'Swift'))).toBeDefined();
    expect(textsOf((await sheets(app))[0])).toEqual(textsOf(SHEET));
    expect(swift().getByRole('button', { name: take })).toBeDefined();
    expect(screen.queryByRole('link', { name: words.send })).toBeNull();
  });

  it('UI-84 what the leader wrote there by hand is told from a choice', async () => {
    const week = SHEET.weeks[3];
    if (week === undefined) throw new Error('no fourth week');
    const own = { ...week, sessions: { ...week.sessions, swift: [{ text: '20 min walk' }] } };
    page(HARD, { sheets: [{ ...SHEET, weeks: SHEET.weeks.with(3, own) }] });
    await arrived();
    expect(swift().getByText(new RegExp(words.byHand(4, 'Swift').slice(0, 30)))).toBeDefined();
    expect(swift().getByRole('button', { name: take })).toBeDefined();
  });

  it('UI-84 a group that is no longer in the sheet is said to be gone', async () => {
    const groups = SHEET.groups.filter(({ id }) => id !== 'swift');
    const weeks = SHEET.weeks.map(({ sessions: { swift: _, ...sessions }, ...week }) => ({
      ...week,
      sessions,
    }));
    page(HARD, { sheets: [{ ...SHEET, groups, weeks }] });
    await arrived();
    expect(swift().getByText(words.gone(4, 'Swift'))).toBeDefined();
  });

  it('UI-85 the message has the week as it is written now, to everybody or to one group', async () => {
    const app = page(HARD, { telling: { sheet: true } });
    await arrived();
    const field = () => screen.getByLabelText<HTMLTextAreaElement>(words.draft);
    const about = (sheet: Sheet) => {
      const week = sheet.weeks[3];
      if (week === undefined) throw new Error('no fourth week');
      return {
        title: DEMO.title,
        leader: 'Imogen',
        board: boardOf(input(HARD)),
        looked: 3,
        next: { number: 4, week },
      };
    };
    expect(field().value).toBe(clubMessage(about(SHEET)));
    await user.click(swift().getByRole('button', { name: take }));
    await swift().findByRole('link', { name: words.toDesk('Swift') });
    const [now = SHEET] = await sheets(app);
    expect(field().value).toBe(clubMessage(about(now)));
    expect(field().value).not.toBe(clubMessage(about(SHEET)));
    await user.selectOptions(screen.getByLabelText(words.to), 'swift');
    expect(field().value).toBe(groupMessage(about(now), 'swift'));
    await user.clear(field());
    await user.type(field(), 'See you on Saturday.');
    await user.click(await screen.findByRole('button', { name: wordsPage.share }));
    await waitFor(() => expect(app.told.words).toEqual(['See you on Saturday.']));
    cleanup();
  });
});
