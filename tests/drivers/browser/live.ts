/** What a page says to a screen reader by itself, and what it shows, from change to change. */
import type { Page } from 'playwright-core';

/** One thing that a live region came to say, at seconds of the page's clock. */
export interface Said {
  readonly text: string;
  readonly at: number;
}

/** What the screen shows: now, how long, and what comes then. */
export interface Shown {
  readonly now: string;
  readonly left: string;
  readonly next: string;
  readonly at: number;
}

interface Notes {
  readonly said: Said[];
  readonly shown: Shown[];
}

/** Begins to note. A text that a live region keeps is noted once, as it is said once. */
export const listen = (page: Page): Promise<void> =>
  page.evaluate(() => {
    const notes: Notes = { said: [], shown: [] };
    (window as unknown as { notes: Notes }).notes = notes;
    const last = new WeakMap<Element, string>();
    const clock = () => performance.now() / 1000;
    const textOf = (query: string) => document.querySelector(query)?.textContent?.trim() ?? '';
    const look = (): void => {
      for (const each of document.querySelectorAll('[role=status], [role=alert], [aria-live]')) {
        const text = each.textContent?.trim() ?? '';
        if (text !== '' && text !== last.get(each)) notes.said.push({ text, at: clock() });
        last.set(each, text);
      }
      const now = textOf('main h1');
      const next = /then .*/.exec(textOf('.run-then'))?.[0] ?? '';
      const before = notes.shown.at(-1);
      if (now !== before?.now || next !== before?.next)
        notes.shown.push({ now, next, left: textOf('[role=timer]'), at: clock() });
    };
    look();
    new MutationObserver(look).observe(document.body, {
      subtree: true,
      childList: true,
      characterData: true,
    });
  });

/** What was noted since. */
export const heardAndSeen = (page: Page): Promise<Notes> =>
  page.evaluate(() => (window as unknown as { notes: Notes }).notes);
