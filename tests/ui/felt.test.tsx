import { screen, within } from '@testing-library/react';
import { describe, expect, it } from 'vitest';
import { fieldProblem } from '../../src/copy/by-hand.ts';
import { effortWords } from '../../src/copy/effort.ts';
import { felt } from '../../src/copy/felt.ts';
import { log } from '../../src/copy/log.ts';
import { PLACE, SIDE } from '../../src/copy/words.ts';
import type { LogEntry } from '../../src/domain/log/entry.ts';
import type { Percent } from '../../src/domain/units.ts';
import { feelingOf } from '../../src/ui/screens/Felt.tsx';
import type { FakeApp } from '../drivers/fake-app.ts';
import { ENTRIES } from '../drivers/gallery/states.ts';
import { askedFor, here, show, user } from './show.tsx';

const open = (id = 'e3') => show(`/felt/${id}`, { entries: ENTRIES });
const rating = (n: number) => screen.findByRole('radio', { name: `${n}: ${effortWords(n)}` });
/** What was written of how it felt, by entry. */
const said = (app: FakeApp): (readonly [string, unknown])[] =>
  askedFor(app, 'write').map(([entry]) => {
    const { id, feeling } = entry as LogEntry;
    return [id, feeling];
  });
const press = async (name: string) => user.click(screen.getByRole('button', { name }));

describe('how hard it was', () => {
  it('UI-9 every rating from 0 to 10 has our own words beside its number', async () => {
    open();
    for (let n = 0; n <= 10; n++) expect(await rating(n)).toBeDefined();
  });

  it('UI-9 a rating is compared with what was meant', async () => {
    open();
    expect(await screen.findByText('Meant to be 5: whole sentences, breath deeper.')).toBeDefined();
    await user.click(await rating(5));
    expect(screen.getByText(felt.same)).toBeDefined();
    await user.click(await rating(6));
    expect(screen.getByText(felt.harder(1))).toBeDefined();
    await user.click(await rating(8));
    expect(screen.getByText(felt.harder(3))).toBeDefined();
    await user.click(await rating(2));
    expect(screen.getByText(felt.easier(3))).toBeDefined();
  });

  it('UI-9 a target between two numbers is compared as the advice and the plots do', async () => {
    const target = 55 as Percent;
    show('/felt/e3', {
      entries: ENTRIES.map((entry) => (entry.id === 'e3' ? { ...entry, target } : entry)),
    });
    expect(await screen.findByText('Meant to be 6: whole sentences, breath deeper.')).toBeDefined();
    for (const near of [5, 6]) {
      await user.click(await rating(near));
      expect(screen.getByText(felt.same)).toBeDefined();
    }
    // A point and a half below: not yet the two points that "easier than meant" begins with.
    await user.click(await rating(4));
    expect(screen.getByText(felt.easier(1))).toBeDefined();
    await user.click(await rating(3));
    expect(screen.getByText(felt.easier(2))).toBeDefined();
  });

  it('UI-9 everything can be left out', async () => {
    const app = open();
    await rating(0);
    await press(felt.save);
    expect(said(app)).toEqual([['e3', {}]]);
  });

  it('UI-9 it can be left for later, and nothing is written then', async () => {
    const app = open();
    await user.click(await screen.findByRole('link', { name: felt.later }));
    expect(here()).toBe('/done');
    expect(said(app)).toEqual([]);
    expect(screen.getByText(log.unrated, { exact: false })).toBeDefined();
  });

  it('UI-9 effort, niggle with place, side and severity, and note are kept as they were given', async () => {
    const app = open();
    await user.click(await rating(6));
    await user.click(screen.getByText(felt.niggleYes));
    await user.click(screen.getByRole('radio', { name: PLACE.shin }));
    await user.click(screen.getByRole('radio', { name: SIDE.left }));
    await user.click(screen.getByText(felt.severities[2][0]));
    await user.type(screen.getByLabelText(felt.note, { exact: false }), ' Wind ');
    await press(felt.save);
    expect(said(app)).toEqual([
      ['e3', { effort: 6, niggle: { place: 'shin', side: 'left', severity: 2 }, note: 'Wind' }],
    ]);
  });

  it('FELT-1 ordinary soreness is told apart from a niggle, in words, and is none', async () => {
    const app = open();
    await rating(0);
    expect(screen.getByText(felt.onlySoreHelp)).toBeDefined();
    expect(screen.getByText(felt.niggleYesHelp)).toBeDefined();
    await user.click(screen.getByText(felt.onlySore));
    expect(screen.queryByText(felt.where)).toBeNull();
    await press(felt.save);
    expect(said(app)).toEqual([['e3', { soreness: true }]]);
  });

  it('FELT-1 a niggle and ordinary soreness may come together, each in its own field', async () => {
    const app = open();
    await rating(0);
    await user.click(screen.getByText(felt.niggleYes));
    await user.click(screen.getByRole('radio', { name: PLACE.knee }));
    await user.click(screen.getByText(felt.alsoSore));
    await press(felt.save);
    expect(said(app)).toEqual([['e3', { niggle: { place: 'knee' }, soreness: true }]]);
  });

  it('FELT-1 a niggle that made someone stop is answered with asking, never with going on', async () => {
    open();
    await rating(0);
    await user.click(screen.getByText(felt.niggleYes));
    expect(screen.getByText(felt.niggleDo)).toBeDefined();
    await user.click(screen.getByText(felt.severities[3][0]));
    expect(screen.getByText(felt.niggleStop)).toBeDefined();
    expect(felt.niggleStop).toMatch(/doctor or physiotherapist/);
    expect(screen.queryByText(felt.niggleDo)).toBeNull();
  });

  it('FELT-1 a place in the muscles of both sides without pain is no answer', async () => {
    const app = open();
    await rating(0);
    await user.click(screen.getByText(felt.niggleNo));
    await press(felt.save);
    expect(said(app)).toEqual([['e3', {}]]);
  });

  it('FELT-2 how much was done is shown where it is asked how hard it was', async () => {
    open();
    expect(await screen.findByText(/17 min of 34 min done/)).toBeDefined();
  });

  it('FELT-2 a distance is kept in whole metres; none is left out', async () => {
    const app = open();
    const field = await screen.findByLabelText(felt.distance);
    await user.type(field, '2,15');
    await press(felt.save);
    expect(askedFor(app, 'write')[0]?.[0]).toMatchObject({ id: 'e3', distanceM: 2150 });
  });

  it('FELT-2 a distance that nobody runs is caught at the field, and nothing is written', async () => {
    const app = open();
    const field = (await screen.findByLabelText(felt.distance)) as HTMLInputElement;
    // 1,060 seconds of moving.
    await user.type(field, '42');
    expect(field.getAttribute('aria-invalid')).toBe('true');
    expect(screen.getByText(fieldProblem('distance-fast'))).toBeDefined();
    await press(felt.save);
    expect(said(app)).toEqual([]);
    expect(here()).toBe('/felt/e3');
    await user.clear(field);
    await user.type(field, 'far');
    expect(screen.getByText(fieldProblem('distance-number'))).toBeDefined();
    await user.clear(field);
    expect(field.getAttribute('aria-invalid')).toBe('false');
    await press(felt.save);
    expect(said(app)).toHaveLength(1);
  });

  it('FELT-2 there is no effort beyond 10, and none below 0', async () => {
    open();
    await rating(0);
    const numbers = [...document.querySelectorAll('.scale input')].map((input) =>
      Number.parseInt(input.getAttribute('aria-label') ?? '', 10),
    );
    expect(numbers.sort((a, b) => a - b)).toEqual([0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10]);
  });

  it('UI-10 a warning sign is its own field and is answered with what to do', async () => {
    const app = open();
    await user.click(await screen.findByRole('checkbox', { name: new RegExp(felt.warningBox) }));
    const alert = within(screen.getByText(felt.warningDoTitle).parentElement as HTMLElement);
    for (const line of felt.warningDo) expect(alert.getByText(line)).toBeDefined();
    await press(felt.save);
    expect(said(app)).toEqual([['e3', { warningSign: true }]]);
  });

  it('UI-10 a warning sign in the list of sessions stays apart from niggle and note', async () => {
    show('/done/e1', { entries: ENTRIES });
    expect(await screen.findByText(log.warningFelt)).toBeDefined();
    expect(screen.queryByText(log.niggle)).toBeNull();
  });

  it('UI-9 what was answered before is there to be changed', async () => {
    const app = open('e2');
    expect(((await rating(7)) as HTMLInputElement).checked).toBe(true);
    await user.click(await rating(4));
    await press(felt.save);
    const [[, feeling] = []] = said(app);
    expect(feeling).toEqual({ ...ENTRIES[1]?.feeling, effort: 4 });
  });

  it('UI-9 a place without pain and a note of blanks are no answers', () => {
    const none = { effort: undefined, warning: false, note: '   ' };
    expect(feelingOf({ ...none, niggle: { has: 'no' } })).toEqual({});
    expect(feelingOf({ ...none, niggle: { has: 'yes' } })).toEqual({});
    // What was given at another time is not lost here.
    expect(feelingOf({ ...none, effortLater: 3, niggle: {} })).toEqual({ effortLater: 3 });
  });
});

describe('the sessions that ended', () => {
  it('UI-11 each row says when, which, how long and how hard', async () => {
    show('/done', { entries: ENTRIES });
    const rows = await screen.findAllByRole('article');
    expect(rows).toHaveLength(3);
    const second = within(rows[1] as HTMLElement);
    expect(second.getByRole('link', { name: 'Fri, 5 March 2027' })).toBeDefined();
    expect(second.getByText(/Week 1, session 2, Curlew/)).toBeDefined();
    expect(second.getByText('Effort 7, meant 5. Niggle: knee.')).toBeDefined();
  });

  it('UI-11 a list of thousands draws one page at a time', async () => {
    const [entry] = ENTRIES;
    if (entry === undefined) throw new Error('no entry');
    const entries = Array.from({ length: 3000 }, (_, i) => ({ ...entry, id: `many-${i}` }));
    show('/done', { entries });
    expect(await screen.findAllByRole('article')).toHaveLength(30);
    await user.click(screen.getByRole('button', { name: log.more(30) }));
    expect(screen.getAllByRole('article')).toHaveLength(60);
  });
});
