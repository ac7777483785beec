/** Looks at a page as it stands: what a checker finds, what a keyboard reaches, what sticks out. */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Page } from 'playwright-core';

const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

interface Finding {
  readonly id: string;
  readonly help: string;
  readonly nodes: readonly { readonly html: string; readonly failureSummary?: string }[];
}

interface Axe {
  run(options: object): Promise<{ violations: Finding[] }>;
}

/**
 * What axe-core finds, as lines; every rule that it has, with contrast at 7:1 when asked.
 * Source of the rules: axe-core, WCAG 2.0 to 2.2 at A and AA and its own best practices.
 */
export async function findings(page: Page, strictContrast: boolean): Promise<readonly string[]> {
  await page.evaluate(AXE);
  const found = await page.evaluate(
    async (strict) =>
      (window as unknown as { axe: Axe }).axe.run({
        resultTypes: ['violations'],
        rules: {
          'color-contrast-enhanced': { enabled: strict },
          'target-size': { enabled: true },
        },
      }),
    strictContrast,
  );
  return found.violations.flatMap(({ id, help, nodes }) =>
    nodes.map(({ html, failureSummary }) => `${id}: ${help}\n  ${html}\n  ${failureSummary ?? ''}`),
  );
}

/** Controls that can be seen and used but that the tabulator key does not come to, and the reverse. */
export async function unreachable(page: Page): Promise<readonly string[]> {
  const wanted = await page.evaluate(() => {
    const inTheWay = document.querySelector('[role=dialog], dialog[open]');
    const root = inTheWay ?? document.body;
    const all = [
      ...root.querySelectorAll<HTMLElement>('a[href], button, input, select, textarea, summary'),
    ].filter((each) => each.checkVisibility() && !(each as HTMLButtonElement).disabled);
    const radios = new Set<string>();
    const list = all.filter((each) => {
      if (!(each instanceof HTMLInputElement) || each.type !== 'radio') return true;
      // The keyboard comes to one of a set; the arrows lead to the others.
      if (radios.has(each.name)) return false;
      radios.add(each.name);
      return true;
    });
    list.forEach((each, index) => {
      const key =
        each instanceof HTMLInputElement && each.type === 'radio'
          ? `radio ${each.name}`
          : `${index}`;
      each.dataset.reach = key;
      if (key.startsWith('radio')) {
        for (const other of root.querySelectorAll<HTMLInputElement>('input[type=radio]')) {
          if (`radio ${other.name}` === key) other.dataset.reach = key;
        }
      }
    });
    (document.activeElement as HTMLElement | null)?.blur();
    return list.map((each) => ({
      key: each.dataset.reach ?? '',
      name: each.outerHTML.slice(0, 120),
      // A day or a time is a place for each of its parts, and one for its picker.
      parts: ['date', 'time'].includes((each as HTMLInputElement).type) ? 5 : 1,
    }));
  });
  const reached = new Set<string>();
  const presses = wanted.reduce((sum, { parts }) => sum + parts, 4);
  for (let press = 0; press < presses; press += 1) {
    await page.keyboard.press('Tab');
    const key = await page.evaluate(
      () => (document.activeElement as HTMLElement | null)?.dataset.reach ?? '',
    );
    if (key !== '') reached.add(key);
  }
  return wanted.filter(({ key }) => !reached.has(key)).map(({ name }) => name);
}

/** What is wider than the screen, as lines; nothing when no one has to scroll sideways. */
export function stickingOut(page: Page): Promise<readonly string[]> {
  return page.evaluate(() => {
    const width = document.documentElement.clientWidth;
    const lines: string[] = [];
    if (document.documentElement.scrollWidth > width) {
      lines.push(`page: ${document.documentElement.scrollWidth} px of ${width} px`);
    }
    const dialog = document.querySelector('[role=dialog], dialog[open]');
    if (dialog !== null && dialog.scrollWidth > dialog.clientWidth + 1) {
      lines.push(`dialog: ${dialog.scrollWidth} px of ${dialog.clientWidth} px`);
    }
    for (const each of document.querySelectorAll<HTMLElement>('body *')) {
      const { left, right, width: own } = each.getBoundingClientRect();
      // What is hidden for the eye and kept for readers is a pixel wide.
      if (!each.checkVisibility() || own <= 1) continue;
      if (right > width + 1 || left < -1) {
        lines.push(`${left.toFixed(0)} to ${right.toFixed(0)}: ${each.outerHTML.slice(0, 100)}`);
      }
      if (
        // A field scrolls its own text under the caret.
        !(each instanceof HTMLInputElement) &&
        each.scrollWidth > each.clientWidth + 2 &&
        getComputedStyle(each).overflowX !== 'visible'
      ) {
        lines.push(`cut off: ${each.outerHTML.slice(0, 100)}`);
      }
    }
    return lines;
  });
}
