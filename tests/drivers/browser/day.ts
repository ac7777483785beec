import type { Page } from 'playwright-core';

const DAY_MS = 86_400_000;

/**
 * Has the page live on another day, at the time of day that it is. Its clock goes on as always,
 * because a session compares it with another; what is said of a week is then the same every day.
 */
export async function liveOn(page: Page, day: string): Promise<void> {
  const today = new Date().toISOString().slice(0, 10);
  const days = Math.round((Date.parse(day) - Date.parse(today)) / DAY_MS);
  await page.addInitScript((by) => {
    const Real = Date;
    const now = () => Real.now() + by;
    globalThis.Date = new Proxy(Real, {
      construct: (target, given, self) =>
        Reflect.construct(target, given.length === 0 ? [now()] : given, self),
      get: (target, key, self) => (key === 'now' ? now : Reflect.get(target, key, self)),
    });
  }, days * DAY_MS);
}
