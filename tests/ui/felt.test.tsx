import { screen, within } from '@testing-library/react';
import { describe, expect, it } from 'vitest';
import { effortWords } from '../../src/copy/effort.ts';
import { felt } from '../../src/copy/felt.ts';
import { log } from '../../src/copy/log.ts';
import { PLACE, SIDE } from '../../src/copy/words.ts';
import { feelingOf } from '../../src/ui/screens/Felt.tsx';
import { ENTRIES } from '../drivers/gallery/states.ts';
import { askedFor, here, show, user } from './show.tsx';

const open = (id = 'e3') => show(`/felt/${id}`, { entries: ENTRIES });
const rating = (n: number) => screen.findByRole('radio', { name: `${n}: ${effortWords(n)}` });
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

  it('UI-9 everything can be left out', async () => {
    const app = open();
    await rating(0);
    await press(felt.save);
    expect(askedFor(app, 'feel')).toEqual([['e3', {}]]);
  });

  it('UI-9 it can be left for later, and nothing is written then', async () => {
    const app = open();
    await user.click(await screen.findByRole('link', { name: felt.later }));
    expect(here()).toBe('/done');
    expect(askedFor(app, 'feel')).toEqual([]);
    expect(screen.getByText(log.unrated, { exact: false })).toBeDefined();
  });

  it('UI-9 effort, niggle with place and side, and note are kept as they were given', async () => {
    const app = open();
    await user.click(await rating(6));
    await user.click(screen.getByText(felt.niggleYes));
    await user.click(screen.getByRole('radio', { name: PLACE.shin }));
    await user.click(screen.getByRole('radio', { name: SIDE.left }));
    await user.type(screen.getByRole('textbox'), ' Wind ');
    await press(felt.save);
    expect(askedFor(app, 'feel')).toEqual([
      ['e3', { effort: 6, niggle: { place: 'shin', side: 'left' }, note: 'Wind' }],
    ]);
  });

  it('UI-9 ordinary soreness is told apart from a niggle, and is none', async () => {
    const app = open();
    await rating(0);
    expect(screen.getByText(felt.niggleNoHelp)).toBeDefined();
    await user.click(screen.getByText(felt.niggleNo));
    await press(felt.save);
    expect(askedFor(app, 'feel')).toEqual([['e3', {}]]);
  });

  it('UI-10 a warning sign is its own field and is answered with what to do', async () => {
    const app = open();
    await user.click(await screen.findByRole('checkbox', { name: new RegExp(felt.warningBox) }));
    const alert = within(screen.getByText(felt.warningDoTitle).parentElement as HTMLElement);
    for (const line of felt.warningDo) expect(alert.getByText(line)).toBeDefined();
    await press(felt.save);
    expect(askedFor(app, 'feel')).toEqual([['e3', { warningSign: true }]]);
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
    const [[, feeling] = []] = askedFor(app, 'feel');
    expect(feeling).toEqual({ ...ENTRIES[1]?.feeling, effort: 4 });
  });

  it('UI-9 a place without pain and a note of blanks are no answers', () => {
    const none = { effort: undefined, warning: false, note: '   ' };
    expect(feelingOf({ ...none, niggle: { has: 'no' } })).toEqual({});
    expect(feelingOf({ ...none, niggle: { has: 'yes' } })).toEqual({});
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
