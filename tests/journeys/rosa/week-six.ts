/** Week 6: a new phone, the day of the event, and what the leader is told. */
import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { byHand } from '../../../src/copy/by-hand.ts';
import { records } from '../../../src/copy/records.ts';
import { tell } from '../../../src/copy/tell.ts';
import { welcome } from '../../../src/copy/welcome.ts';
import type { Leader } from '../../drivers/browser/leader.ts';
import { look } from '../../drivers/browser/six-weeks-look.ts';
import { button, go } from '../../drivers/browser/visit.ts';
import {
  adviceOn,
  daysDone,
  lastFile,
  latestNumbers,
  type Phone,
  save,
  tellHow,
  wasThere,
  writeDown,
} from '../../drivers/browser/weeks.ts';
import { openAnswer } from '../../drivers/exchange/open-answer.ts';
import { LONDON, numbers, SHIN, TOKYO } from './common.ts';

/** Every session with all that was said of it, as the page of records gives it out. */
async function tableOf(page: Page): Promise<string> {
  await button(page, records.csv).click();
  const { name, text } = await lastFile(page);
  expect(name).toMatch(/\.csv$/);
  return text;
}

/** A new phone between two sessions: what the old one had, once, however often it is taken in. */
export async function weekSix(rosa: Phone, next: Phone): Promise<void> {
  await rosa.wake('2027-04-06T20:00+01:00', LONDON);
  await writeDown(rosa, [4, 1], ['2027-04-06', '18:00']);
  await button(rosa.page, byHand.next).click();
  await tellHow(rosa.page, { effort: 5 });
  await save(rosa.page);
  await rosa.wake('2027-04-08T09:00+01:00', LONDON);
  const before = { days: await daysDone(rosa.page), advice: await adviceOn(rosa) };
  await go(rosa.page, '/records');
  await look(rosa.page, '6-records');
  const table = await tableOf(rosa.page);
  await button(rosa.page, records.saveBackup).click();
  const { name, text } = await lastFile(rosa.page);

  const { page } = next;
  await next.wake('2027-04-08T10:00+01:00', LONDON);
  next.programme = rosa.programme;
  await page.getByRole('link', { name: welcome.backup }).click();
  const choose = async (): Promise<void> => {
    const file = { name, mimeType: 'application/json', buffer: Buffer.from(text) };
    await page.getByLabel(records.choose).setInputFiles(file);
    await page.getByRole('heading', { name: records.previewTitle }).waitFor();
  };
  await choose();
  await look(page, '6-restore');
  await button(page, records.take).click();
  await page.getByText(records.done).waitFor();
  await next.wake('2027-04-08T10:05+01:00', LONDON);
  expect(await daysDone(page)).toEqual(before.days);
  expect(await adviceOn(next)).toEqual(before.advice);
  await go(page, '/records');
  expect(await tableOf(page)).toBe(table);
  await choose();
  await page.getByText(records.nothingNew).waitFor();
  expect(await button(page, records.take).count()).toBe(0);
  expect(await tableOf(page)).toBe(table);

  await next.wake('2027-04-09T19:00+01:00', LONDON);
  await wasThere(next, [4, 2]);
  await tellHow(page, { effort: 5 });
  await save(page);
}

/** The day of the event: how it stands, and what Rosa tells Imogen, for Imogen alone. */
export async function theDay(rosa: Phone, imogen: Leader): Promise<void> {
  const { page, programme } = rosa;
  await rosa.wake('2027-04-11T08:00+01:00', LONDON);
  await page.getByText('Heron Loop is today.').waitFor();
  expect((await adviceOn(rosa)).buttons).toEqual([]);
  await look(page, '6-advice', 'both');
  // Twice 38, all walked: 38 x 5 x 2 = 380.
  expect(await latestNumbers(page)).toEqual(
    numbers(
      '5 April | 76 | 0 | 76',
      '5 April | 0:00',
      '9 April | 5: whole sentences, breath deeper | 6',
      '5 April | 76 | 0 | 76',
      '5 April | 380 | 2 of 2',
    ),
  );
  await look(page, '6-back', 'both');
  await go(page, `/event/${programme}`);
  await page.getByRole('heading', { level: 1 }).waitFor();
  await look(page, '6-event');

  await go(page, `/tell/${programme}`);
  await page.getByText(tell.sealed('Imogen')).waitFor();
  await page.getByText(tell.ticked(11, 11)).waitFor();
  await page.getByRole('checkbox', { name: tell.niggles }).check();
  await page.getByRole('checkbox', { name: tell.nameAlong }).check();
  await page.getByLabel(tell.name, { exact: true }).fill('Rosa');
  await look(page, '6-tell');
  await button(page, tell.look).click();
  await page.getByRole('heading', { name: tell.reviewTitle }).waitFor();
  await look(page, '6-tell-review');
  await button(page, tell.file).click();
  const { text } = await lastFile(page);
  await page.getByText(tell.noted(11)).waitFor();
  const link = /\S*#\/answer\/\S+/.exec(text)?.[0] ?? '';
  const opened = (await openAnswer(link, imogen.keys, imogen.passphrase)) as Told;
  expect(opened).toMatchObject({ name: 'Rosa', group: 'wren', programme: { revision: 2 } });
  expect(opened.leftOut).toBe(0);
  expect(opened.entries.map(({ localDate, week, effort }) => [localDate, week, effort])).toEqual([
    ['2027-03-01', 1, 6],
    ['2027-03-04', 1, 7],
    ['2027-03-09', 2, 8],
    ['2027-03-14', 2, 8],
    ['2027-03-16', 3, 5],
    ['2027-03-23', 2, 5],
    ['2027-03-27', 2, 5],
    ['2027-03-29', 3, 6],
    ['2027-04-03', 3, 4],
    ['2027-04-06', 4, 5],
    ['2027-04-09', 4, 5],
  ]);
  expect(opened.entries[7]).toMatchObject({ zone: TOKYO, niggle: { ...SHIN, severity: 2 } });
  // Notes were not ticked.
  expect(JSON.stringify(opened)).not.toContain('river');
}

interface Told {
  readonly leftOut: number;
  readonly entries: readonly { localDate: string; week: number; effort: number }[];
}
