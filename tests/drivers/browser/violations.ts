/**
 * What a browser refused because of the page's policy, from the browser itself and not from the
 * page: in every tab, in the workers of every tab, and in the service worker.
 */
import type { Browser, BrowserContext, CDPSession, Page } from 'playwright-core';

export interface Violations {
  /** Each in words; empty unless something is wrong. */
  readonly found: string[];
  /** Watches a tab; nothing that happens in it after this is missed. */
  watch(page: Page): Promise<void>;
}

/** The part of the browser's protocol that is read here. */
interface Entry {
  readonly text: string;
}
interface Message {
  readonly method?: string;
  readonly params?: { readonly entry?: Entry };
}

const isOfPolicy = ({ text }: Entry): boolean =>
  /Content Security Policy|Trusted ?Type/i.test(text);

const LOG = JSON.stringify({ id: 1, method: 'Log.enable' });

/** Listens to the log of whatever is attached to through a session. */
function hearTargets(session: CDPSession, found: string[]): void {
  session.on('Target.attachedToTarget', ({ sessionId, targetInfo }) => {
    if (!/worker/.test(targetInfo.type)) return;
    session.send('Target.sendMessageToTarget', { sessionId, message: LOG }).catch(() => {});
  });
  session.on('Target.receivedMessageFromTarget', ({ message }) => {
    const { method, params } = JSON.parse(message) as Message;
    const entry = params?.entry;
    if (method === 'Log.entryAdded' && entry !== undefined && isOfPolicy(entry))
      found.push(`worker: ${entry.text}`);
  });
}

/** The service worker belongs to no tab: the browser tells of it. */
async function hearServiceWorkers(browser: Browser, found: string[]): Promise<void> {
  const session = await browser.newBrowserCDPSession();
  hearTargets(session, found);
  session.on('Target.targetCreated', ({ targetInfo: { type, targetId } }) => {
    if (type !== 'service_worker') return;
    session.send('Target.attachToTarget', { targetId, flatten: false }).catch(() => {});
  });
  await session.send('Target.setDiscoverTargets', { discover: true });
}

async function hearTab(context: BrowserContext, page: Page, found: string[]): Promise<void> {
  const session = await context.newCDPSession(page);
  session.on('Audits.issueAdded', ({ issue }) => {
    const details = issue.details.contentSecurityPolicyIssueDetails;
    if (details === undefined) return;
    const { violatedDirective, contentSecurityPolicyViolationType: how, blockedURL = '' } = details;
    found.push(`page: ${violatedDirective} ${how} ${blockedURL}`.trim());
  });
  session.on('Log.entryAdded', ({ entry }) => {
    if (isOfPolicy(entry)) found.push(`page: ${entry.text}`);
  });
  hearTargets(session, found);
  await session.send('Audits.enable');
  await session.send('Log.enable');
  const how = { autoAttach: true, waitForDebuggerOnStart: false, flatten: false };
  await session.send('Target.setAutoAttach', how);
}

/** Begins to watch a browser that has just been opened. */
export async function watchViolations(
  browser: Browser,
  context: BrowserContext,
): Promise<Violations> {
  const found: string[] = [];
  const watched = new WeakMap<Page, Promise<void>>();
  const watch = (page: Page): Promise<void> => {
    const known = watched.get(page) ?? hearTab(context, page, found);
    watched.set(page, known);
    return known;
  };
  // A tab that closes while it is turned to has nothing to tell.
  context.on('page', (page) => void watch(page).catch(() => {}));
  await hearServiceWorkers(browser, found);
  return { found, watch };
}
