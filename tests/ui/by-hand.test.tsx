import { cleanup, screen, waitFor, within } from '@testing-library/react';
import { describe, expect, it } from 'vitest';
import { again } from '../../src/copy/again.ts';
import { byHand, fieldProblem, there } from '../../src/copy/by-hand.ts';
import { effortWords } from '../../src/copy/effort.ts';
import { felt } from '../../src/copy/felt.ts';
import { log } from '../../src/copy/log.ts';
import type { LogEntry } from '../../src/domain/log/entry.ts';
import { DEMO, type FakeApp, SETTINGS } from '../drivers/fake-app.ts';
import { ENTRIES } from '../drivers/gallery/states.ts';
import { askedFor, here, show, user } from './show.tsx';

const ID = DEMO.id;
const chosen = { [ID]: 'curlew' };
const written = (app: FakeApp): LogEntry[] =>
  askedFor(app, 'write').map(([entry]) => entry as LogEntry);
const press = async (name: string) => user.click(await screen.findByRole('button', { name }));
const fill = async (name: string, value: string) => {
  const field = (await screen.findByLabelText(name)) as HTMLInputElement;
  await user.clear(field);
  if (value !== '') await user.type(field, value);
};
const field = (name: string) => screen.getByLabelText(name) as HTMLInputElement;

/** Writing takes until it is let go. */
function slowly(app: FakeApp): () => void {
  const { write } = app.log.getState();
  let letGo = (): void => {};
  const wait = new Promise<void>((resolve) => {
    letGo = resolve;
  });
  app.log.setState({
    write: async (entry) => {
      await wait;
      await write(entry);
    },
  });
  return letGo;
}

describe('a session written down by hand', () => {
  const open = () => show(`/done/new/${ID}/2/1`, { chosen });

  it('FELT-4 everything is filled in as if it had just ended, and leads to how hard it was', async () => {
    const app = open();
    expect((await screen.findByLabelText<HTMLInputElement>(byHand.date)).value).toBe('2027-03-08');
    const [first] = DEMO.weeks[1]?.sessions.curlew ?? [];
    await press(byHand.next);
    const [entry] = written(app);
    expect(entry).toMatchObject({
      format: 'towpath-log/2',
      id: 'made-1',
      programme: { id: ID, revision: DEMO.revision, title: DEMO.title },
      group: { id: 'curlew', name: 'Curlew' },
      week: 2,
      session: 1,
      plan: first?.text,
      target: DEMO.weeks[1]?.effort,
      how: 'by-hand',
      outcome: 'finished',
      zone: 'Europe/Amsterdam',
      offsetMinutes: 60,
      localDate: '2027-03-08',
      feeling: {},
    });
    expect(here()).toBe('/felt/made-1');
    expect(await screen.findByText(/Written down by hand/)).toBeDefined();
  });

  it('FELT-4 tapped twice while it is being written it is written once', async () => {
    const app = open();
    const letGo = slowly(app);
    await press(byHand.next);
    await press(byHand.next);
    letGo();
    await waitFor(() => expect(here()).toBe('/felt/made-1'));
    expect(written(app)).toHaveLength(1);
  });

  it('FELT-4 a second tap where the first led on saves no answers that nobody gave', async () => {
    const app = open();
    const tap = async (name: string) => {
      const target = await screen.findByRole('button', { name });
      await user.pointer({ keys: '[MouseLeft]', target, coords: { clientX: 90, clientY: 700 } });
    };
    await tap(byHand.next);
    await tap(felt.save);
    expect(here()).toBe('/felt/made-1');
    expect(written(app)).toHaveLength(1);
    await new Promise((resolve) => setTimeout(resolve, 600));
    await press(felt.save);
    await waitFor(() => expect(here()).toBe('/done/made-1'));
  });

  it('FELT-4 another session, another day and part of it are kept as they were given', async () => {
    const app = open();
    await user.selectOptions(await screen.findByLabelText(byHand.group), 'wren');
    await user.selectOptions(field(byHand.week), '1');
    await user.selectOptions(field(byHand.session), '2');
    await fill(byHand.date, '2027-03-03');
    await fill(byHand.time, '07:15');
    await user.click(screen.getByText(byHand.part));
    await fill(byHand.minutes, '12');
    await user.click(screen.getByText(byHand.hows.there[0]));
    await press(byHand.next);
    expect(written(app)).toMatchObject([
      {
        group: { id: 'wren' },
        week: 1,
        session: 2,
        startedAt: Date.UTC(2027, 2, 3, 6, 15),
        localDate: '2027-03-03',
        outcome: 'ended-early',
        doneSeconds: 720,
        activeSeconds: 720,
        covered: [[0, 720]],
        how: 'there',
      },
    ]);
  });

  it('FELT-4 a day to come and 40 hours are caught at their fields, and nothing is written', async () => {
    const app = open();
    await fill(byHand.date, '2027-03-09');
    expect(screen.getByText(fieldProblem('date-future'))).toBeDefined();
    expect(field(byHand.date).getAttribute('aria-invalid')).toBe('true');
    const described = field(byHand.date).getAttribute('aria-describedby')?.split(' ') ?? [];
    expect(described.map((id) => document.getElementById(id)?.textContent)).toContain(
      fieldProblem('date-future'),
    );
    await user.click(screen.getByText(byHand.part));
    await fill(byHand.minutes, '2400');
    expect(screen.getByText(fieldProblem('minutes-long'))).toBeDefined();
    await press(byHand.next);
    expect(written(app)).toEqual([]);
    expect(here()).toBe(`/done/new/${ID}/2/1`);
    await fill(byHand.date, '2027-03-07');
    await fill(byHand.minutes, '24');
    await press(byHand.next);
    expect(written(app)).toHaveLength(1);
  });

  it('FELT-4 a time to come and a session that would still go on are caught', async () => {
    const app = open();
    // It is 19:30 in Amsterdam.
    await fill(byHand.time, '19:40');
    expect(screen.getByText(fieldProblem('time-future'))).toBeDefined();
    await fill(byHand.time, '19:29');
    expect(screen.getByText(fieldProblem('ends-future'))).toBeDefined();
    await press(byHand.next);
    expect(written(app)).toEqual([]);
  });

  it('FELT-4 what is empty is asked for when it is to be saved, not before', async () => {
    const app = open();
    await fill(byHand.time, '');
    await user.click(screen.getByText(byHand.part));
    expect(screen.queryByText(fieldProblem('time-none'))).toBeNull();
    expect(screen.queryByText(fieldProblem('minutes-none'))).toBeNull();
    await press(byHand.next);
    expect(screen.getByText(fieldProblem('time-none'))).toBeDefined();
    expect(screen.getByText(fieldProblem('minutes-none'))).toBeDefined();
    expect(written(app)).toEqual([]);
  });

  it('FELT-4 another session at the same time is pointed out and does not stop anybody', async () => {
    const app = show(`/done/new/${ID}/2/1`, { chosen, entries: ENTRIES });
    await fill(byHand.date, '2027-03-05');
    await fill(byHand.time, '18:50');
    expect(screen.getByText(byHand.same('Fri, 5 March 2027', '18:40'))).toBeDefined();
    await press(byHand.next);
    expect(written(app)).toHaveLength(1);
  });

  it('FELT-4 it is reached from the sessions that ended and from the page of a session', async () => {
    show('/done', { chosen });
    await user.click(await screen.findByRole('link', { name: log.add }));
    expect(here()).toBe('/done/new');
    expect(await screen.findByLabelText(byHand.week)).toBeDefined();
  });

  it('FELT-4 without a session in its address it begins with the one that was next', async () => {
    const first = ENTRIES[0] as LogEntry;
    const done = { ...first, id: 'e9', week: 1, session: 1, outcome: 'finished' } as const;
    const at = Date.UTC(2027, 2, 3, 9);
    show('/done/new', {
      chosen,
      entries: [
        {
          ...done,
          group: { id: 'curlew', name: 'Curlew' },
          localDate: '2027-03-03',
          startedAt: at,
        },
      ],
      now: Date.UTC(2027, 2, 5, 18),
    });
    expect((await screen.findByLabelText<HTMLSelectElement>(byHand.session)).value).toBe('2');
    expect((field(byHand.week) as unknown as HTMLSelectElement).value).toBe('1');
  });

  it('FELT-4 without a programme it says so', async () => {
    show('/done/new', { programmes: { programmes: [] } });
    expect(await screen.findByRole('heading', { level: 1 })).toBeDefined();
    expect(screen.queryByRole('button', { name: byHand.next })).toBeNull();
  });
});

describe('a session put right', () => {
  it('FELT-5 a new time is by the clocks of the place where it began, and the rest stays', async () => {
    const app = show('/done/e2/edit', {
      entries: ENTRIES,
      zone: { offsetMinutes: 540, zone: 'Asia/Tokyo' },
    });
    expect((await screen.findByLabelText<HTMLInputElement>(byHand.time)).value).toBe('18:40');
    expect(screen.getByText(byHand.zone('Europe/Amsterdam'))).toBeDefined();
    await fill(byHand.time, '07:30');
    await press(byHand.save);
    const [, before] = ENTRIES;
    expect(written(app)).toEqual([
      {
        ...before,
        startedAt: Date.UTC(2027, 2, 5, 6, 30),
        editedAt: Date.UTC(2027, 2, 8, 18, 30),
      },
    ]);
    expect(here()).toBe('/done/e2');
  });

  it('FELT-5 saved untouched it is the same to the second', async () => {
    const app = show('/done/e2/edit', { entries: ENTRIES });
    await press(byHand.save);
    expect(written(app)).toEqual([{ ...ENTRIES[1], editedAt: Date.UTC(2027, 2, 8, 18, 30) }]);
  });

  it('FELT-5 how much was done is put right, and too much is caught', async () => {
    const app = show('/done/e3/edit', { entries: ENTRIES });
    await user.click(await screen.findByText(byHand.part));
    await fill(byHand.minutes, '2400');
    expect(screen.getByText(fieldProblem('minutes-long'))).toBeDefined();
    await press(byHand.save);
    expect(written(app)).toEqual([]);
    await fill(byHand.minutes, '25');
    await press(byHand.save);
    expect(written(app)).toMatchObject([{ id: 'e3', doneSeconds: 1500, covered: [[0, 1500]] }]);
  });

  it('FELT-5 which session it was can be put right unless the app led it', async () => {
    show('/done/e3/edit', { entries: ENTRIES });
    await screen.findByLabelText(byHand.date);
    expect(screen.queryByLabelText(byHand.week)).toBeNull();
  });

  it('FELT-5 which session it was is put right with its plan and its target', async () => {
    const entries = [{ ...(ENTRIES[0] as LogEntry), how: 'by-hand' as const }];
    const app = show('/done/e3/edit', { entries });
    await user.selectOptions(await screen.findByLabelText(byHand.week), '1');
    await press(byHand.save);
    expect(written(app)).toMatchObject([
      {
        id: 'e3',
        week: 1,
        session: 1,
        plan: DEMO.weeks[0]?.sessions.curlew?.[0]?.text,
        target: DEMO.weeks[0]?.effort,
        doneSeconds: ENTRIES[0]?.doneSeconds,
      },
    ]);
  });

  it('FELT-5 it is removed only after a second yes', async () => {
    const app = show('/done/e2', { entries: ENTRIES });
    await press(log.remove);
    const dialog = within(screen.getByRole('dialog', { name: log.removeTitle }));
    expect(dialog.getByText(log.removeBody)).toBeDefined();
    await user.click(dialog.getByRole('button', { name: log.removeNo }));
    expect(askedFor(app, 'remove')).toEqual([]);
    expect(screen.queryByRole('dialog')).toBeNull();
    await press(log.remove);
    await press(log.removeYes);
    expect(askedFor(app, 'remove')).toEqual([['e2']]);
    expect(here()).toBe('/done');
    expect(await screen.findAllByRole('article')).toHaveLength(2);
  });

  it('FELT-5 everything that was said of it is on its page', async () => {
    const entry: LogEntry = {
      ...(ENTRIES[1] as LogEntry),
      how: 'there',
      distanceM: 3400,
      editedAt: Date.UTC(2027, 2, 7, 12),
      feeling: {
        effort: 6,
        effortLater: 5,
        soreness: true,
        niggle: { place: 'calf', side: 'right', severity: 2 },
      },
    };
    show('/done/e2', { entries: [entry], zone: { offsetMinutes: 0, zone: 'Europe/London' } });
    await screen.findByText('3.4 km');
    for (const text of [
      log.hows.there,
      'Calf, right, changed how I moved',
      log.soreFelt,
      `5: ${effortWords(5)}.`,
      'Sun, 7 March 2027',
      log.inZone('18:40', 'Europe/Amsterdam'),
    ])
      expect(screen.getByText(text)).toBeDefined();
  });
});

describe('a session with the group', () => {
  const path = `/p/${ID}/1/1`;

  it('FELT-6 one tap writes it down as having just ended, and asks how hard it was', async () => {
    const app = show(path, { chosen });
    await press(there.was);
    const [entry] = written(app);
    const seconds = entry?.doneSeconds ?? 0;
    expect(seconds).toBeGreaterThan(600);
    expect(entry).toMatchObject({
      how: 'there',
      week: 1,
      session: 1,
      outcome: 'finished',
      startedAt: Date.UTC(2027, 2, 8, 18, 30) - seconds * 1000,
    });
    expect(here()).toBe('/felt/made-1');
    expect(await screen.findByText(/With the group/)).toBeDefined();
    expect(screen.getByRole('link', { name: felt.doneChange })).toBeDefined();
  });

  it('FELT-6 two taps write it down once', async () => {
    const app = show(path, { chosen });
    const letGo = slowly(app);
    await press(there.was);
    await press(there.was);
    letGo();
    await waitFor(() => expect(here()).toBe('/felt/made-1'));
    expect(written(app)).toHaveLength(1);
  });

  it('FELT-6 once it is written down that day, it leads there instead of writing it again', async () => {
    const today = { ...(ENTRIES[2] as LogEntry), localDate: '2027-03-08' };
    const app = show(path, { chosen, entries: [today] });
    expect(await screen.findByRole('link', { name: there.already })).toBeDefined();
    expect(screen.queryByRole('button', { name: there.was })).toBeNull();
    expect(written(app)).toEqual([]);
  });

  it('FELT-6 a session of another day does not stand in the way', async () => {
    show(path, { chosen, entries: [ENTRIES[2] as LogEntry] });
    expect(await screen.findByRole('button', { name: there.was })).toBeDefined();
    expect(screen.getByRole('link', { name: there.hand }).getAttribute('href')).toBe(
      `#/done/new/${ID}/1/1`,
    );
  });
});

describe('the effort asked again', () => {
  const wished = { settings: { ...SETTINGS, askAgain: true }, chosen, entries: ENTRIES };
  const title = again.banner('Mon, 8 March 2027');

  it('FELT-3 nobody is asked who did not wish it', async () => {
    show('/done', { chosen, entries: ENTRIES });
    await screen.findAllByRole('article');
    expect(screen.queryByText(title)).toBeNull();
  });

  it('FELT-3 half an hour after the session it is asked above the page, and earlier it is not', async () => {
    show('/done', wished);
    expect(await screen.findByText(title)).toBeDefined();
  });

  it('FELT-3 where something else is asked or done it is not asked as well', async () => {
    for (const [path, asks] of [
      [`/p/${ID}`, true],
      ['/start', true],
      ['/join', false],
      ['/records', false],
      ['/settings', false],
      [`/p/${ID}/1/2`, false],
      [`/p/${ID}/groups`, false],
    ] as const) {
      show(path, wished);
      await screen.findByRole('heading', { level: 1 });
      await waitFor(() => expect(screen.queryAllByText(title)).toHaveLength(asks ? 1 : 0));
      cleanup();
    }
  });

  it('FELT-3 not before half an hour has passed', async () => {
    // It was over at 17:57:40 UTC.
    show('/done', { ...wished, now: Date.UTC(2027, 2, 8, 18, 27, 39) });
    await screen.findAllByRole('article');
    expect(screen.queryByText(title)).toBeNull();
  });

  it('FELT-3 the second answer is kept beside the first, which is not in sight', async () => {
    const entries = [{ ...(ENTRIES[0] as LogEntry), feeling: { effort: 8, note: 'Wind' } }];
    const app = show('/done', { ...wished, entries });
    await user.click(await screen.findByRole('link', { name: again.say }));
    expect(here()).toBe('/felt/e3/again');
    const five = await screen.findByRole('radio', { name: `5: ${effortWords(5)}` });
    expect(document.querySelectorAll('.scale input:checked')).toHaveLength(0);
    await user.click(five);
    await press(again.save);
    expect(written(app)).toEqual([
      { ...entries[0], feeling: { effort: 8, note: 'Wind', effortLater: 5 } },
    ]);
    expect(here()).toBe('/done/e3');
  });

  it('FELT-3 saved without an answer nothing is written', async () => {
    const app = show('/felt/e3/again', wished);
    await press(again.save);
    expect(written(app)).toEqual([]);
  });

  it('FELT-3 it can be waved off for this session', async () => {
    const app = show('/done', wished);
    await press(again.not);
    expect(askedFor(app, 'change')).toEqual([[{ notAgain: 'e3' }]]);
    expect(screen.queryByText(title)).toBeNull();
  });

  it('FELT-3 the wish is off at first, and its reason stands beside it', async () => {
    const app = show('/settings');
    const box = await screen.findByRole('checkbox', { name: new RegExp(again.setting) });
    expect((box as HTMLInputElement).checked).toBe(false);
    expect(screen.getByText(again.settingHelp)).toBeDefined();
    await user.click(box);
    expect(askedFor(app, 'change')).toEqual([[{ askAgain: true }]]);
  });
});
