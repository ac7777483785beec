/** A phone with a short session of one's own, and what its screens see of it. */
import type { SessionStore, SessionView } from '../../src/app/session-contract.ts';
import { settle } from './clock.ts';
import { openTab, type Tab, type TabOptions, take } from './phone.ts';

export const SHORT = JSON.stringify({
  format: 'towpath-programme/1',
  id: 'marsh-mile',
  revision: 1,
  title: 'A mile on the marsh',
  language: 'en',
  goal: { name: 'The mile', distanceM: 1600 },
  leader: { name: 'Imogen', sign: null, seal: null },
  groups: [{ id: 'wren', name: 'Wren', for: 'New to it' }],
  weeks: [
    {
      focus: 'Begin',
      effort: 50,
      timesPerWeek: { min: 2, max: 3 },
      sessions: { wren: '1 min easy walk; 3 x (30 s run, 1 min walk); 1 min easy walk' },
    },
  ],
  reminders: [],
});
export const CHOICE = { programmeId: 'marsh-mile', groupId: 'wren', week: 1, session: 1 };
/** Seconds of that session. */
export const TOTAL = 390;

export const asks = (tab: Tab): SessionStore => tab.app.session.getState();
export const view = (tab: Tab): SessionView => asks(tab).view;

/** A phone on which the session is ready. */
export async function prepared(
  options: TabOptions = {},
  medium: 'sound' | 'screen' = 'sound',
): Promise<Tab> {
  const tab = await openTab(options);
  await take(tab.app, SHORT);
  await settle();
  await asks(tab).prepare(CHOICE, medium);
  return tab;
}

/** The same phone, opened again. */
export const reopened = (tab: Tab, options: TabOptions = {}): Promise<Tab> =>
  openTab({ database: tab.database, clock: tab.clock, lockIsFree: () => true, ...options });
