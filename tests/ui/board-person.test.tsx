import { screen, within } from '@testing-library/react';
import { describe, expect, it } from 'vitest';
import { cellWords } from '../../src/copy/board.ts';
import { DUE_TITLE } from '../../src/copy/board-due.ts';
import { personPage as words } from '../../src/copy/board-page.ts';
import { boardProblem } from '../../src/copy/keep.ts';
import { wordsPage } from '../../src/copy/words-page.ts';
import type { BoardInput } from '../../src/domain/board/board.ts';
import { boardOf } from '../../src/domain/board/board-of.ts';
import { fail } from '../../src/domain/result.ts';
import { DEMO } from '../drivers/fake-app.ts';
import { BOARD_STATES, CLUB, HAND, JORY } from '../drivers/gallery/board.ts';
import { askedFor, here, show, user } from './show.tsx';

const open = (name: string, more: object = {}) => {
  const found = BOARD_STATES[name];
  if (found === undefined) throw new Error(name);
  const { board, ...rest } = found.options;
  return show(found.path, { ...rest, board: { ...board, ...more } });
};
const INPUT: BoardInput = {
  programme: DEMO,
  heard: CLUB.heard?.[DEMO.id] ?? [],
  days: CLUB.days?.[DEMO.id] ?? [],
  today: '2027-03-21',
};
const button = (name: string) => screen.findByRole('button', { name });

describe('one person', () => {
  it('UI-75 stands with every week, its sessions, landscapes, niggles, signs and notes, the latest first', async () => {
    open('person');
    await screen.findByRole('heading', { level: 1, name: 'Jory' });
    const jory = boardOf(INPUT).people.find(({ person }) => person === JORY);
    const weeks = [...document.querySelectorAll('.lines > li')].map((li) => li.textContent ?? '');
    const begun = (jory?.cells ?? []).filter(({ state }) => state !== 'ahead').reverse();
    expect(weeks).toHaveLength(begun.length);
    begun.forEach((cell, n) => {
      expect(weeks[n]).toContain(cellWords(cell));
    });
    expect(document.querySelectorAll('.board-session svg[role="img"]')).toHaveLength(6);
    expect(screen.getByText(/Had to stop by the sluice/)).toBeDefined();
    expect(screen.getByText('Knee, left: changed how I moved')).toBeDefined();
    expect(screen.getByText(words.thereOnly)).toBeDefined();
    expect(weeks.at(-1)).toContain(words.otherGroup('Wren'));
  });

  it('UI-75 how it felt against what was meant is drawn, said, and in numbers', async () => {
    open('person');
    const picture = await screen.findByRole('img', { name: /^5 rated sessions: / });
    expect(picture.getAttribute('aria-label')).toBe(words.felt.said(5, 2, 3, 0));
    const table = document.querySelector('table');
    // By hand: 8 of 10 on a day meant to be 5.5 is two and a half points harder.
    expect(table?.querySelector('tbody tr')?.textContent).toMatch(/^16 March85\.5\+2\.5$/);
  });

  it('UI-76 a warning sign stands above all with what to do, the cautions and a message', async () => {
    open('person');
    const notice = (await screen.findByRole('heading', { name: words.due })).parentElement;
    if (notice === null) throw new Error('no notice');
    expect(notice.className).toContain('alarm');
    const items = within(notice).getAllByRole('listitem');
    expect(items[0]?.textContent).toContain(DUE_TITLE.sign);
    expect(within(notice).getByText(words.signBody)).toBeDefined();
    expect(words.signBody).toMatch(/doctor/);
    expect(words.signBody).toMatch(/local emergency number/);
    expect(within(notice).getByRole('link', { name: words.toCautions }).getAttribute('href')).toBe(
      '#/cautions',
    );
    await user.click(within(notice).getByText(wordsPage.draft('Jory')));
    const draft = (await within(notice).findByRole('textbox')) as HTMLTextAreaElement;
    expect(draft.value).toMatch(/doctor/);
  });

  it('UI-77 the leader’s own words for them: only what was changed is written', async () => {
    const app = open('person');
    const name = await screen.findByLabelText(words.name);
    expect(screen.getByText(words.nameHelp('Jory'))).toBeDefined();
    await user.selectOptions(screen.getByLabelText(words.group), 'Swift');
    await user.click(await button(words.save));
    await user.clear(name);
    await user.type(name, 'Jory with the dog');
    await user.click(await button(words.save));
    expect(askedFor(app, 'describe')).toEqual([
      [DEMO.id, JORY, { group: 'swift' }],
      [DEMO.id, JORY, { name: 'Jory with the dog', group: 'swift' }],
    ]);
    expect(screen.getByText(words.saved)).toBeDefined();
  });

  it('UI-78 somebody written in by hand is found to be one who told, and taken apart again', async () => {
    const app = open('person-by-hand');
    await user.selectOptions(await screen.findByLabelText(words.sameWho), 'Jory');
    await user.click(await button(words.sameSave));
    expect(askedFor(app, 'isSame')).toEqual([[DEMO.id, HAND, JORY]]);
  });

  it('UI-78 who was written in is named on the page of who they are', async () => {
    const heard = INPUT.heard.map((each) =>
      each.person === HAND && each.known !== undefined
        ? { ...each, known: { ...each.known, same: JORY } }
        : each,
    );
    const app = open('person', { heard: { [DEMO.id]: heard } });
    expect(await screen.findByText(words.sameIs('Old Tam'))).toBeDefined();
    await user.click(await button(words.sameUndo('Old Tam')));
    expect(askedFor(app, 'isSame')).toEqual([[DEMO.id, HAND, undefined]]);
  });

  it('UI-79 a person is forgotten after one question that says what goes and what stays', async () => {
    const app = open('person');
    await user.click(await button(words.forgetGo('Jory')));
    const title = screen.getByRole('heading', { name: words.forgetTitle('Jory') });
    expect(document.activeElement).toBe(title);
    // Five told, two of them with a note; one day on the list, which nobody told.
    for (const line of words.forgetWhat(5, 1, 2)) expect(screen.getByText(line)).toBeDefined();
    await user.click(await button(words.forgetNo));
    expect(askedFor(app, 'forget')).toEqual([]);
    await user.click(await button(words.forgetGo('Jory')));
    await user.click(await button(words.forgetYes));
    expect(askedFor(app, 'forget')).toEqual([[DEMO.id, JORY]]);
    expect(here()).toBe(`/board/${DEMO.id}`);
  });

  it('UI-79 what could not be forgotten is said, and the page stays', async () => {
    open('person', { forget: async () => fail({ code: 'full' }) });
    await user.click(await button(words.forgetGo('Jory')));
    await user.click(await button(words.forgetYes));
    expect(await screen.findByText(boardProblem({ code: 'full' }))).toBeDefined();
    expect(here()).toBe(`/board/${DEMO.id}/who/${JORY}`);
  });
});
