/** What every engine can be asked for, in the same words: one tab, and the browser around it. */
import type { Profile } from '../browser/browser.ts';

export interface Tab {
  goto(url: string): Promise<void>;
  reload(): Promise<void>;
  /** Runs a function in the page, sent as its text: nothing around it can be used in it. */
  run<A extends readonly unknown[], T>(job: (...args: A) => T, ...args: A): Promise<Awaited<T>>;
  /** Presses one element the way a finger or a mouse does, which counts as a person's gesture. */
  press(css: string): Promise<void>;
  /** Types into a field that is empty. */
  type(css: string, text: string): Promise<void>;
  /** Gives a file of this machine to a file field. */
  give(css: string, path: string): Promise<void>;
  /** Puts the page out of sight: another tab before it, or its window put away. */
  hide(): Promise<void>;
  show(): Promise<void>;
  /** A picture of the page as PNG. */
  picture(): Promise<Uint8Array>;
}

export interface Opened {
  readonly tab: Tab;
  /** Ends the browser's own process at once with SIGKILL. */
  kill(): Promise<void>;
  /** Closes in an orderly way. */
  close(): Promise<void>;
}

export interface Engine {
  readonly name: 'Chromium' | 'Firefox' | 'WebKitGTK';
  /** Whether a profile outlives its browser under a driver. WebKitGTK's does not. */
  readonly keepsProfile: boolean;
  open(profile: Profile): Promise<Opened>;
}

/**
 * The text that runs a function in a page. Outside of the test runner the functions within it are
 * named by a helper of the compiler's, which a page does not have: here it is.
 */
export const asText = (job: (...args: never[]) => unknown, args: readonly unknown[]): string =>
  `((__name) => (${job.toString()})(...${JSON.stringify(args)}))((named) => named)`;
