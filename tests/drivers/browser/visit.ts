/** What a person does on the screen, found the way they find it: by its role and its name. */
import type { Page } from 'playwright-core';
import { before } from '../../../src/copy/before.ts';
import { cautions } from '../../../src/copy/cautions.ts';
import { groups } from '../../../src/copy/groups.ts';
import { install } from '../../../src/copy/install.ts';
import { choiceSaid } from '../../../src/copy/join.ts';
import { running } from '../../../src/copy/running.ts';
import { settings } from '../../../src/copy/settings.ts';
import { welcome } from '../../../src/copy/welcome.ts';
import { marshMileWith } from '../marsh-mile.ts';
import type { Site } from './site.ts';

const FIXTURES = new URL('../../fixtures/programmes/', import.meta.url).pathname;

/** Sessions of `marsh-mile.json`, group Wren, by number. */
export const MINUTE = { week: 1, session: 1 };
/** Three walks of a minute and three runs of half a minute between ten seconds of easy walk. */
export const SEVERAL = { week: 1, session: 2 };

export const button = (page: Page, name: string) => page.getByRole('button', { name, exact: true });

/** Opens the app and waits until it says that everything is on this phone. */
export async function visit(page: Page, site: Site): Promise<void> {
  await page.goto(site.url);
  // Everything has to arrive and be kept, which takes its time on a busy machine.
  await page.getByText(install.offlineReady).waitFor({ timeout: 60_000 });
}

/** Gives a file to "open a programme file", which leads to the page where it is looked at. */
export async function openFile(page: Page, name: string, body?: string | Buffer): Promise<void> {
  const file =
    body === undefined
      ? `${FIXTURES}${name}`
      : { name, mimeType: 'application/json', buffer: Buffer.from(body) };
  await page.getByLabel(welcome.file.open).setInputFiles(file);
}

/**
 * Takes the short programme and a group in it.
 *
 * @param session one of one's own in place of Wren's in the first week
 */
export async function followMarshMile(page: Page, group = 'Wren', session?: string): Promise<void> {
  const own = session === undefined ? undefined : marshMileWith(session);
  await openFile(page, 'marsh-mile.json', own);
  await button(page, choiceSaid('keep', 'new', 1).name).click();
  await button(page, groups.choose(group)).click();
  await page.getByRole('heading', { level: 1, name: 'A mile on the marsh' }).waitFor();
}

/**
 * Looks at what came, as long as a person does: a tap within half a second of the last one and in
 * its place is taken for its second half and dropped.
 */
export const look = (page: Page): Promise<void> => page.waitForTimeout(600);

/** Goes to an address inside the app. */
export async function go(page: Page, path: string): Promise<void> {
  await page.evaluate((to) => {
    location.hash = to;
  }, path);
}

/** A session's page, with what stands before the first Start done: cautions and pocket check. */
export async function openSession(
  page: Page,
  { week, session }: { week: number; session: number },
  programme = 'marsh-mile',
): Promise<void> {
  await go(page, `/p/${programme}/${week}/${session}`);
  const first = button(page, before.readFirst);
  const check = button(page, before.checkSkip);
  const start = button(page, before.start).or(button(page, before.startSilent));
  for (let step = 0; step < 3; step += 1) {
    await first.or(check).or(start).first().waitFor();
    if (await start.isVisible()) return;
    if (await first.isVisible()) {
      await first.click();
      await button(page, cautions.read).click();
    } else await check.click();
  }
  await start.waitFor();
}

/** A session's page for somebody who chose to watch instead of hearing. */
export async function openWatched(
  page: Page,
  site: Site,
  which: { week: number; session: number },
): Promise<void> {
  await visit(page, site);
  await followMarshMile(page);
  await go(page, '/settings');
  await page.getByRole('radio', { name: settings.modes.watch[0] }).check();
  await openSession(page, which);
}

/** Everything up to a running session, on a new profile. */
export async function startOn(
  page: Page,
  site: Site,
  which: { week: number; session: number },
  group = 'Wren',
): Promise<void> {
  await visit(page, site);
  await followMarshMile(page, group);
  await openSession(page, which);
  await start(page);
}

export async function start(page: Page): Promise<void> {
  await button(page, before.start).or(button(page, before.startSilent)).click();
  await button(page, running.hold).waitFor();
}

/** Says how hard it was. The number is what is seen; the radio button in it is for readers. */
export async function rate(page: Page, effort: number): Promise<void> {
  const radio = page.getByRole('radio', { name: new RegExp(`^${effort}: `) });
  await page.locator('label', { has: radio }).click();
}

/**
 * Goes on from where the sound stood: on the screen itself, or where the gap is told, which comes
 * over the screen after some seconds.
 */
export async function goOn(page: Page): Promise<void> {
  const told = page.getByRole('button', { name: /^Go on from minute/ });
  const own = button(page, running.goOn);
  await own.or(told).first().waitFor();
  for (let attempt = 0; attempt < 5; attempt += 1) {
    const which = (await told.isVisible()) ? told : own;
    const clicked = await which.click({ timeout: 2000 }).then(
      () => true,
      () => false,
    );
    if (clicked) return;
  }
  throw new Error('nothing to go on with');
}

/** The demo's first session of its first group, running. */
export async function startDemo(page: Page): Promise<void> {
  await page.getByRole('link', { name: welcome.choose }).first().click();
  await page
    .getByRole('button', { name: /^Choose / })
    .first()
    .click();
  await openSession(page, { week: 1, session: 1 }, await programmeOf(page));
  await start(page);
}

const programmeOf = async (page: Page): Promise<string> => {
  await page.waitForURL(/#\/p\/[^/]+$/);
  return /#\/p\/([^/]+)$/.exec(page.url())?.[1] ?? '';
};

/** What the one audio element says now, and the monotonic clock beside it. */
export interface Heard {
  readonly at: number;
  readonly clock: number;
  readonly paused: boolean;
  readonly length: number;
  readonly hidden: boolean;
}

/** Runs in the page, of whatever engine. */
export function readHeard(): Heard {
  const audio = document.querySelector('audio');
  if (audio === null) throw new Error('no audio element');
  return {
    at: audio.currentTime,
    clock: performance.now() / 1000,
    paused: audio.paused,
    length: audio.duration,
    hidden: document.hidden,
  };
}

export const heard = (page: Page): Promise<Heard> => page.evaluate(readHeard);

/** Moves the sound, as if the time until then had been listened through. */
export async function moveTo(page: Page, seconds: number): Promise<void> {
  await page.evaluate(async (to) => {
    const audio = document.querySelector('audio');
    if (audio === null) throw new Error('no audio element');
    const there = new Promise((resolve) =>
      audio.addEventListener('seeked', resolve, { once: true }),
    );
    audio.currentTime = to;
    await there;
  }, seconds);
}
