/** A real browser with a profile that outlives it, so that it can be killed and started again. */
import { type ChildProcess, spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Browser, type BrowserContext, chromium, type Page } from 'playwright-core';
import { watchViolations } from './violations.ts';

const PROGRAM = '/usr/bin/chromium';

/** How long anything may take that a test waits for, in ms: a busy machine draws slowly. */
export const PATIENCE = 90_000;

/** No sandbox, because the checks run as root; no calls of its own, because there is no network. */
const ARGUMENTS = [
  '--headless=new',
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--no-default-browser-check',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--remote-debugging-port=0',
  '--window-size=390,844',
  '--hide-scrollbars',
];

/** A folder for a browser's profile, and the way to remove it. */
export interface Profile {
  readonly folder: string;
  remove(): void;
}

export function newProfile(): Profile {
  const folder = mkdtempSync(join(tmpdir(), 'towpath-profile-'));
  return { folder, remove: () => removeFolder(folder) };
}

/**
 * Removes a folder in which a process that was just ended may have written once more meanwhile.
 * Node's own retries do not list a folder again, and so never see the file that came last.
 */
function removeFolder(folder: string): void {
  for (let left = 25; ; left -= 1) {
    try {
      rmSync(folder, { recursive: true, force: true });
      return;
    } catch (error) {
      if (left === 0) throw error;
      Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 200);
    }
  }
}

export interface RealBrowser {
  readonly context: BrowserContext;
  readonly browser: Browser;
  /** The only tab of a fresh browser, or a further one. */
  tab(): Promise<Page>;
  /** What was refused because of the page's policy, in any tab or worker. */
  readonly violations: string[];
  /** Ends the whole process tree at once with SIGKILL, as a battery or a system does. */
  kill(): Promise<void>;
  /** Closes in an orderly way. Throws when anything was refused because of the page's policy. */
  close(): Promise<void>;
}

/**
 * Starts Debian's Chromium on a profile. Playwright's defaults are left out because one of them
 * keeps every tab "visible": a hidden tab must really be hidden here.
 *
 * @param more further command-line switches
 */
export async function openBrowser(
  profile: Profile,
  more: readonly string[] = [],
): Promise<RealBrowser> {
  const child = spawn(
    PROGRAM,
    [...ARGUMENTS, ...more, `--user-data-dir=${profile.folder}`, 'about:blank'],
    // Its own process group, so that it can be ended with all its children and nothing else.
    { detached: true, stdio: ['ignore', 'ignore', 'pipe'], env: { ...process.env, LANG: 'en' } },
  );
  const gone = new Promise<void>((resolve) => child.once('exit', () => resolve()));
  const endAll = (): void => killGroup(child);
  process.once('exit', endAll);
  const browser = await chromium.connectOverCDP(await addressOf(child), { noDefaults: true });
  const context = browser.contexts()[0];
  if (context === undefined) throw new Error('the browser has no window');
  context.setDefaultTimeout(PATIENCE);
  const violations = await watchViolations(browser, context);
  let first = context.pages()[0];

  const finish = async (): Promise<void> => {
    process.off('exit', endAll);
    await gone;
    killGroup(child);
  };
  const mustBeClean = (): void => {
    const found = [...new Set(violations.found)];
    if (found.length > 0) throw new Error(`against the page's policy:\n${found.join('\n')}`);
  };
  return {
    context,
    browser,
    violations: violations.found,
    async tab() {
      const page = first ?? (await context.newPage());
      first = undefined;
      await violations.watch(page);
      page.setDefaultTimeout(15_000);
      await page.setViewportSize({ width: 390, height: 844 });
      return page;
    },
    async kill() {
      killGroup(child);
      await finish();
      await browser.close().catch(() => {});
      mustBeClean();
    },
    async close() {
      const session = await browser.newBrowserCDPSession().catch(() => undefined);
      await session?.send('Browser.close').catch(() => {});
      const late = setTimeout(() => killGroup(child), 5000);
      await finish();
      clearTimeout(late);
      await browser.close().catch(() => {});
      mustBeClean();
    },
  };
}

function killGroup(child: ChildProcess): void {
  if (child.pid === undefined) return;
  try {
    process.kill(-child.pid, 'SIGKILL');
  } catch {
    // Already gone.
  }
}

function addressOf(child: ChildProcess): Promise<string> {
  return new Promise((resolve, reject) => {
    let said = '';
    const late = setTimeout(() => reject(new Error(`no answer from Chromium:\n${said}`)), 30_000);
    child.stderr?.on('data', (bytes: Buffer) => {
      said += bytes.toString();
      const found = /DevTools listening on (ws:\S+)/.exec(said);
      if (found?.[1] !== undefined) {
        clearTimeout(late);
        resolve(found[1]);
      }
    });
    child.once('exit', (code) => reject(new Error(`Chromium ended with ${code}:\n${said}`)));
  });
}
