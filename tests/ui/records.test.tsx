import { cleanup, configure, render, screen, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { afterEach, describe, expect, it } from 'vitest';
import { Router } from 'wouter';
import { memoryLocation } from 'wouter/memory-location';
import type { RestorePreview } from '../../src/app/records-contract.ts';
import {
  aboutFile,
  changesOf,
  notTakenLines,
  notTakenTitle,
  restoreProblem,
  records as words,
} from '../../src/copy/records.ts';
import { BACKUP_CODES } from '../../src/domain/exchange/backup-read.ts';
import { fail, ok } from '../../src/domain/result.ts';
import { AppProvider } from '../../src/ui/app-context.tsx';
import { Records } from '../../src/ui/screens/Records.tsx';
import { DEMO, type FakeOptions, fakeApp } from '../drivers/fake-app.ts';

configure({ asyncUtilTimeout: 30_000 });
afterEach(cleanup);
const user = userEvent.setup();

const chosen = { [DEMO.id]: 'wren' };

function show(options: FakeOptions = {}) {
  const app = fakeApp(options);
  const { hook } = memoryLocation({ path: '/records' });
  render(
    <AppProvider app={app}>
      <Router hook={hook}>
        <Records />
      </Router>
    </AppProvider>,
  );
  return app;
}

const asked = (app: ReturnType<typeof fakeApp>, name: string) =>
  app.asked.filter(([each]) => each === name).map(([, ...given]) => given);
const button = (name: string) => screen.findByRole('button', { name });
const choose = async (text: string) =>
  user.upload(screen.getByLabelText(words.choose), new File([text], 'backup.json'));

const PREVIEW: RestorePreview = {
  kind: 'backup',
  madeAt: Date.UTC(2027, 3, 12, 12),
  newer: false,
  damage: 'none',
  days: { first: '2027-03-02', last: '2027-04-08' },
  programmes: ['Six weeks to the Heron Loop'],
  report: [
    { store: 'log', here: 3, inFile: 17, added: 15, changed: 1 },
    { store: 'programmes', here: 0, inFile: 1, added: 1, changed: 0 },
    { store: 'people', here: 0, inFile: 0, added: 0, changed: 0 },
  ],
  notTaken: [
    { store: 'log', key: 'x', why: 'shape' },
    { store: 'log', key: 'y', why: 'shape' },
    { store: 'programmes', key: 'z', why: 'signature' },
  ],
};

describe('how safe the record is', () => {
  it('REC-22 says in plain words whether the browser keeps it, and asks it where it does not', async () => {
    const app = show({ device: { persisted: false } });
    expect(screen.getByText(words.notPersisted)).toBeDefined();
    await user.click(await button(words.ask));
    expect(asked(app, 'records.persist')).toEqual([[]]);
    expect(await screen.findByText(/did not agree/)).toBeDefined();
    cleanup();
    show({ device: { persisted: true } });
    expect(screen.getByText(words.persisted)).toBeDefined();
    expect(screen.queryByRole('button', { name: words.ask })).toBeNull();
    cleanup();
    show();
    expect(screen.getByText(words.unknown)).toBeDefined();
  });

  it('REC-22 says before a file is given out that whoever has it can read it', async () => {
    const app = show();
    expect(screen.getByText(words.backupCare)).toBeDefined();
    expect(screen.getByText(words.logBody).textContent).toMatch(/Notes, niggles and warning signs/);
    await user.click(await button(words.saveBackup));
    expect(await screen.findByText(words.given)).toBeDefined();
    await user.click(await button(words.csv));
    await user.click(await button(words.json));
    expect(asked(app, 'records.saveBackup')).toEqual([[]]);
    expect(asked(app, 'records.saveLog')).toEqual([['csv'], ['json']]);
  });

  it('REC-22 a file that could not be made is told', async () => {
    show({ records: { saveBackup: async () => fail({ code: 'lost', detail: '' }) } });
    await user.click(await button(words.saveBackup));
    expect(await screen.findByText(words.failed)).toBeDefined();
  });
});

describe('taking a backup in', () => {
  it('REC-21 shows what is in it, what it adds and changes, what stays and what is not taken, and waits', async () => {
    let taken = 0;
    show({
      records: {
        open: async () => ok(PREVIEW),
        restore: async () => {
          taken += 1;
          return ok(PREVIEW);
        },
      },
    });
    await choose('{}');
    const heading = await screen.findByRole('heading', { name: words.previewTitle });
    expect(document.activeElement).toBe(heading);
    expect(
      screen.getByText('17 sessions, from Tue, 2 March 2027 to Thu, 8 April 2027.'),
    ).toBeDefined();
    expect(screen.getByText('“Six weeks to the Heron Loop”.')).toBeDefined();
    const row = screen.getByText('Sessions', { selector: 'dt' }).parentElement as HTMLElement;
    expect(
      within(row).getByText('15 new, 1 with something newer, 2 here stay as they are'),
    ).toBeDefined();
    expect(screen.queryByText('What you told a leader')).toBeNull();
    expect(screen.getByRole('heading', { name: notTakenTitle })).toBeDefined();
    for (const line of notTakenLines(PREVIEW.notTaken))
      expect(screen.getByText(line)).toBeDefined();
    expect(taken).toBe(0);
    await user.click(await button(words.take));
    expect(await screen.findByText(words.done)).toBeDefined();
    expect(taken).toBe(1);
    expect(await screen.findByRole('button', { name: words.chooseOther })).toBeDefined();
  });

  it('REC-21 left alone, nothing is taken; with nothing new there is nothing to take', async () => {
    const same = PREVIEW.report.map((each) => ({
      ...each,
      here: each.inFile,
      added: 0,
      changed: 0,
    }));
    const app = show({ records: { open: async () => ok({ ...PREVIEW, report: same }) } });
    await choose('{}');
    expect(await screen.findByText(words.nothingNew)).toBeDefined();
    expect(screen.queryByRole('button', { name: words.take })).toBeNull();
    await user.click(await button(words.leave));
    expect(await button(words.choose)).toBeDefined();
    expect(asked(app, 'records.restore')).toEqual([]);
  });

  it('REC-13, REC-21 what a file is instead, and why a restore failed, is one sentence each', async () => {
    show({ records: { open: async () => fail({ code: 'programme' }) } });
    await choose('{}');
    expect(await screen.findByText(restoreProblem('programme'))).toBeDefined();
    cleanup();
    show({
      records: { open: async () => ok(PREVIEW), restore: async () => fail({ code: 'full' }) },
    });
    await choose('{}');
    await user.click(await button(words.take));
    expect(await screen.findByText(restoreProblem('full'))).toBeDefined();
    expect(await button(words.take)).toBeDefined();
    const all = [...BACKUP_CODES, 'full', 'lost', 'newer', 'not-ours', 'not-loaded'] as const;
    expect(new Set(all.map(restoreProblem)).size).toBe(all.length);
  });

  it('REC-21 of each kind of thing it is said what happens to it', () => {
    const lines = changesOf([
      { store: 'settings', here: 1, inFile: 1, added: 0, changed: 1 },
      { store: 'programmes', here: 2, inFile: 2, added: 1, changed: 1 },
      { store: 'log', here: 4, inFile: 0, added: 0, changed: 0 },
      { store: 'choices', here: 1, inFile: 1, added: 0, changed: 0 },
      { store: 'sent', here: 0, inFile: 0, added: 0, changed: 0 },
    ]).map(({ name, line }) => `${name}: ${line}`);
    expect(lines).toEqual([
      'Sessions: not in the file; what is here stays',
      'Programmes: 1 new, 1 with something newer, 1 here stays as it is',
      'Your group: nothing new; what is here stays',
      'Settings: taken where nothing was chosen here',
    ]);
  });

  it('REC-13 a damaged or newer file is said to be one before anything is taken', () => {
    const lines = (more: Partial<RestorePreview>) =>
      aboutFile({ ...PREVIEW, ...more }, () => '2027-04-12').join(' ');
    expect(lines({ damage: 'cut' })).toMatch(/its end is missing/);
    expect(lines({ damage: 'changed' })).toMatch(/changed since/);
    expect(lines({ newer: true })).toMatch(/A newer Towpath made it/);
    expect(lines({ kind: 'log' })).toMatch(/without anything else/);
    expect(lines({})).toMatch(/^A backup, made Mon, 12 April 2027 at \d\d:\d\d\./);
  });
});

describe('the calendar', () => {
  it('REC-1, REC-5 days, time and alarm are chosen, and what that comes to is said', async () => {
    const app = show({ chosen });
    expect(
      await screen.findByText('17 sessions, from Tue, 2 March 2027 to Thu, 8 April 2027.'),
    ).toBeDefined();
    await user.click(screen.getByRole('checkbox', { name: 'Saturday' }));
    await user.click(screen.getByRole('checkbox', { name: 'Sunday' }));
    await user.clear(screen.getByLabelText(words.time));
    await user.type(screen.getByLabelText(words.time), '07:15');
    await user.click(screen.getByRole('radio', { name: words.alarms[60] }));
    await user.click(await button(words.saveCalendar));
    expect(asked(app, 'records.saveCalendar')).toEqual([
      [{ programmeId: DEMO.id, groupId: 'wren', days: [2, 4, 7], minutes: 435, alarmMinutes: 60 }],
    ]);
    await user.click(screen.getByRole('radio', { name: words.alarms.none }));
    await user.click(await button(words.saveCalendar));
    expect(asked(app, 'records.saveCalendar')[1]?.[0]).not.toHaveProperty('alarmMinutes');
  });

  it('REC-1 without a day, or with nothing left to plan, there is no file', async () => {
    show({ chosen, records: { calendar: () => undefined } });
    expect(await screen.findByText(words.nothingToPlan)).toBeDefined();
    expect((await button(words.saveCalendar)).hasAttribute('disabled')).toBe(true);
    for (const day of ['Tuesday', 'Thursday', 'Saturday'])
      await user.click(screen.getByRole('checkbox', { name: day }));
    expect(await screen.findByText(words.noDays)).toBeDefined();
  });

  it('REC-1 the leader’s times a week are said as people say them', () => {
    expect(words.daysHelp(2, 3)).toMatch(/says two or three times a week/);
    expect(words.daysHelp(2, 4)).toMatch(/says two to four times a week/);
    expect(words.daysHelp(1, 1)).toMatch(/says once a week/);
    expect(words.daysHelp(3, 3)).toMatch(/says three times a week/);
  });

  it('REC-1 without a group the way to one is shown', () => {
    show();
    expect(screen.getByRole('link', { name: words.chooseGroup }).getAttribute('href')).toBe(
      `/p/${DEMO.id}/groups`,
    );
  });
});
