/** One browser of one engine with the built app, and what a person does there time and again. */
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { before } from '../../../src/copy/before.ts';
import { cautions } from '../../../src/copy/cautions.ts';
import { groups } from '../../../src/copy/groups.ts';
import { install } from '../../../src/copy/install.ts';
import { choiceSaid } from '../../../src/copy/join.ts';
import { running } from '../../../src/copy/running.ts';
import { welcome } from '../../../src/copy/welcome.ts';
import { newProfile } from '../browser/browser.ts';
import { openSite, type Site } from '../browser/site.ts';
import { type Heard, readHeard } from '../browser/visit.ts';
import { marshMileWith } from '../marsh-mile.ts';
import { ROOT } from '../tree.ts';
import { chromium } from './chromium.ts';
import { firefox } from './firefox.ts';
import { type Person, personAt, until } from './person.ts';
import type { Engine, Opened } from './tab.ts';
import { webkit } from './webkit.ts';
import { webkitKept } from './webkit-kept.ts';

export const ENGINES: readonly Engine[] = [chromium, firefox, webkit];
/** The same three with a profile that outlives its browser: one of them without its driver. */
export const KEEPING: readonly Engine[] = [chromium, firefox, webkitKept];

export interface Visit {
  readonly engine: Engine;
  readonly site: Site;
  /** The person at the tab that is open now. */
  person: Person;
  close(): Promise<void>;
  kill(): Promise<void>;
  /** A new browser on the same profile, at no address yet. */
  open(): Promise<Person>;
  /** A new browser on a new profile, in place of the open one. */
  other(): Promise<Person>;
  /** Writes a file that can be given to a file field. @returns its path */
  file(name: string, text: string): string;
}

/** One browser of an engine from its start to its end. On failure a picture is left under `.cache/engines`. */
export async function visiting<T>(
  engine: Engine,
  title: string,
  job: (visit: Visit) => Promise<T>,
): Promise<T> {
  const site = await openSite();
  const profiles = [newProfile()];
  const folder = mkdtempSync(join(tmpdir(), 'towpath-files-'));
  let opened: Opened | undefined;
  const close = async (): Promise<void> => {
    await opened?.close();
    opened = undefined;
  };
  const open = async (): Promise<Person> => {
    opened = await engine.open(profiles.at(-1) ?? newProfile());
    visit.person = personAt(opened.tab);
    return visit.person;
  };
  const visit: Visit = {
    engine,
    site,
    person: undefined as unknown as Person,
    close,
    open,
    async kill() {
      await opened?.kill();
      opened = undefined;
    },
    async other() {
      await close();
      profiles.push(newProfile());
      return open();
    },
    file(name, text) {
      writeFileSync(join(folder, name), text);
      return join(folder, name);
    },
  };
  try {
    await open();
    return await job(visit);
  } catch (error) {
    await leavePicture(visit, `${title}-${engine.name}`).catch(() => {});
    throw error;
  } finally {
    await close().catch(() => {});
    for (const profile of profiles) profile.remove();
    rmSync(folder, { recursive: true, force: true });
    await site.close();
  }
}

async function leavePicture({ person }: Visit, title: string): Promise<void> {
  const folder = join(ROOT, '.cache/engines');
  mkdirSync(folder, { recursive: true });
  console.log(`${title}\n${(await person.text()).slice(0, 600)}`);
  const name = `${title.replace(/\W+/g, '-').slice(0, 90)}.png`;
  writeFileSync(join(folder, name), await person.tab.picture());
}

/** Opens the app and waits until it says that everything is on this phone. */
export async function arrive({ person, site }: Visit): Promise<void> {
  await person.tab.goto(site.url);
  await person.read(install.offlineReady, 60_000);
}

/** Takes a programme with one session in it, from a file. */
export async function follow(visit: Visit, session: string): Promise<void> {
  const { person } = visit;
  await person.give(welcome.file.open, visit.file('marsh-mile.json', marshMileWith(session)));
  await person.press('button', choiceSaid('keep', 'new', 1).name);
  await person.press('button', groups.choose('Wren'));
  await person.see('heading', 'A mile on the marsh');
}

/** Goes to the first session and starts it, with what stands before the first start done. */
export async function begin({ person }: Visit, id = 'marsh-mile'): Promise<void> {
  await person.go(`/p/${id}/1/1`);
  for (;;) {
    const pressed = await person.pressFirst(before.readFirst, before.checkSkip, before.start);
    if (pressed === before.start) break;
    if (pressed === before.readFirst) await person.press('button', cautions.read);
  }
  await person.see('button', running.hold);
}

/** Everything up to a running session of one's own. */
export async function startOn(visit: Visit, session: string): Promise<Visit> {
  await arrive(visit);
  await follow(visit, session);
  await begin(visit);
  return visit;
}

/** What the one audio element says now, and the monotonic clock beside it. */
export const heard = ({ person }: Visit): Promise<Heard> => person.tab.run(readHeard);

/** Waits until the sound goes: an engine may not begin it while its page is out of sight. */
export const sounding = (visit: Visit): Promise<unknown> =>
  until('the sound to go', async () => ((await heard(visit)).at > 0.3 ? true : undefined));

/** Moves the sound, as if the time until then had been listened through. */
export const moveTo = ({ person }: Visit, seconds: number): Promise<void> =>
  person.tab.run(async (to) => {
    const audio = document.querySelector('audio');
    if (audio === null) throw new Error('no audio element');
    const there = new Promise((resolve) =>
      audio.addEventListener('seeked', resolve, { once: true }),
    );
    audio.currentTime = to;
    await there;
  }, seconds);
