import { cleanup, render, screen, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { afterEach, describe, expect, it } from 'vitest';
import { Route, Router } from 'wouter';
import { useHashLocation } from 'wouter/use-hash-location';
import { back } from '../../src/copy/back.ts';
import { event, rangeText, readTime } from '../../src/copy/event.ts';
import { followingOf } from '../../src/domain/advice/decide.ts';
import type { LogEntry } from '../../src/domain/log/entry.ts';
import { ms } from '../../src/domain/units.ts';
import { AppProvider } from '../../src/ui/app-context.tsx';
import { Event, LookBack } from '../../src/ui/back/index.ts';
import { byHand, entryWith, TURNS, WALKS } from '../domain/back/entries.ts';
import { DEMO, type FakeOptions, fakeApp } from '../drivers/fake-app.ts';

const user = userEvent.setup();
afterEach(() => {
  cleanup();
  window.history.replaceState(null, '', '#/');
});

function show(path: string, options: FakeOptions = {}): void {
  window.history.replaceState(null, '', `#${path}`);
  const app = fakeApp({
    now: Date.UTC(2027, 3, 7, 12),
    zone: { offsetMinutes: 60, zone: 'Europe/London' },
    ...options,
  });
  render(
    <AppProvider app={app}>
      <Router hook={useHashLocation}>
        <Route path="/back" component={LookBack} />
        <Route path="/event/:id" component={Event} />
      </Router>
    </AppProvider>,
  );
}

const look = (entries: readonly LogEntry[], options: FakeOptions = {}) =>
  show('/back', { entries, ...options });
const plot = (title: string) => within(screen.getByRole('region', { name: title }));
const rowsOf = (title: string): string[][] =>
  within(plot(title).getAllByRole('table', { hidden: true })[0] as HTMLElement)
    .getAllByRole('row', { hidden: true })
    .map((row) => [...row.children].map((cell) => cell.textContent ?? ''));
const shapes = (title: string, selector: string): Element[] => [
  ...screen.getByRole('region', { name: title }).querySelectorAll(`.plot-picture ${selector}`),
];

const SIX_WEEKS: readonly LogEntry[] = [
  entryWith({ localDate: '2027-03-01', feeling: { effort: 5 } }),
  entryWith({ localDate: '2027-03-04', feeling: { effort: 8 }, activeSeconds: 1800 }),
  entryWith({ localDate: '2027-03-22', plan: WALKS, feeling: { effort: 2 } }),
  byHand({ localDate: '2027-04-05' }),
];

const TITLES = [
  back.minutes.title,
  back.longest.title,
  back.felt.title,
  back.guidance.title,
  back.load.title,
];

describe('looking back', () => {
  it('BACK-10 every plot says what it shows and has its numbers in a table', () => {
    look(SIX_WEEKS);
    for (const title of TITLES) {
      const said = plot(title).getByRole('img').getAttribute('aria-label') ?? '';
      expect(said).toMatch(/\d/);
      expect(rowsOf(title).length).toBeGreaterThan(3);
    }
    expect(plot(back.minutes.title).getByRole('img').getAttribute('aria-label')).toBe(
      'Minutes walked and run, week by week. Most in the week of 1 March: 58 minutes. In the week of 5 April, the latest: 28 minutes.',
    );
    expect(plot(back.felt.title).getByRole('img').getAttribute('aria-label')).toBe(
      'How hard 4 sessions felt, against how hard they were meant. 3 with an answer: 1 within a point, 1 harder than meant, 1 easier.',
    );
  });

  it('BACK-10 the tables hold the sums of each week, the latest first', () => {
    look(SIX_WEEKS);
    expect(rowsOf(back.minutes.title)).toEqual([
      ['Week of', 'Walked', 'Run', 'Extra', 'Together'],
      ['5 April', '16', '12', '0', '28'],
      ['29 March', '0', '0', '0', '0'],
      ['22 March', '30', '0', '0', '30'],
      ['15 March', '0', '0', '0', '0'],
      ['8 March', '0', '0', '0', '0'],
      ['1 March', '32', '24', '2', '58'],
    ]);
    // 5 x 28 and 8 x 30 minutes; 2 x 30 minutes.
    expect(rowsOf(back.load.title)).toEqual([
      ['Week of', 'Load', 'With an answer'],
      ['5 April', '0+', '0 of 1'],
      ['29 March', '0', '0 of 0'],
      ['22 March', '60', '1 of 1'],
      ['15 March', '0', '0 of 0'],
      ['8 March', '0', '0 of 0'],
      ['1 March', '380', '2 of 2'],
    ]);
    // 32 walked and 24 run: 32 + 2 x 24.
    expect(rowsOf(back.guidance.title).at(-1)).toEqual(['1 March', '32', '24', '80']);
    expect(rowsOf(back.longest.title).map(([, run]) => run)).toEqual([
      'Longest run',
      '2:00',
      'not known',
      '0:00',
      'not known',
      'not known',
      '2:00',
    ]);
    expect(rowsOf(back.felt.title)[1]).toEqual(['5 April', 'not said', '5']);
    expect(rowsOf(back.felt.title)[3]).toEqual(['4 March', '8: a few words at a time', '5']);
  });

  it('BACK-10 a week that holds what is advised is named, and one below is not called short', () => {
    const often = ['01', '02', '03', '04'].map((day) =>
      entryWith({ localDate: `2027-03-${day}`, plan: '10 min walk; 20 min run; 10 min walk' }),
    );
    look([...often, entryWith({ localDate: '2027-03-08' })]);
    const counted = rowsOf(back.guidance.title).map((row) => row[3]);
    expect(counted.at(-1)).toBe('240, as advised');
    expect(counted.at(-2)).toBe('40');
  });

  it('BACK-11 layers differ by hatching, and every bar has its number', () => {
    look(SIX_WEEKS);
    const fills = new Set(
      shapes(back.minutes.title, 'rect').map((bar) => bar.getAttribute('fill') ?? ''),
    );
    // Walked, run and extra.
    expect(fills.size).toBe(3);
    const numbers = shapes(back.minutes.title, 'text.over').map((text) => text.textContent);
    expect(numbers).toEqual(['58', '0', '0', '30', '0', '28']);
  });

  it('BACK-11 harder, easier and as meant are three shapes, and no answer is none', () => {
    look(SIX_WEEKS);
    const marks = shapes(back.felt.title, '.plot-point').map(
      (mark) => `${mark.getAttribute('d')} ${mark.getAttribute('transform') ?? ''}`,
    );
    expect(marks).toHaveLength(3);
    expect(new Set(marks).size).toBe(3);
    expect(shapes(back.felt.title, '.plot-meant')).toHaveLength(4);
  });

  it('BACK-11 a load that is not all of it has a dashed edge and a plus', () => {
    look([
      entryWith({ localDate: '2027-03-29', feeling: { effort: 5 } }),
      entryWith({ localDate: '2027-03-30' }),
      entryWith({ localDate: '2027-04-05', feeling: { effort: 5 } }),
    ]);
    const bars = shapes(back.load.title, 'rect.plot-bar');
    expect(bars.map((bar) => bar.getAttribute('stroke-dasharray') !== null)).toEqual([true, false]);
    expect(plot(back.load.title).getByText(back.load.partly)).toBeDefined();
  });

  it('BACK-12 eight weeks are drawn of 3,000 sessions, and the ones before on asking', async () => {
    const day = (n: number) => Date.UTC(2027, 3, 5) - n * 2 * 86_400_000;
    const many = Array.from({ length: 3000 }, (_, n) =>
      entryWith({
        startedAt: day(n),
        localDate: new Date(day(n)).toISOString().slice(0, 10),
        feeling: { effort: 5 },
      }),
    );
    look(many);
    expect(rowsOf(back.minutes.title)).toHaveLength(9);
    expect(screen.getByText('15 February to 11 April 2027')).toBeDefined();
    const later = screen.getByRole('button', { name: back.later });
    expect((later as HTMLButtonElement).disabled).toBe(true);
    await user.click(screen.getByRole('button', { name: back.earlier }));
    expect(screen.getByText('21 December 2026 to 14 February 2027')).toBeDefined();
    await user.click(screen.getByRole('button', { name: back.later }));
    expect(screen.getByText('15 February to 11 April 2027')).toBeDefined();
    expect(shapes(back.felt.title, '.plot-meant')).toHaveLength(24);
    expect(plot(back.felt.title).getByText(back.felt.only(24))).toBeDefined();
  });

  it('BACK-12 weeks before the first session are not shown as empty', () => {
    look([entryWith({ localDate: '2027-04-06' })]);
    expect(rowsOf(back.minutes.title)).toHaveLength(2);
    expect(screen.queryByRole('button', { name: back.earlier })).toBeNull();
  });

  it('BACK-12 without a session there is a sentence and no plot', () => {
    look([]);
    expect(screen.getByText(back.empty)).toBeDefined();
    expect(screen.queryByRole('img')).toBeNull();
  });

  it('BACK-13 it says what is not in the numbers', () => {
    look([...SIX_WEEKS, entryWith({ localDate: '2027-04-06', plan: '5 m', activeSeconds: 60 })]);
    expect(screen.getByText(back.guidance.notAll)).toBeDefined();
    expect(screen.getByText(back.minutes.extraHelp)).toBeDefined();
    expect(screen.getByText(back.byHand(1))).toBeDefined();
    expect(screen.getByText(back.notKnown(1))).toBeDefined();
  });

  it('BACK-13 a week without a session yet is met without reproach', () => {
    look([entryWith({ localDate: '2027-03-30' })]);
    expect(screen.getByText(back.noneThisWeek)).toBeDefined();
  });

  it('BACK-13 how each kind of activity counts is in a table with its code', () => {
    look(SIX_WEEKS);
    const [, table] = plot(back.guidance.title).getAllByRole('table', { hidden: true });
    const rows = within(table as HTMLElement).getAllByRole('row', { hidden: true });
    expect(rows).toHaveLength(13);
    expect(rows.map((row) => row.textContent)).toContain('Brisk walk4.817200once');
    expect(rows.map((row) => row.textContent)).toContain('Jog7.512020twice');
    expect(rows.map((row) => row.textContent)).toContain('Stretch2.302101not');
  });

  it('BACK-9 who is asked again later is looked back on by the later answers', () => {
    const entries = [entryWith({ feeling: { effort: 8, effortLater: 4 } })];
    look(entries, { settings: { askAgain: true } });
    expect(rowsOf(back.felt.title)[1]?.[1]).toMatch(/^4:/);
    cleanup();
    look(entries);
    expect(rowsOf(back.felt.title)[1]?.[1]).toMatch(/^8:/);
  });

  it('BACK-14 nothing on the page is named after a published measure or scale', () => {
    look(SIX_WEEKS);
    expect(document.body.textContent).not.toMatch(
      /monoton|strain|sRPE|session.RPE|\bRPE\b|Borg|CR ?10|Foster|TRIMP|training impulse/i,
    );
    expect(screen.getByRole('heading', { name: 'Towpath load' })).toBeDefined();
  });
});

const chosen = { [DEMO.id]: 'curlew' };
const towards = (options: FakeOptions = {}) => show(`/event/${DEMO.id}`, { chosen, ...options });
const estimate = () =>
  within(screen.getByRole('heading', { name: event.howLong }).parentElement as HTMLElement);
const RANGE = /^\d+ (min )?to (\d+ h)?( ?\d+ min)?$/;

describe('towards the event', () => {
  it('EVENT-10 it shows a range, what it assumes, and where the numbers come from', () => {
    towards();
    expect(screen.getByRole('heading', { name: 'Towards Heron Loop' })).toBeDefined();
    expect(screen.getByText('5 km, on Sun, 11 April 2027.')).toBeDefined();
    expect(estimate().getByText(RANGE)).toBeDefined();
    expect(estimate().getByText(event.notGoal)).toBeDefined();
    expect(screen.getByText(/Running at 7:00 to 8:46 for a kilometre/)).toBeDefined();
    expect(screen.getByText(/Compendium of Physical Activities 2024, code 17200/)).toBeDefined();
    expect(screen.getByText(/common practice, no source/)).toBeDefined();
    expect(screen.getByText(event.closing)).toBeDefined();
  });

  it('EVENT-5 own paces give another range', async () => {
    towards();
    const before = estimate().getByText(RANGE).textContent;
    await user.click(screen.getByRole('radio', { name: new RegExp(event.bases.own[0]) }));
    await user.selectOptions(screen.getByLabelText(event.walkPace), event.pace(900));
    await user.selectOptions(screen.getByLabelText(event.runPace), event.pace(600));
    expect(estimate().getByText(RANGE).textContent).not.toBe(before);
    expect(screen.getByText(/Your paces, 5 % faster and slower/)).toBeDefined();
  });

  it('EVENT-10 a group that only walks is told and asked nothing of running', async () => {
    towards({ chosen: { [DEMO.id]: 'wren' } });
    expect(screen.getByText(/Walking at 10:40 to 15:00/)).toBeDefined();
    expect(screen.queryByText(/Running at/)).toBeNull();
    await user.click(screen.getByRole('radio', { name: new RegExp(event.bases.own[0]) }));
    expect(screen.getByLabelText(event.walkPace)).toBeDefined();
    expect(screen.queryByLabelText(event.runPace)).toBeNull();
  });

  it('EVENT-6 measured sessions come first where there are some, and are not offered without', () => {
    const measured = entryWith({ localDate: '2027-04-01', distanceM: 3000, activeSeconds: 1800 });
    towards({ entries: [measured] });
    // 50 minutes at the same speed: 5 % faster and 10 % slower, rounded outwards.
    expect(estimate().getByText('47 to 55 min')).toBeDefined();
    cleanup();
    towards();
    expect(screen.queryByRole('radio', { name: new RegExp(event.bases.measured[0]) })).toBeNull();
  });

  it('EVENT-11 a trial asks for distance and time, and says what is wrong with them', async () => {
    towards();
    await user.click(screen.getByRole('radio', { name: new RegExp(event.bases.trial[0]) }));
    expect(estimate().getByText(event.trialAsk)).toBeDefined();
    await user.type(screen.getByLabelText(event.trialMetres), '3000');
    await user.type(screen.getByLabelText(event.trialTime), '3:20');
    expect(estimate().getByText(event.problem['trial-time'])).toBeDefined();
    await user.clear(screen.getByLabelText(event.trialTime));
    await user.type(screen.getByLabelText(event.trialTime), '20:00');
    // Riegel 1981: 34:22.3, from 2 % faster to 8 % slower.
    expect(estimate().getByText('33 to 38 min')).toBeDefined();
    expect(screen.getByText(/fitted to records and trained runners/)).toBeDefined();
    await user.clear(screen.getByLabelText(event.trialMetres));
    await user.type(screen.getByLabelText(event.trialMetres), 'far');
    expect(estimate().getByText(event.problem.distance)).toBeDefined();
  });

  it('EVENT-11 times are read as they are written, and nothing else is', () => {
    expect(['27:30', ' 1:02:05 ', '90:00', '0:59'].map(readTime)).toEqual([
      1_650_000, 3_725_000, 5_400_000, 59_000,
    ]);
    for (const text of ['', '27', '27:60', '27.30', 'a:b', '-1:00', '1:2:3:4'])
      expect(readTime(text)).toBeUndefined();
  });

  it('EVENT-10 ranges read as people say them', () => {
    const range = (low: number, high: number) => rangeText(ms(low * 60_000), ms(high * 60_000));
    expect(range(40.9, 56.1)).toBe('40 to 57 min');
    expect(range(55, 70)).toBe('55 min to 1 h 10 min');
    expect(range(41.5, 60)).toBe('41 min to 1 h');
    expect(range(65, 80)).toBe('1 h 5 min to 1 h 20 min');
  });

  it('EVENT-7 the finish follows the start', async () => {
    towards({
      entries: [entryWith({ localDate: '2027-04-01', distanceM: 3000, activeSeconds: 1800 })],
    });
    expect(screen.getByText(event.finish('10:47', '10:55'))).toBeDefined();
    const start = screen.getByLabelText(event.start);
    await user.clear(start);
    await user.type(start, '23:30');
    expect(screen.getByText(event.finish('00:17', '00:25'))).toBeDefined();
  });

  it('EVENT-8 without a group its sessions are asked for first', () => {
    towards({ chosen: {} });
    expect(screen.getByText(event.noGroup)).toBeDefined();
    expect(screen.queryByRole('heading', { name: event.howLong })).toBeNull();
  });

  it('EVENT-9 after a warning sign there is no estimate, and the stop signs are there', () => {
    const entries = [
      entryWith({ localDate: '2027-04-01', plan: TURNS, feeling: { warningSign: true } }),
    ];
    towards({ entries });
    expect(screen.getByText(event.warning('Thu, 1 April 2027'))).toBeDefined();
    expect(screen.getByRole('link', { name: event.warningSigns })).toBeDefined();
    expect(screen.queryByText(RANGE)).toBeNull();
  });

  it('EVENT-9 weeks alone do not clear it, and having asked does, as on the first page', () => {
    const entries = [
      entryWith({ localDate: '2027-03-02', plan: TURNS, feeling: { warningSign: true } }),
    ];
    towards({ entries });
    expect(screen.getByText(event.warning('Tue, 2 March 2027'))).toBeDefined();
    cleanup();
    const asked = { on: '2027-03-03', week: 1, group: 'curlew', why: 'asked' } as const;
    const following = [{ ...followingOf(DEMO.id), decisions: [asked] }];
    towards({ entries, following });
    expect(screen.getByText(RANGE)).toBeDefined();
  });
});
