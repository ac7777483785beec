import { cleanup, render, screen, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { afterEach, describe, expect, it } from 'vitest';
import { cellWords, understood } from '../../src/copy/cell.ts';
import { fill } from '../../src/copy/cell-fill.ts';
import { pieceProblem, pieces } from '../../src/copy/pieces.ts';
import { planProblem } from '../../src/copy/plan.ts';
import { parsePlan } from '../../src/domain/programme/parse.ts';
import { DEFAULT_EFFORT, type Step } from '../../src/domain/programme/plan.ts';
import { ms } from '../../src/domain/units.ts';
import type { Edit } from '../../src/domain/workshop/edit.ts';
import type { Cell } from '../../src/domain/workshop/sheet.ts';
import { CellHost, USUAL } from '../drivers/cell-host.tsx';

const user = userEvent.setup();
const RUN: Step = { kind: 'step', duration: ms(0), activity: 'run' };
afterEach(cleanup);

/** Opens a cell; the edits that it asks for are kept in the order of asking. */
function open(cell: Cell, ...others: readonly Cell[]): Edit[] {
  const edits: Edit[] = [];
  render(<CellHost cells={[cell, ...others]} onEdit={(edit) => edits.push(edit)} />);
  return edits;
}
const field = () => screen.getByLabelText<HTMLTextAreaElement>(cellWords.text);
const button = (name: string | RegExp) => screen.getByRole('button', { name });
const marked = () => document.querySelector('mark')?.textContent;
const reading = () =>
  document.getElementById(field().getAttribute('aria-describedby') ?? '')?.textContent;
const focused = () => document.activeElement?.getAttribute('aria-label');
const planOf = (text: string) => {
  const read = parsePlan(text);
  if (!read.ok) throw new Error(text);
  return read.value;
};
async function tapping(text: string): Promise<Edit[]> {
  const edits = open({ text });
  await user.click(screen.getByText(pieces.title));
  return edits;
}

describe('writing a session', () => {
  it('CELL-1 what is typed stays as typed, and how it was understood stands beside it', async () => {
    const edits = open({ text: '' });
    await user.type(field(), "5' easy walk + 20' RUN");
    expect(field().value).toBe("5' easy walk + 20' RUN");
    expect(edits.at(-1)).toEqual({
      kind: 'cell',
      at: { week: 0, group: 'wren', session: 0 },
      text: "5' easy walk + 20' RUN",
    });
    expect(reading()).toContain('25 min in all, main set 20 min');
    expect(reading()).toContain('Warm-up 5 min: easy walk. Main 20 min: run.');
    expect(document.querySelector('.strip svg')).not.toBeNull();
    expect(marked()).toBeUndefined();
  });

  it('CELL-1 sets, rounds, efforts and notes are said in words', () => {
    // Lengths worked by hand: 7 x 3; 2 x (3 x 2 + 2) + 10.
    expect(understood(planOf(USUAL))).toBe(
      'Warm-up 5 min: easy walk. Main 21 min: 7 sets of 1 min walk, 2 min run. Cool-down 5 min: easy walk.',
    );
    const rounds = 'main: 2 x (3 x (1 min run, 1 min walk), 2 min walk), 10 min run @ 60% "Tall"';
    expect(understood(planOf(rounds))).toBe(
      'Main 26 min: 2 rounds, each of 3 sets of 1 min run, 1 min walk, then 2 min walk; 10 min run at 60% (“Tall”).',
    );
  });

  it('CELL-1 what typing came to is read out once the hand rests, and not before', async () => {
    open({ text: '5 min wal' });
    await user.type(field(), 'k');
    expect(screen.getByRole('status').textContent).toBe('');
    const said = await within(screen.getByRole('status')).findByText(/^Main 5 min: walk\./);
    expect(said.className).toBe('for-readers');
  });

  it('CELL-2 a mistake is marked and told at its place, and the last good version stays', async () => {
    open({ text: USUAL });
    await user.clear(field());
    await user.type(field(), '5 min easy walk; 3 joog');
    expect(marked()).toBe('3');
    expect(field().getAttribute('aria-invalid')).toBe('true');
    const read = parsePlan(field().value);
    expect(reading()).toContain(`Line 1, column 18: ${read.ok ? '' : planProblem(read.error)}`);
    // The text could be read up to its first step.
    expect(reading()).toContain(cellWords.lastGood('5 min in all, main set 5 min'));
    await user.click(button(/^Go to line 1, column 18/));
    expect(field().selectionStart).toBe(17);
    expect(document.activeElement).toBe(field());
  });

  it('CELL-2 a place is counted in its line, and nothing is called good that never was', () => {
    open({ text: '5 min easy walk\n10 min rnu' });
    expect(marked()).toBe('rnu');
    expect(reading()).toContain('Line 2, column 8');
    expect(reading()).toContain(cellWords.noneGood);
    expect(document.querySelector('.strip')).toBeNull();
  });

  it('CELL-2 an empty field is no mistake', () => {
    open({ text: '' });
    expect(reading()).toBe(cellWords.hint);
    expect(field().getAttribute('aria-invalid')).toBe('false');
  });

  it('CELL-2 a text that no sheet takes is left out whole, and that is said', async () => {
    const edits = open({ text: USUAL });
    field().focus();
    await user.paste('5 min walk; '.repeat(200));
    expect(edits).toEqual([]);
    expect(field().value).toBe(USUAL);
    expect(screen.getByRole('status').textContent).toMatch(/2000 is the most/);
  });

  it('CELL-3 one tap puts a mistake right, and the hand is back in the text', async () => {
    const edits = open({ text: '5 m walk; 10 min run' });
    await user.click(button(cellWords.take('5 min')));
    expect(edits).toEqual([expect.objectContaining({ text: '5 min walk; 10 min run' })]);
    await new Promise((done) => requestAnimationFrame(done));
    expect(document.activeElement).toBe(field());
    expect(field().selectionStart).toBe('5 min'.length);
  });

  it('CELL-3 both readings are offered with their lengths', async () => {
    open({ text: '6 x 2 min run / 1 min walk' });
    expect(button(cellWords.takeTotal('6 x (2 min run, 1 min walk)', '18 min'))).toBeDefined();
    await user.click(button(cellWords.takeTotal('6 x 2 min run; 1 min walk', '13 min')));
    expect(field().value).toBe('6 x 2 min run; 1 min walk');
  });
});

describe('tapping a session together', () => {
  it('CELL-6 a tap writes the whole text in its usual form', async () => {
    await tapping("5' easy walk + 7 x (1' walk / 2' run) + 5' easy walk");
    await user.click(button(/^Longer: step 3, run, 2 min$/));
    expect(field().value).toBe(
      '5 min easy walk; 7 x (1 min walk, 2 min 30 s run); 5 min easy walk',
    );
    await user.selectOptions(screen.getByLabelText(pieces.activity(3)), 'strong run');
    await user.click(button(pieces.oneMore(1, 7)));
    expect(field().value).toBe(
      '5 min easy walk; 8 x (1 min walk, 2 min 30 s strong run); 5 min easy walk',
    );
  });

  it('CELL-6 while the text cannot be read, a tap is said to take its place, and does', async () => {
    open({ text: '5 min walk; hop', good: '5 min walk; 10 min run' });
    await user.click(screen.getByText(pieces.title));
    expect(screen.getByText(pieces.replaces)).toBeDefined();
    await user.click(button(/^Longer: step 2/));
    expect(field().value).toBe('5 min walk; 10 min 30 s run');
    expect(screen.queryByText(pieces.replaces)).toBeNull();
  });

  it('CELL-7 the focus stays on what is pressed, and says what came of it', async () => {
    await tapping(USUAL);
    await user.click(button(/^Longer: step 3/));
    expect(focused()).toBe('Longer: step 3, run, 2 min 30 s');
    // 5 + 7 x (1 + 2.5) + 5 = 34.5 min, worked by hand.
    expect(screen.getByRole('status').textContent).toBe(
      'Step 3: 2 min 30 s run. 34 min 30 s in all.',
    );
  });

  it('CELL-7 what is added has the focus, and after removing the next piece has it', async () => {
    await tapping('5 min walk; 4 x (1 min run, 1 min walk); 3 min jog');
    await user.click(button(pieces.addStepTo('Cool-down')));
    expect(focused()).toBe(pieces.activity(5));
    await user.click(button(pieces.moreOf('Step 2')));
    await user.click(button(pieces.removeOf('Step 2')));
    expect(field().value).toBe('5 min walk; 4 x 1 min walk; 3 min jog; 3 min jog');
    expect(focused()).toBe(pieces.moreOf('Step 2'));
    await user.click(button(pieces.moreOf('Step 1')));
    await user.click(button(pieces.removeOf('Step 1')));
    // Nothing is left in the warm-up: its way to add is at hand.
    expect(focused()).toBe(pieces.addStepTo('Warm-up'));
    await user.click(button(pieces.addSetsTo('Main')));
    expect(focused()).toBe(pieces.oneMore(2, 4));
  });

  it('CELL-7 a step that is moved keeps its controls and the focus', async () => {
    await tapping(USUAL);
    await user.click(button(pieces.moreOf('Step 2')));
    await user.click(button(pieces.upOf('Step 2')));
    // Out of its sets, as a piece of its own before them.
    expect(field().value).toContain('main: 1 min walk; 7 x 2 min run');
    expect(focused()).toBe(pieces.upOf('Step 2'));
    await user.keyboard('{Enter}');
    // On into the part before: the parts need no names any more.
    expect(field().value).toBe('5 min easy walk; 1 min walk; 7 x 2 min run; 5 min easy walk');
    expect(focused()).toBe(pieces.upOf('Step 2'));
  });

  it('CELL-7 the whole of a session can be tapped by keyboard', async () => {
    open({ text: '' });
    screen.getByText(pieces.title).focus();
    await user.click(screen.getByText(pieces.title));
    button(pieces.start).focus();
    await user.keyboard('{Enter}');
    expect(focused()).toBe(pieces.activity(1));
    await user.tab({ shift: true });
    expect(focused()).toBe('Longer: step 1, easy walk, 5 min');
    await user.keyboard('{Enter} ');
    expect(field().value).toMatch(/^6 min easy walk;/);
  });

  it('CELL-8 every control of every piece has a name of its own', async () => {
    await tapping(USUAL);
    for (const more of ['Step 2', 'Sets 1']) await user.click(button(pieces.moreOf(more)));
    const controls = [...document.querySelectorAll('.pieces :is(button, select, input)')];
    const names = controls.map((control) => control.getAttribute('aria-label') ?? '');
    expect(names.length).toBeGreaterThan(25);
    expect(new Set(names).size).toBe(names.length);
    expect(names).not.toContain('');
  });

  it('CELL-8 why a tap did nothing is told, and nothing is written', async () => {
    const edits = await tapping('50 x 1 min run');
    await user.click(button(pieces.oneMore(1, 50)));
    expect(screen.getByRole('status').textContent).toBe(pieceProblem('count-many'));
    expect(screen.getByRole('status').className).toBe('cell-told refused');
    await user.click(button(pieces.moreOf('Sets 1')));
    await user.click(button(pieces.removeOf('Sets 1')));
    expect(screen.getByRole('status').textContent).toBe(pieceProblem('main-empty'));
    expect(edits).toEqual([]);
  });

  it('CELL-8 effort and note are under “More”, and a note is shown and not spoken', async () => {
    await tapping(USUAL);
    await user.click(button(pieces.moreOf('Step 3')));
    const usual = screen.getByRole('option', { name: pieces.usual(DEFAULT_EFFORT.run) });
    expect((usual as HTMLOptionElement).selected).toBe(true);
    await user.selectOptions(screen.getByLabelText(pieces.effortOf('Step 3')), '70');
    await user.type(screen.getByLabelText(pieces.noteOf('Step 3')), 'Tall and easy');
    expect(field().value).toContain('2 min run @ 70% "Tall and easy"');
    await user.selectOptions(screen.getByLabelText(pieces.effortOf('Step 3')), 'usual');
    await user.clear(screen.getByLabelText(pieces.noteOf('Step 3')));
    expect(field().value).toBe(USUAL);
  });

  it('CELL-8 a step is repeated, and sets become rounds', async () => {
    await tapping(USUAL);
    await user.click(button(pieces.moreOf('Sets 1')));
    await user.click(button(pieces.repeatOf('Sets 1')));
    expect(field().value).toContain('2 x (7 x (1 min walk, 2 min run))');
    expect(screen.getByText(pieces.times(2, true))).toBeDefined();
  });

  it('CELL-9 a length is typed as in the shorthand; what is none is told and stays to be mended', async () => {
    await tapping('10 min run');
    const length = () => screen.getByLabelText<HTMLInputElement>(pieces.length(1, RUN));
    await user.clear(length());
    await user.type(length(), '1:30{Enter}');
    expect(field().value).toBe('1 min 30 s run');
    await user.clear(length());
    await user.type(length(), '400 m');
    await user.tab();
    expect(length().getAttribute('aria-invalid')).toBe('true');
    expect(screen.getByRole('status').textContent).toMatch(/distance/);
    expect(field().value).toBe('1 min 30 s run');
  });
});

describe('a session as a whole', () => {
  it('CELL-11 tidy is offered only while it changes something', async () => {
    const edits = open({ text: "10'   RUN" });
    await user.click(button(cellWords.tidy));
    expect(edits).toEqual([expect.objectContaining({ kind: 'tidy' })]);
    expect(field().value).toBe('10 min run');
    await user.tab();
    expect(screen.queryByRole('button', { name: cellWords.tidy })).toBeNull();
    expect(screen.queryByRole('button', { name: cellWords.isTidy })).toBeNull();
  });

  it('CELL-11 a session is kept, added and removed by one tap each', async () => {
    const edits = open({ text: USUAL }, { text: USUAL });
    await user.click(screen.getByLabelText(cellWords.keepPinned));
    await user.click(button(cellWords.addSession));
    await user.click(button(cellWords.removeSession));
    const at = { week: 0, group: 'wren', session: 0 };
    expect(edits).toEqual([
      { kind: 'pin', at, pinned: true },
      { kind: 'add-session', week: 0, group: 'wren' },
      { kind: 'remove-session', at },
    ]);
  });

  it('CELL-11 the only session of a week cannot be removed', () => {
    open({ text: USUAL });
    expect(screen.queryByRole('button', { name: cellWords.removeSession })).toBeNull();
  });

  it('CELL-12 copying across the weeks says which get what and which are kept, then asks for it', async () => {
    const edits = open({ text: USUAL });
    await user.click(button(fill.open.weeks));
    const dialog = screen.getByRole('dialog');
    expect(within(dialog).getByText(/^Weeks 2 and 4 get the same session\.$/)).toBeDefined();
    expect(within(dialog).getByText('Week 3 is kept as written.')).toBeDefined();
    await user.click(within(dialog).getByLabelText(fill.steps.hard));
    await user.click(within(dialog).getByLabelText('15 s'));
    await user.selectOptions(within(dialog).getByLabelText(fill.howFar), '1');
    expect(
      within(dialog).getByText(/^Week 2 gets this session, .* 15 s longer than in the week before/),
    ).toBeDefined();
    // 5 + 7 x (1 min + 2 min 15 s) + 5 min, worked by hand.
    expect(within(dialog).getByText(/^32 min 45 s in all/)).toBeDefined();
    await user.click(within(dialog).getByRole('button', { name: fill.copy }));
    expect(edits).toEqual([
      {
        kind: 'fill',
        from: { week: 0, group: 'wren', session: 0 },
        along: 'weeks',
        count: 1,
        step: { kind: 'hard', by: 15_000 },
      },
    ]);
    expect(screen.queryByRole('dialog')).toBeNull();
  });

  it('CELL-12 weeks in a row are said as one stretch', () => {
    const weeks = [2, 3, 4, 6, 8, 9].map((week) => ({ name: fill.week(week), week }));
    expect(fill.kept(weeks)).toBe('Weeks 2 to 4, 6, 8 and 9 are kept as written.');
    expect(fill.kept(weeks.slice(3, 4))).toBe('Week 6 is kept as written.');
  });

  it('CELL-12 copying to the groups after names them; leaving it changes nothing', async () => {
    const edits = open({ text: USUAL });
    await user.click(button(fill.open.groups));
    await user.click(screen.getByLabelText(fill.steps.easy));
    expect(screen.getByText(/^Dunlin and Curlew get this session/)).toBeDefined();
    await user.click(screen.getByLabelText(fill.steps.sets));
    expect(screen.getByText(/one set more than for the group before/)).toBeDefined();
    await user.click(button(fill.cancel));
    expect(edits).toEqual([]);
  });

  it('CELL-12 where a session cannot grow as asked, that is said as well', async () => {
    // 2 h 27 min: two sets, each a minute longer, fit into 2 h 30 min once and not twice.
    open({ text: '5 min easy walk; 2 x (60 min run, 8 min 30 s walk); 5 min easy walk' });
    await user.click(button(fill.open.weeks));
    await user.click(screen.getByLabelText(fill.steps.hard));
    await user.click(screen.getByLabelText('1 min'));
    expect(screen.getByText(fill.stops('Week 3'))).toBeDefined();
    await user.click(screen.getByLabelText(fill.steps.sets));
    expect(screen.getByText(fill.noUp)).toBeDefined();
  });

  it('CELL-12 what cannot be read is not copied', async () => {
    open({ text: '5 min hop' });
    await user.click(button(fill.open.weeks));
    expect(screen.queryByRole('dialog')).toBeNull();
    expect(screen.getByText(fill.unreadable)).toBeDefined();
    cleanup();
    open({ text: '' });
    expect(screen.getByText(fill.unwritten)).toBeDefined();
  });
});
