import { cleanup, screen, within } from '@testing-library/react';
import { describe, expect, it, vi } from 'vitest';
import type { BoardState } from '../../src/app/board-contract.ts';
import { DUE_TITLE, dueWords, wordDraft } from '../../src/copy/board-due.ts';
import { cautions, HELP } from '../../src/copy/cautions.ts';
import { wordsPage as words } from '../../src/copy/words-page.ts';
import type { BoardInput } from '../../src/domain/board/board.ts';
import { wordsDue } from '../../src/domain/board/words-due.ts';
import { heardPerson, secretOf } from '../drivers/board/heard.ts';
import { DEMO, type FakeOptions } from '../drivers/fake-app.ts';
import { here, show, user } from './show.tsx';

const ID = DEMO.id;
/** Sunday of week 3. */
const NOW = Date.UTC(2027, 2, 21, 19);

const sessions = (group: string, effort: number, more: object = {}) =>
  [1, 2].map((session) => ({ week: 3, session, group, effort, ...(session === 2 ? more : {}) }));
const person = (n: number, name: string, entries: ReturnType<typeof sessions>) =>
  heardPerson(DEMO, { person: secretOf(n), name, group: 'curlew', entries });

const fine = person(1, 'Ada', sessions('curlew', 5));
const hard = person(2, 'Bram', sessions('curlew', 9));
const sign = person(3, 'Carys', sessions('curlew', 6, { warningSign: true }));
const knee = { place: 'knee', side: 'left' } as const;
const twice = person(4, 'Dilys', [
  { week: 3, session: 1, group: 'curlew', effort: 9, niggle: knee } as never,
  { week: 3, session: 2, group: 'curlew', effort: 9, niggle: knee } as never,
]);

function page(heard: BoardState['heard'][string], more: FakeOptions = {}) {
  return show(`/board/${ID}/words`, {
    now: NOW,
    board: { programmes: [DEMO], heard: { [ID]: heard } },
    ...more,
  });
}

const input = (heard: BoardInput['heard']): BoardInput => ({
  programme: DEMO,
  heard,
  days: [],
  today: '2027-03-21',
});
const names = async () =>
  (await screen.findAllByRole('heading', { level: 3 }))
    .map((each) => each.textContent ?? '')
    .filter((text) => text.endsWith('Curlew'));
const draftOf = (heard: BoardInput['heard'], who: string, about = 0): string => {
  const due = wordsDue(input(heard)).find((each) => each.person === who);
  const reason = due?.reasons[about];
  if (reason === undefined) throw new Error('no such reason');
  const name = heard.find((each) => each.person === who)?.told?.name ?? '';
  return wordDraft(reason, { name, leader: 'Imogen', groups: DEMO.groups });
};

describe('who needs a word', () => {
  it('UI-80 a warning sign stands first, then the gravest, and who is fine not at all', async () => {
    page([fine, hard, twice, sign]);
    expect(await names()).toEqual(['Carys Curlew', 'Dilys Curlew', 'Bram Curlew']);
    expect(screen.getByText(words.sub(3, DEMO.title))).toBeDefined();
    const why = within(screen.getByRole('list', { name: words.tagsOf('Dilys') }));
    expect(why.getByText(DUE_TITLE['niggle-again'])).toBeDefined();
    expect(why.getByText(DUE_TITLE.harder)).toBeDefined();
  });

  it('UI-80 leads to everything that the person told', async () => {
    page([hard]);
    await user.click(await screen.findByRole('link', { name: words.toPerson('Bram') }));
    expect(here()).toBe(`/board/${ID}/who/${hard.person}`);
  });

  it('UI-80 the draft can be changed before it is copied, and put back', async () => {
    page([hard]);
    const written = vi.spyOn(navigator.clipboard, 'writeText').mockResolvedValue();
    await user.click(await screen.findByText(words.draft('Bram')));
    const field = await screen.findByRole<HTMLTextAreaElement>('textbox');
    const draft = draftOf([hard], hard.person);
    expect(field.value).toBe(draft);
    expect(screen.getByText(dueWords.alone('Bram'))).toBeDefined();
    await user.clear(field);
    await user.type(field, 'Come by on Saturday, Bram.');
    await user.click(screen.getByRole('button', { name: words.copy }));
    expect(written).toHaveBeenCalledWith('Come by on Saturday, Bram.');
    expect(await screen.findByText(words.copied)).toBeDefined();
    await user.click(screen.getByRole('button', { name: words.anew }));
    expect(field.value).toBe(draft);
    // What was copied is no longer what stands there.
    expect(screen.queryByText(words.copied)).toBeNull();
    written.mockRestore();
  });

  it('UI-80 the draft is shared where the phone takes words, and not offered where it does not', async () => {
    const app = page([hard], { telling: { sheet: true } });
    await user.click(await screen.findByText(words.draft('Bram')));
    await user.click(await screen.findByRole('button', { name: words.share }));
    expect(app.told.words).toEqual([draftOf([hard], hard.person)]);
    expect(await screen.findByText(words.shared)).toBeDefined();
    cleanup();
    page([hard]);
    await user.click(await screen.findByText(words.draft('Bram')));
    await screen.findByRole('button', { name: words.copy });
    expect(screen.queryByRole('button', { name: words.share })).toBeNull();
  });

  it('UI-80 where there are several reasons the draft is about the gravest, or another', async () => {
    page([twice]);
    await user.click(await screen.findByText(words.draft('Dilys')));
    const field = () => screen.getByRole<HTMLTextAreaElement>('textbox');
    expect(field().value).toBe(draftOf([twice], twice.person));
    await user.selectOptions(screen.getByLabelText(words.about), DUE_TITLE.harder);
    expect(field().value).toBe(draftOf([twice], twice.person, 1));
  });

  it('UI-80 nobody who stands out and nothing heard are two things', async () => {
    page([fine]);
    expect(await screen.findByText(dueWords.none)).toBeDefined();
    expect(screen.queryByText(words.nobodyTold)).toBeNull();
    cleanup();
    page([]);
    expect(await screen.findByText(words.nobodyTold)).toBeDefined();
    expect(screen.queryByText(dueWords.none)).toBeNull();
  });

  it('UI-80 a long list is shown a part at a time', async () => {
    const many = Array.from({ length: 15 }, (_, n) =>
      person(20 + n, `Runner ${n}`, sessions('curlew', 9)),
    );
    page(many);
    expect(await names()).toHaveLength(12);
    await user.click(screen.getByRole('button', { name: words.more(3) }));
    expect(await names()).toHaveLength(15);
  });

  // Sources of what is said: those of `src/copy/cautions.ts`; that a leader does not diagnose and
  // defers to a doctor is common practice, no source.
  it('UI-81 with a sign stands what to do and what not to, and with nothing else', async () => {
    page([sign]);
    expect(await screen.findByText(words.sign.you)).toBeDefined();
    const box = document.querySelector<HTMLElement>('.notice.alarm');
    const said = box?.textContent ?? '';
    expect(said).toMatch(/local emergency number/);
    expect(said).toMatch(/doctor before they go on/);
    expect(said).toMatch(/not there to diagnose/);
    expect(said).toContain(cautions.notAdvice);
    for (const step of HELP) expect(said).toContain(step);
    expect(
      within(box as HTMLElement)
        .getByRole('link', { name: words.sign.all })
        .getAttribute('href'),
    ).toBe('#/cautions');
    cleanup();
    page([hard]);
    await screen.findByText(words.draft('Bram'));
    expect(screen.queryByText(words.sign.you)).toBeNull();
  });
});
