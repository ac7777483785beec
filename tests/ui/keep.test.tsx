import { cleanup, screen, within } from '@testing-library/react';
import { describe, expect, it, vi } from 'vitest';
import type { BoardFilePreview, BoardProblem, BoardState } from '../../src/app/board-contract.ts';
import { personPage } from '../../src/copy/board-page.ts';
import { keyProblem } from '../../src/copy/exchange.ts';
import { boardProblem, previewLines, keep as words } from '../../src/copy/keep.ts';
import { leaderKeys } from '../../src/copy/lead.ts';
import { KEY_CODES } from '../../src/domain/exchange/problem.ts';
import { fail, ok } from '../../src/domain/result.ts';
import { handPerson, heardPerson, NAMES, secretOf } from '../drivers/board/heard.ts';
import { DEMO, type FakeOptions } from '../drivers/fake-app.ts';
import { askedFor, show, user } from './show.tsx';

const ID = DEMO.id;
const ada = heardPerson(DEMO, {
  person: secretOf(1),
  name: 'Ada',
  group: 'curlew',
  entries: [
    { week: 1, session: 1, group: 'curlew', effort: 5, note: 'Wind from the sea' },
    { week: 1, session: 2, group: 'curlew', effort: 6 },
  ],
});

function page(board: Partial<BoardState> = {}, more: FakeOptions = {}) {
  return show(`/board/${ID}/keep`, {
    now: Date.UTC(2027, 2, 21, 19),
    board: {
      programmes: [DEMO],
      heard: { [ID]: [ada] },
      goesOn: { [ID]: '2027-07-10' },
      ...board,
    },
    ...more,
  });
}
const kept = (on: boolean): Partial<BoardState> => ({
  goesOn: {},
  setups: {
    [ID]: {
      format: 'towpath-board/1',
      programmeId: ID,
      expected: {},
      keep: { on, at: 1 },
      forgotten: [],
    },
  },
});
const button = (name: string) => screen.findByRole('button', { name });
const section = (title: string) =>
  within(screen.getByRole('heading', { level: 2, name: title }).closest('section') as HTMLElement);

const PREVIEW: BoardFilePreview = {
  programmes: [{ id: ID, title: DEMO.title }, { id: 'other' }],
  people: 12,
  newPeople: 3,
  sessions: 80,
  newSessions: 20,
  forgotten: 1,
};
const FILE = new File(['locked'], 'boards.txt', { type: 'text/plain' });
async function pick(): Promise<void> {
  await button(words.choose);
  const input = document.querySelector<HTMLInputElement>('input[type="file"]');
  await user.upload(input as HTMLInputElement, FILE);
}

describe('keeping, handing over and letting go', () => {
  it('UI-90 says on which day people go, and keeps them on the leader’s word', async () => {
    const app = page();
    expect(await screen.findByText(words.goes('2027-07-10'))).toBeDefined();
    expect(words.goes('2027-07-10')).toMatch(/10 July 2027, 90 days after the event/);
    await user.click(await button(words.keepOn));
    expect(askedFor(app, 'keep')).toEqual([[ID, true]]);
  });

  it('UI-90 letting them go asks first', async () => {
    const app = page(kept(true));
    expect(await screen.findByText(words.kept)).toBeDefined();
    await user.click(await button(words.letGo));
    await user.click(await button(words.letGoNo));
    expect(askedFor(app, 'keep')).toEqual([]);
    await user.click(await button(words.letGo));
    expect(screen.getByText(words.letGoBody)).toBeDefined();
    await user.click(await button(words.letGoYes));
    expect(askedFor(app, 'keep')).toEqual([[ID, false]]);
  });

  it('UI-90 says from what the days are counted where the event or the programme has no date', async () => {
    const { date: _, ...goal } = DEMO.goal;
    page({ programmes: [{ ...DEMO, goal }] });
    expect(await screen.findByText(words.goesWithoutEvent('2027-07-10'))).toBeDefined();
    cleanup();
    const { startDate: __, ...undated } = DEMO;
    page({ programmes: [{ ...undated, goal }] });
    expect(await screen.findByText(words.goesAfterLast('2027-07-10'))).toBeDefined();
  });

  it('UI-90 where nothing is kept nothing is offered', async () => {
    page({ goesOn: {}, heard: {} });
    expect(await screen.findByText(words.nothing)).toBeDefined();
    expect(screen.queryByRole('button', { name: words.keepOn })).toBeNull();
  });

  it('UI-91 the warning stands at the files, and afterwards that they are to be deleted', async () => {
    const app = page();
    expect(await screen.findByText(words.filesCare)).toBeDefined();
    expect(words.filesCare).toMatch(/other people’s data/);
    await user.click(await button(words.csv));
    await user.click(await button(words.json));
    expect(askedFor(app, 'save')).toEqual([
      [ID, 'csv'],
      [ID, 'json'],
    ]);
    expect(await screen.findByText(words.given)).toBeDefined();
  });

  it('UI-92 the passphrase is in sight while it is typed, and a short one is told', async () => {
    const app = page({ saveLocked: async () => fail({ code: 'passphrase-short' }) });
    const field = await screen.findByLabelText<HTMLInputElement>(words.lockLabel);
    expect(field.type).toBe('text');
    expect(field.getAttribute('autocomplete')).toBe('off');
    expect(section(words.lock).getByText(leaderKeys.passphraseHelp)).toBeDefined();
    await user.type(field, 'herons');
    await user.click(await button(words.lockGo));
    expect(await screen.findByText(keyProblem({ code: 'passphrase-short' }))).toBeDefined();
    expect(askedFor(app, 'saveLocked')).toEqual([]);
    cleanup();
    const other = page();
    await user.type(await screen.findByLabelText(words.lockLabel), 'four herons wade at dawn');
    await user.click(await button(words.lockGo));
    expect(askedFor(other, 'saveLocked')).toEqual([['four herons wade at dawn']]);
    expect(await screen.findByText(words.locked)).toBeDefined();
  });

  it('UI-92 a locked file is looked at before anything of it is taken in', async () => {
    const opened: unknown[][] = [];
    const app = page({
      openLocked: async (...given) => {
        opened.push(given);
        return ok(PREVIEW);
      },
    });
    await pick();
    expect(screen.getByText(words.chosen('boards.txt'))).toBeDefined();
    await user.type(screen.getByLabelText(words.openLabel), 'four herons wade at dawn');
    await user.click(await button(words.openGo));
    expect(await screen.findByText(words.previewTitle)).toBeDefined();
    expect(opened).toEqual([[FILE, 'four herons wade at dawn']]);
    for (const line of previewLines(PREVIEW)) expect(screen.getByText(line)).toBeDefined();
    expect(askedFor(app, 'takeIn')).toEqual([]);
    await user.click(await button(words.take));
    expect(askedFor(app, 'takeIn')).toHaveLength(1);
    expect(await screen.findByText(words.taken)).toBeDefined();
    expect(screen.queryByText(words.previewTitle)).toBeNull();
  });

  it('UI-92 a file that is left is not taken in, and one with nothing new offers nothing', async () => {
    const app = page({ openLocked: async () => ok(PREVIEW) });
    await pick();
    await user.click(await button(words.openGo));
    await user.click(await button(words.leave));
    expect(askedFor(app, 'takeIn')).toEqual([]);
    cleanup();
    page({ openLocked: async () => ok({ ...PREVIEW, newPeople: 0, newSessions: 0 }) });
    await pick();
    await user.click(await button(words.openGo));
    expect(await screen.findByText(words.nothingNew)).toBeDefined();
  });

  it('UI-92 a passphrase that is not the file’s is told, and can be tried again', async () => {
    page({ openLocked: async () => fail({ code: 'passphrase-wrong' }) });
    await pick();
    await user.click(await button(words.openGo));
    expect(await screen.findByText(keyProblem({ code: 'passphrase-wrong' }))).toBeDefined();
    expect(screen.getByLabelText(words.openLabel)).toBeDefined();
  });

  it('UI-93 handing over has the programme, the keys’ backup and the order of steps at hand', async () => {
    const given = vi.spyOn(URL, 'createObjectURL').mockReturnValue('blob:marsh');
    const followed = vi.spyOn(HTMLAnchorElement.prototype, 'click').mockReturnValue();
    const saved: unknown[] = [];
    page(
      {},
      {
        publishing: {
          keys: { name: 'there', madeAt: 1, savedAt: 1, digits: async () => '402 917' },
          saveBackup: async () => {
            saved.push('keys');
            return ok(undefined);
          },
        },
      },
    );
    await user.click(await button(words.handSteps.saveFile));
    const blob = given.mock.calls[0]?.[0] as Blob;
    expect(await blob.text()).toBe(DEMO.text);
    expect(followed).toHaveBeenCalledTimes(1);
    given.mockRestore();
    followed.mockRestore();
    await user.click(await button(words.handSteps.saveKeys));
    expect(saved).toEqual(['keys']);
    expect(await screen.findByText(words.keysSaved)).toBeDefined();
    const steps = section(words.hand).getAllByRole('listitem');
    expect(steps).toHaveLength(6);
    expect(screen.getByRole('link', { name: words.handSteps.sendAgain }).getAttribute('href')).toBe(
      `#/lead/sent/${ID}`,
    );
    cleanup();
    page();
    expect(await screen.findByText(words.noKeys)).toBeDefined();
  });

  it('UI-94 somebody is found by name and forgotten after one question that says what goes', async () => {
    const day = {
      format: 'towpath-attendance/1',
      key: `${ID} 2027-03-06`,
      programmeId: ID,
      date: '2027-03-06',
      which: { week: 1, session: 1, at: 1 },
      marks: { [ada.person]: { present: true, at: 1 } },
    } as const;
    const others = NAMES.slice(1).map((name, n) =>
      heardPerson(DEMO, { person: secretOf(40 + n), name, group: 'swift', entries: [] }),
    );
    const app = page({ heard: { [ID]: [ada, ...others] }, days: { [ID]: [day] } });
    await user.type(await screen.findByLabelText(words.search), 'ada');
    await user.click(await button(personPage.forgetGo('Ada')));
    for (const line of personPage.forgetWhat(2, 1, 1)) expect(screen.getByText(line)).toBeDefined();
    const dialog = within(screen.getByRole('dialog'));
    await user.click(dialog.getByRole('button', { name: personPage.forgetNo }));
    expect(askedFor(app, 'forget')).toEqual([]);
    await user.click(await button(personPage.forgetGo('Ada')));
    await user.click(await button(personPage.forgetYes));
    expect(askedFor(app, 'forget')).toEqual([[ID, ada.person]]);
    expect(await screen.findByText(words.forgotten('Ada'))).toBeDefined();
    await user.type(screen.getByLabelText(words.search), ' nobody');
    expect(screen.getByText(words.noneFound)).toBeDefined();
  });

  it('UI-94 who was written in by hand and told since is one, and forgotten as one', async () => {
    const tam = {
      ...handPerson(DEMO, { person: 'hand.7', name: 'Tam', group: 'wren' }),
      known: { at: 2, name: 'Tam', same: ada.person },
    };
    page({ heard: { [ID]: [tam, ada] } });
    await button(personPage.forgetGo('Tam'));
    expect(screen.getAllByRole('button', { name: /^Forget / })).toHaveLength(1);
  });

  it('UI-94 what could not be forgotten is said to be there still', async () => {
    page({ forget: async () => fail({ code: 'lost', detail: '' }) });
    await user.click(await button(personPage.forgetGo('Ada')));
    await user.click(await button(personPage.forgetYes));
    expect(await screen.findByText(boardProblem({ code: 'lost' }))).toBeDefined();
  });

  it('UI-95 every problem of store and keys has a sentence of its own', () => {
    const problems: readonly BoardProblem[] = [
      ...(['full', 'lost', 'newer', 'not-ours'] as const).map((code) => ({ code, detail: '' })),
      ...KEY_CODES.map((code) => ({ code })),
    ];
    for (const problem of problems) {
      expect(boardProblem(problem)).toMatch(/[.)]$/);
      expect(boardProblem(problem).length).toBeGreaterThan(20);
    }
    // Nothing is said of keys where boards could not be kept.
    expect(boardProblem({ code: 'not-kept' })).not.toMatch(/key/);
    expect(boardProblem({ code: 'backup-damaged' })).not.toMatch(/key/);
  });
});
