/** A phone on which weeks go by: its clock and place are set by hand, its person does the rest. */
import type { CDPSession, Page } from 'playwright-core';
import { advice } from '../../../src/copy/advice.ts';
import { byHand, there } from '../../../src/copy/by-hand.ts';
import { felt } from '../../../src/copy/felt.ts';
import { PLACE, SIDE } from '../../../src/copy/words.ts';
import type { Niggle } from '../../../src/domain/log/entry.ts';
import { button, go, rate } from './visit.ts';

export interface Files {
  keptFiles?: File[];
}

/** A phone and where it is. */
export interface Phone {
  readonly page: Page;
  /** Id under which it keeps the programme, once it follows one. */
  programme: string;
  /** Sets clock and zone and opens the programme anew, as somebody does who comes back to it. */
  wake(local: string, zone: string): Promise<void>;
}

/**
 * @param page at no address yet: what the app gives out as files is kept from its first page on
 */
export async function phone(page: Page, site: string): Promise<Phone> {
  const cdp: CDPSession = await page.context().newCDPSession(page);
  await page.addInitScript(() => {
    const make = URL.createObjectURL.bind(URL);
    const kept: File[] = [];
    (window as Files).keptFiles = kept;
    URL.createObjectURL = (what: Blob | MediaSource) => {
      if (what instanceof File) kept.push(what);
      return make(what);
    };
  });
  const self: Phone = {
    page,
    programme: '',
    async wake(local, zone) {
      await cdp.send('Emulation.setTimezoneOverride', { timezoneId: zone });
      await page.clock.setFixedTime(new Date(local));
      if (!page.url().startsWith(site)) return void (await page.goto(site));
      await go(page, self.programme === '' ? '/start' : `/p/${self.programme}`);
      await page.reload();
      await page.getByRole('heading', { level: 1 }).waitFor();
    },
  };
  return self;
}

/** The text of the last file that the app gave out, and its name. */
export async function lastFile(page: Page): Promise<{ name: string; text: string }> {
  await page.waitForFunction(() => ((window as Files).keptFiles?.length ?? 0) > 0);
  return page.evaluate(async () => {
    const file = (window as Files).keptFiles?.pop();
    if (file === undefined) throw new Error('no file was given out');
    return { name: file.name, text: await file.text() };
  });
}

export interface Felt {
  readonly effort: number;
  readonly niggle?: Required<Niggle>;
  readonly note?: string;
}

/** A radio button by its name, or by how its name begins: a help line belongs to the name. */
const choose = (page: Page, question: string, answer: string) =>
  page
    .getByRole('group', { name: question })
    .getByRole('radio', { name: new RegExp(`^${answer}`) })
    .check();

/** Says how it went, on the page that asks. */
export async function tellHow(page: Page, { effort, niggle, note }: Felt): Promise<void> {
  await page.getByRole('heading', { level: 1, name: felt.title }).waitFor();
  await rate(page, effort);
  if (niggle !== undefined) {
    await choose(page, felt.niggle, felt.niggleYes);
    await choose(page, felt.where, PLACE[niggle.place]);
    await choose(page, felt.side, SIDE[niggle.side]);
    await choose(page, felt.severity, felt.severities[niggle.severity][0]);
  }
  if (note !== undefined) await page.getByLabel(felt.note).fill(note);
}

export async function save(page: Page): Promise<void> {
  await button(page, felt.save).click();
  await page.waitForURL(/#\/done\/[^/]+$/);
}

export type Which = readonly [week: number, session: number];

/** "I was there": the session with the group has just ended. */
export async function wasThere(phone: Phone, [week, session]: Which): Promise<void> {
  await go(phone.page, `/p/${phone.programme}/${week}/${session}`);
  await button(phone.page, there.was).click();
}

/** A session written down afterwards. @param when local date and time of its start */
export async function writeDown(
  { page, programme }: Phone,
  [week, session]: Which,
  [date, time]: readonly [string, string],
): Promise<void> {
  await go(page, `/done/new/${programme}/${week}/${session}`);
  await page.getByLabel(byHand.date).fill(date);
  await page.getByLabel(byHand.time).fill(time);
}

export interface AdviceSeen {
  readonly title: string;
  readonly lines: readonly string[];
  /** What may be said yes to. */
  readonly buttons: readonly string[];
}

/** The advice on the programme's page. */
export async function adviceOn({ page, programme }: Phone): Promise<AdviceSeen> {
  await go(page, `/p/${programme}`);
  const section = page.locator('section[aria-labelledby=advice]');
  await section.waitFor();
  const own = section.locator(':scope > p:not(.soft):not([role=status])');
  return {
    title: await section.locator('h2').innerText(),
    lines: await own.allInnerTexts(),
    buttons: await section.getByRole('button').allInnerTexts(),
  };
}

/** Says yes to the advice. */
export async function takeAdvice(page: Page, action: keyof typeof advice.yes): Promise<void> {
  await page
    .locator('section[aria-labelledby=advice]')
    .getByRole('button', { name: advice.yes[action], exact: true })
    .click();
  await page.getByText(advice.decide).waitFor({ state: 'detached' });
}

/** The rows of each plot's numbers by its title, the latest week or session first. */
export async function numbersOn(page: Page): Promise<Readonly<Record<string, readonly string[]>>> {
  await go(page, '/back');
  await page.locator('.plot').first().waitFor();
  return page.evaluate(() => {
    const textOf = (row: Element): string =>
      [...row.children].map((cell) => cell.textContent ?? '').join(' | ');
    return Object.fromEntries(
      [...document.querySelectorAll('.plot')].map((plot) => [
        plot.querySelector('h2')?.textContent ?? '',
        [...(plot.querySelector('table')?.querySelectorAll('tbody tr') ?? [])].map(textOf),
      ]),
    );
  });
}

/** The latest week of each plot's numbers, or the latest session, by the plot's title. */
export async function latestNumbers(page: Page): Promise<Readonly<Record<string, string>>> {
  const all = Object.entries(await numbersOn(page));
  return Object.fromEntries(all.map(([title, [latest = '']]) => [title, latest]));
}

/** Days of the list of sessions as it stands, newest first. */
export async function daysDone(page: Page): Promise<readonly string[]> {
  await go(page, '/done');
  const links = page.locator('article h2 a');
  await links.first().waitFor();
  return links.allInnerTexts();
}
