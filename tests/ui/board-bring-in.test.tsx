import { act, fireEvent, screen, waitFor } from '@testing-library/react';
import { describe, expect, it } from 'vitest';
import type { IntakeSource, IntakeView, LeftWhy } from '../../src/app/board-contract.ts';
import { boards } from '../../src/copy/board-page.ts';
import { intakeRefused, leftWords, bringIn as words } from '../../src/copy/bring-in.ts';
import { exchangeProblem } from '../../src/copy/exchange.ts';
import { leaderKeys } from '../../src/copy/lead.ts';
import { fail } from '../../src/domain/result.ts';
import { DEMO, type FakeApp, type FakeOptions } from '../drivers/fake-app.ts';
import { BOARD_STATES, CLUB } from '../drivers/gallery/board.ts';
import { askedFor, here, show, user } from './show.tsx';

const open = (name: string) => {
  const found = BOARD_STATES[name];
  if (found === undefined) throw new Error(name);
  return show(found.path, found.options);
};
const brought = (app: FakeApp) =>
  askedFor(app, 'bringIn').flatMap(([sources]) => sources as readonly IntakeSource[]);
const file = (name: string, path = '') => {
  const made = new File(['an answer'], name, { type: 'text/plain' });
  Object.defineProperty(made, 'webkitRelativePath', { value: path });
  return made;
};
const board = { ...CLUB };
const keys: FakeOptions['publishing'] = {
  keys: { name: 'there', madeAt: 0, savedAt: 0, digits: async () => '' },
};

// A browser on a desk has it; this window does not.
Object.defineProperty(HTMLInputElement.prototype, 'webkitdirectory', {
  value: false,
  writable: true,
});

describe('bringing answers in', () => {
  it('UI-69 what is pasted is taken as it is; nothing pasted is said', async () => {
    const app = open('boards');
    await user.click(await screen.findByRole('button', { name: words.pasteGo }));
    expect(screen.getByText(words.pasteEmpty)).toBeDefined();
    await user.click(screen.getByLabelText(words.paste));
    await user.paste('Sun 18:02 Jory: https://club.example/#/answer/AQabc\nSun 18:05 Ada: me too');
    await user.click(screen.getByRole('button', { name: words.pasteGo }));
    expect(brought(app)).toEqual([
      {
        name: '',
        content: 'Sun 18:02 Jory: https://club.example/#/answer/AQabc\nSun 18:05 Ada: me too',
      },
    ]);
  });

  it('UI-69 several files are taken by their names, those of a folder by where they lie in it', async () => {
    const app = open('boards');
    await user.upload(await screen.findByLabelText(words.files), [file('a.txt'), file('b.zip')]);
    fireEvent.change(await screen.findByLabelText(words.folder), {
      target: { files: [file('c.txt', 'marsh/week 3/c.txt')] },
    });
    expect(brought(app).map(({ name }) => name)).toEqual(['a.txt', 'b.zip', 'marsh/week 3/c.txt']);
    expect(brought(app).every(({ content }) => content instanceof File)).toBe(true);
  });

  it('UI-69 a folder dropped on the page is read with the folders in it, a hundred entries at a time', async () => {
    const app = open('boards');
    await screen.findByRole('button', { name: words.pasteGo });
    const entry = (path: string) => ({
      isFile: true,
      fullPath: path,
      file: (done: (given: File) => void) => done(file(path.split('/').at(-1) ?? '')),
    });
    const folder = (path: string, inside: readonly object[]) => ({
      isFile: false,
      fullPath: path,
      createReader: () => {
        let at = 0;
        return {
          readEntries: (done: (some: readonly object[]) => void) => {
            done(inside.slice(at, at + 100));
            at += 100;
          },
        };
      },
    });
    const many = Array.from({ length: 250 }, (_, n) => entry(`/marsh/${n}.txt`));
    const dropped = folder('/marsh', [...many, folder('/marsh/old', [entry('/marsh/old/z.txt')])]);
    const drop = new Event('drop', { bubbles: true, cancelable: true });
    Object.defineProperty(drop, 'dataTransfer', {
      value: {
        items: [{ webkitGetAsEntry: () => dropped }],
        files: [],
        getData: () => '',
      },
    });
    // The page is drawn a moment before it listens.
    await waitFor(() => {
      fireEvent(document.body, drop);
      expect(drop.defaultPrevented).toBe(true);
    });
    await waitFor(() => expect(brought(app)).toHaveLength(251));
    expect(brought(app).at(-1)?.name).toBe('marsh/old/z.txt');
  });

  it('UI-69 a camera that cannot be used says so', async () => {
    show('/board', {
      publishing: keys,
      board: { ...board, scan: async () => fail('camera-refused') },
    });
    await user.click(await screen.findByRole('button', { name: words.scan }));
    expect(await screen.findByText(exchangeProblem({ code: 'camera-refused' }))).toBeDefined();
    await user.click(screen.getByRole('button', { name: words.stop }));
    expect(screen.getByRole('button', { name: words.scan })).toBeDefined();
  });

  it('UI-70 an answer’s link is opened at once and taken out of the address', async () => {
    const app = show('/answer/AQabc', { publishing: keys, board });
    await waitFor(() => expect(brought(app)).toEqual([{ name: '', content: '#/answer/AQabc' }]));
    expect(here()).toBe('/answer');
    expect(window.location.href).not.toContain('AQabc');
  });

  it('UI-71 how far it is shows all the time and is said aloud a few times only; it can be stopped', async () => {
    const app = open('boards-reading');
    const store = await app.board();
    const bar = (await screen.findByLabelText(words.reading)) as HTMLProgressElement;
    const aloud: string[] = [];
    for (let n = 1; n <= 100; n += 1) {
      const report = { found: n * 60, taken: {}, left: [] };
      act(() => store.setState({ intake: { name: 'reading', share: n / 100, report } }));
      const said = bar.parentElement?.querySelector('[role=status]')?.textContent ?? '';
      if (aloud.at(-1) !== said) aloud.push(said);
    }
    expect(bar.value).toBe(1);
    expect(screen.getAllByText(words.readingNow(100, 6000)).length).toBeGreaterThan(0);
    expect(aloud.length).toBeLessThanOrEqual(5);
    await user.click(screen.getByRole('button', { name: words.cancel }));
    expect(askedFor(app, 'cancelIntake')).toHaveLength(1);
  });

  it('UI-72 everything is counted and named: what came in, and what did not with its reason, its files and what to do', async () => {
    const app = open('boards');
    await screen.findByRole('button', { name: words.pasteGo });
    const view = BOARD_STATES['boards-report']?.options.board?.intake as Extract<
      IntakeView,
      { name: 'done' }
    >;
    const store = await app.board();
    act(() => store.setState({ intake: view }));
    const title = await screen.findByRole('heading', { name: words.done });
    await waitFor(() => expect(document.activeElement).toBe(title));
    expect(screen.getByText(words.found(61))).toBeDefined();
    expect(screen.getByText(words.takenLine(38, 24, 71), { exact: false })).toBeDefined();
    const shown = document.querySelector('.board-report')?.textContent ?? '';
    expect(view.report.left.length).toBeGreaterThan(5);
    for (const { why, count, from } of view.report.left) {
      const { title: said, body } = leftWords(why, count);
      expect(shown).toContain(said);
      expect(shown).toContain(body);
      for (const name of from) expect(shown).toContain(name);
    }
    await user.click(screen.getByRole('link', { name: words.toBoard(DEMO.title) }));
    expect(here()).toBe(`/board/${DEMO.id}`);
  });

  it('UI-72 every reason has a sentence of its own, for one and for several', () => {
    const all: Readonly<Record<LeftWhy, true>> = {
      again: true,
      forgotten: true,
      ahead: true,
      full: true,
      part: true,
      file: true,
      content: true,
      'cut-short': true,
      damaged: true,
      newer: true,
      'no-keys': true,
      'not-for-this-key': true,
      'not-secure': true,
      'other-programme': true,
      'too-large': true,
    };
    const bodies = Object.keys(all).map((why) => leftWords(why as LeftWhy, 2).body);
    expect(new Set(bodies).size).toBe(bodies.length);
    expect(leftWords('damaged', 1).title).toBe('1 damaged on its way');
    expect(leftWords('damaged', 3).title).toBe('3 damaged on their way');
  });

  it('UI-72 one that was stopped keeps what it had; nothing found says what to do; a refusal says what is safe', async () => {
    const app = open('boards-nothing');
    const store = await app.board();
    expect(await screen.findByText(words.nothingBody)).toBeDefined();
    const report = { found: 2, taken: {}, left: [] };
    act(() => store.setState({ intake: { name: 'done', cancelled: true, report } }));
    expect(screen.getByText(words.cancelledBody)).toBeDefined();
    await user.click(screen.getByRole('button', { name: words.close }));
    expect(askedFor(app, 'dismissIntake')).toHaveLength(1);
    act(() => store.setState({ intake: { name: 'refused', why: 'store' } }));
    expect(screen.getByText(intakeRefused('store'))).toBeDefined();
    expect(screen.getByRole('button', { name: words.pasteGo })).toBeDefined();
  });

  it('UI-73 without keys it says where they are, and takes them over from their backup on the spot', async () => {
    open('boards-no-keys');
    expect(await screen.findByRole('heading', { name: words.noKeys.title })).toBeDefined();
    await user.click(screen.getByText(leaderKeys.restoreTitle));
    expect(screen.getByLabelText(leaderKeys.restorePassphrase)).toBeDefined();
    expect(screen.queryByRole('button', { name: words.pasteGo })).toBeNull();
    // What is on this phone already is there to be read.
    expect(screen.getByRole('link', { name: boards.open(DEMO.title) })).toBeDefined();
  });

  it('UI-73 who is not the leader is told that it is sealed, whose it is, and that nothing was kept', async () => {
    const app = open('boards-not-the-leader');
    expect(
      await screen.findByRole('heading', { level: 1, name: words.forLeader.title }),
    ).toBeDefined();
    expect(screen.getByText(words.forLeader.hand)).toBeDefined();
    expect(screen.queryByText(boards.mine)).toBeNull();
    expect(here()).toBe('/answer');
    expect(app.asked.map(([name]) => name)).not.toContain('received.open');
  });

  it('UI-73 an answer whose link came before the keys is opened once they are taken over', async () => {
    const app = open('boards-not-the-leader');
    await screen.findByRole('heading', { level: 1, name: words.forLeader.title });
    expect(brought(app)).toHaveLength(1);
    act(() => app.publishing.setState(keys));
    await waitFor(() => expect(brought(app)).toHaveLength(2));
    expect(brought(app)[1]?.content).toBe('#/answer/AQabc');
    expect(await screen.findByRole('button', { name: words.pasteGo })).toBeDefined();
  });

  it('UI-74 each programme says from how many was heard this week, and how many need a word', async () => {
    open('boards');
    expect(await screen.findByText(/^Heard from \d+ of 42 this week$/)).toBeDefined();
    expect(screen.getByRole('link', { name: /need a word$/ }).getAttribute('href')).toBe(
      `#/board/${DEMO.id}/words`,
    );
  });
});
