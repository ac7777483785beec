import { render, screen, within } from '@testing-library/react';
import { describe, expect, it, vi } from 'vitest';
import { Router } from 'wouter';
import { useHashLocation } from 'wouter/use-hash-location';
import { ARRIVE, draftWords } from '../../src/copy/draft.ts';
import { answerSentences, wishSentence } from '../../src/copy/draft-answers.ts';
import { draftResult, draftForm as words } from '../../src/copy/draft-form.ts';
import { parsePlan } from '../../src/domain/programme/parse.ts';
import { blankSheet } from '../../src/domain/workshop/blank.ts';
import type { Cell, Sheet } from '../../src/domain/workshop/sheet.ts';
import { AppProvider } from '../../src/ui/app-context.tsx';
import { DraftForm } from '../../src/ui/workshop/DraftForm.tsx';
import { fakeApp } from '../drivers/fake-app.ts';
import { here, user } from './show.tsx';

const EMPTY: Sheet = {
  ...blankSheet('heron-loop-k3', 'en'),
  leader: 'Imogen',
  goal: { name: 'Heron Loop', distanceM: 5000 },
  groups: [
    { id: 'wren', name: 'Wren', for: 'All walking' },
    { id: 'swift', name: 'Swift', for: '' },
  ],
  weeks: blankSheet('', '').weeks.map((week) => ({
    ...week,
    sessions: { wren: [{ text: '' }], swift: [{ text: '' }] },
  })),
};

const withCell = (sheet: Sheet, week: number, group: string, cell: Cell): Sheet => ({
  ...sheet,
  weeks: sheet.weeks.map((one, n) =>
    n === week ? { ...one, sessions: { ...one.sessions, [group]: [cell] } } : one,
  ),
});

function open(sheet: Sheet = EMPTY) {
  const onTake = vi.fn<(sheet: Sheet) => void>();
  render(
    <AppProvider app={fakeApp()}>
      <Router hook={useHashLocation}>
        <DraftForm sheet={sheet} onTake={onTake} here="/draft" home="/desk" />
      </Router>
    </AppProvider>,
  );
  return { onTake };
}

const field = (name: string, n = 0) => screen.getAllByLabelText(name)[n] as HTMLInputElement;
const button = (name: string) => screen.getByRole('button', { name });
async function write(name: string, value: string, n = 0) {
  await user.clear(field(name, n));
  await user.type(field(name, n), value);
}
async function answerAll() {
  await write(words.walk, '20');
  await write(words.run, '0');
  await write(words.walk, '40', 1);
  await write(words.run, '12', 1);
}
const isDrafted = () => screen.findByRole('heading', { name: draftResult.title });

describe('drafting a programme', () => {
  it('DRAFT-13 an empty sheet leaves to be asked what only the leader knows', () => {
    open();
    expect(field(words.weeks).value).toBe('6');
    expect(field(words.distance).value).toBe('5');
    expect(field(words.session).value).toBe('45');
    expect([0, 1].map((n) => field(words.name, n).value)).toEqual(['Wren', 'Swift']);
    expect([0, 1].map((n) => field(words.walk, n).value)).toEqual(['', '']);
    expect([0, 1].map((n) => field(words.run, n).value)).toEqual(['', '']);
  });

  it('DRAFT-13 a written sheet suggests its weeks, lengths and what its first week holds', () => {
    const text = '5 min easy walk; 4 x (3 min run, 2 min walk); 5 min easy walk';
    const walked = '5 min easy walk; 20 min brisk walk; 5 min easy walk';
    open({
      ...EMPTY,
      weeks: EMPTY.weeks.map((week) => ({
        ...week,
        sessions: { wren: [{ text: walked }], swift: [{ text }] },
      })),
    });
    expect(field(words.weeks).value).toBe('4');
    expect(field(words.session).value).toBe('30');
    expect([field(words.walk, 0).value, field(words.run, 0).value]).toEqual(['30', '0']);
    expect(field(words.run, 1).value).toBe('3');
  });

  it('DRAFT-13 answers that are missing are told at their fields, and the first one has the focus', async () => {
    const { onTake } = open();
    await user.click(button(words.draft));
    expect(screen.getByText(words.wrong(4))).toBeDefined();
    expect(document.activeElement).toBe(field(words.walk));
    const told = wishSentence({ code: 'range', field: 'walk' });
    const id = field(words.walk).getAttribute('aria-describedby') ?? '';
    expect(document.getElementById(id)?.textContent).toBe(told);
    await write(words.walk, '20');
    expect(field(words.walk).getAttribute('aria-invalid')).toBe('false');
    expect(screen.getByText(words.wrong(3))).toBeDefined();
    expect(onTake).not.toHaveBeenCalled();
  });

  it('DRAFT-13 numbers may have a comma, and words are not taken for numbers', async () => {
    open();
    await answerAll();
    await write(words.distance, 'far');
    await user.click(button(words.draft));
    expect(field(words.distance).getAttribute('aria-invalid')).toBe('true');
    await write(words.distance, '3,5');
    await user.click(button(words.draft));
    expect(await isDrafted()).toBeDefined();
  });

  it('DRAFT-13 weeks follow the dates when the leader says so', async () => {
    open({ ...EMPTY, startDate: '2027-03-01', goal: { ...EMPTY.goal, date: '2027-04-25' } });
    expect(field(words.weeks).value).toBe('8');
    await write(words.weeks, '6');
    expect(screen.getByText(words.weeksFit(8))).toBeDefined();
    await user.click(button(words.weeksTake(8)));
    expect(field(words.weeks).value).toBe('8');
    expect(screen.queryByText(words.weeksFit(8))).toBeNull();
  });

  it('DRAFT-13 groups come and go', async () => {
    open();
    await user.click(button(words.add));
    expect(field(words.name, 2).value).toBe(words.group(3));
    await user.click(button(words.remove('Wren')));
    expect([0, 1].map((n) => field(words.name, n).value)).toEqual(['Swift', words.group(3)]);
    await user.click(button(words.remove('Swift')));
    expect(screen.queryByRole('button', { name: words.remove(words.group(3)) })).toBeNull();
  });

  it('DRAFT-14 the draft is shown week by week and taken over only when asked', async () => {
    const { onTake } = open();
    await answerAll();
    await user.click(button(words.draft));
    await isDrafted();
    for (let n = 1; n <= 6; n += 1)
      expect(screen.getByRole('heading', { name: new RegExp(`^Week ${n}: `) })).toBeDefined();
    expect(screen.getAllByRole('img', { name: /^Warm-up: easy walk 5 minutes/ })).toHaveLength(12);
    expect(screen.getAllByText(/^A light week before the event/)).toHaveLength(2);
    expect(onTake).not.toHaveBeenCalled();
    await user.click(button(draftResult.take));
    const [sheet] = onTake.mock.calls[0] ?? [];
    expect(sheet).toMatchObject({
      id: 'heron-loop-k3',
      title: 'Six weeks to Heron Loop',
      leader: 'Imogen',
      groups: EMPTY.groups,
    });
    expect(sheet?.weeks.map(({ focus }) => focus).at(-1)).toBe(draftWords.focus.event);
    for (const week of sheet?.weeks ?? [])
      for (const cells of Object.values(week.sessions))
        for (const { text } of cells) expect(parsePlan(text).ok).toBe(true);
  });

  it('DRAFT-14 who does not arrive is told, and changed answers are drafted again', async () => {
    open();
    await answerAll();
    await write(words.weeks, '3');
    await user.click(button(words.draft));
    await isDrafted();
    const [said = ''] = answerSentences(
      {
        group: 'swift',
        arrive: 'run',
        arrives: false,
        reached: { code: 'run-on', reached: 0 as never, needed: 0 as never },
      },
      'Swift',
    );
    const line = screen.getByText(said).parentElement as HTMLElement;
    expect(line.textContent).toMatch(/It would take \d+ weeks\./);
    await user.click(button(draftResult.change));
    expect(field(words.weeks).value).toBe('3');
    expect(field(words.walk, 1).value).toBe('40');
    await write(words.weeks, '8');
    const swift = screen.getByRole('group', { name: words.group(2) });
    await user.click(within(swift).getByRole('radio', { name: new RegExp(ARRIVE.mix[0]) }));
    await user.click(button(words.draft));
    await isDrafted();
    expect(screen.queryByText(said)).toBeNull();
    expect(screen.getByText('Swift should be able to walk and run the distance.')).toBeDefined();
  });

  it('DRAFT-14 the phone’s own way back from a draft leads to the answers as they were given', async () => {
    open();
    await answerAll();
    await user.click(button(words.draft));
    await isDrafted();
    window.history.back();
    expect(await screen.findByRole('heading', { name: words.title })).toBeDefined();
    expect([field(words.walk).value, field(words.run, 1).value]).toEqual(['20', '12']);
  });

  it('DRAFT-14 the address of a draft that is not there any more leads to the questions', async () => {
    window.history.replaceState(null, '', '#/draft/seen');
    open();
    await vi.waitFor(() => expect(here()).toBe('/draft'));
    expect(screen.getByRole('heading', { name: words.title })).toBeDefined();
  });

  it('DRAFT-15 a pinned session is kept, shown as such, and missed when its week is gone', async () => {
    const pinned: Cell = {
      text: '5 min easy walk; 6 x (2 min run, 1 min walk); 5 min easy walk',
      pinned: true,
    };
    const { onTake } = open(withCell(EMPTY, 3, 'swift', pinned));
    expect(screen.getByText(words.pinned(1))).toBeDefined();
    await answerAll();
    await user.click(button(words.draft));
    await isDrafted();
    expect(screen.getAllByText(draftResult.pinned)).toHaveLength(1);
    await user.click(button(draftResult.take));
    expect(onTake.mock.calls[0]?.[0].weeks[3]?.sessions.swift).toEqual([pinned]);
    await user.click(button(draftResult.change));
    await write(words.weeks, '3');
    await user.click(button(words.draft));
    await isDrafted();
    expect(screen.getByText(words.pinnedLost(1))).toBeDefined();
  });

  it('DRAFT-14 the way back changes nothing', async () => {
    const { onTake } = open();
    await user.click(screen.getByRole('link', { name: new RegExp(words.back) }));
    expect(here()).toBe('/desk');
    expect(onTake).not.toHaveBeenCalled();
  });
});
