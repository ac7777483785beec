/** A participant who follows a leader's programme and tells what they did, on a profile of their own. */
import { expect } from 'vitest';
import { groups } from '../../../src/copy/groups.ts';
import { choiceSaid } from '../../../src/copy/join.ts';
import { tell } from '../../../src/copy/tell.ts';
import { newProfile, openBrowser } from './browser.ts';
import type { Site } from './site.ts';
import { button, go } from './visit.ts';
import { type Felt, lastFile, type Phone, phone, save, tellHow, wasThere } from './weeks.ts';

/** Sends everything that is ticked, under a name. @returns the text of the file that went out */
export async function tells(
  { page, programme }: Phone,
  name: string,
  { niggles = false }: { readonly niggles?: boolean } = {},
): Promise<string> {
  await go(page, `/tell/${programme}`);
  await page.getByText(tell.sealed('Imogen')).waitFor();
  if (niggles) await page.getByRole('checkbox', { name: tell.niggles }).check();
  await page.getByRole('checkbox', { name: tell.nameAlong }).check();
  await page.getByLabel(tell.name, { exact: true }).fill(name);
  await button(page, tell.look).click();
  await page.getByRole('heading', { name: tell.reviewTitle }).waitFor();
  await button(page, tell.file).click();
  const { text } = await lastFile(page);
  await page.getByText(/^Noted on this phone:/).waitFor();
  return text;
}

/** The link in what was sent. */
export const linkIn = (text: string): string => /\S*#\/answer\/\S+/.exec(text)?.[0] ?? '';

/** Takes a revision in: the first one with a group, a later one as an update. */
export async function follows(its: Phone, link: string, group: string): Promise<void> {
  const { page } = its;
  await page.goto(link);
  await button(page, choiceSaid('keep', 'new', 1).name).click();
  await page.waitForURL(/#\/p\/[^/]+\/groups$/);
  its.programme = /#\/p\/([^/]+)/.exec(page.url())?.[1] ?? '';
  await button(page, groups.choose(group)).click();
  await page.waitForURL(/#\/p\/[^/]+$/);
}

/** A session with the group that has just ended, and how it felt. */
export async function did(
  its: Phone,
  which: readonly [week: number, session: number],
  when: string,
  felt: Felt,
): Promise<void> {
  await its.wake(when, 'Europe/London');
  await wasThere(its, which);
  await tellHow(its.page, felt);
  await save(its.page);
}

export interface Participant {
  readonly name: string;
  /** Id under which their phone keeps the programme, once they follow one. */
  readonly programme: string;
  /** Opens their phone, which keeps what it kept, and closes it again. */
  use<T>(job: (its: Phone) => Promise<T>): Promise<T>;
  remove(): void;
}

/** Somebody with a phone that is opened now and then. */
export function participant(name: string, site: Site): Participant {
  const profile = newProfile();
  let programme = '';
  return {
    name,
    get programme() {
      return programme;
    },
    async use(job) {
      const browser = await openBrowser(profile);
      try {
        const page = await browser.tab();
        page.on('pageerror', (error) => expect.fail(`${name}: ${error.message}`));
        const its = await phone(page, site.url);
        its.programme = programme;
        const made = await job(its);
        programme = its.programme;
        return made;
      } finally {
        await browser.close();
      }
    },
    remove: () => profile.remove(),
  };
}
