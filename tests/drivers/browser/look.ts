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

/** What still moves, as lines: animations and transitions that last longer than a blink (100 ms). */
export const moving = (page: Page): Promise<readonly string[]> =>
  page.evaluate(() =>
    document
      .getAnimations()
      .filter(({ playState, effect }) => {
        const { duration } = effect?.getComputedTiming() ?? {};
        return playState === 'running' && Number(duration) > 100;
      })
      .map(({ effect }) => {
        const { target } = effect as KeyframeEffect;
        return `moves: ${target?.outerHTML.slice(0, 100)}`;
      }),
  );

/** Controls of which a side is shorter than `least` px, as lines. A field goes with its label. */
export const small = (page: Page, least: number): Promise<readonly string[]> =>
  page.evaluate((shortest) => {
    const root = document.querySelector('dialog[open]') ?? document.body;
    return [...root.querySelectorAll<HTMLElement>('a[href], button, input, select, summary')]
      .filter((each) => each.checkVisibility())
      .flatMap((each) => {
        const own = each.getBoundingClientRect();
        const label = each.closest('label')?.getBoundingClientRect() ?? own;
        const side = Math.max(Math.min(own.width, own.height), Math.min(label.width, label.height));
        if (own.width <= 1 || side >= shortest) return [];
        return [`${side.toFixed(0)} px: ${each.outerHTML.slice(0, 100)}`];
      });
  }, least);

/**
 * Drawings that cannot be told from what they stand on, as lines: inside and line of all their
 * shapes are nearer to the ground than 3:1 (WCAG 2.2, 1.4.11).
 */
export const lost = (page: Page): Promise<readonly string[]> =>
  page.evaluate(() => {
    const probe = document.createElement('i');
    // Else its colour would be forced, and not the one that is asked about.
    probe.style.setProperty('forced-color-adjust', 'none');
    document.body.append(probe);
    const light = (colour: string): number => {
      probe.style.color = colour;
      const parts = getComputedStyle(probe).color.match(/[\d.]+/g) ?? [];
      const [r = 0, g = 0, b = 0] = parts.slice(0, 3).map((part) => {
        const share = Number(part) / 255;
        return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
      });
      return 0.2126 * r + 0.7152 * g + 0.0722 * b;
    };
    const groundOf = (each: Element): number => {
      for (let at: Element | null = each; at !== null; at = at.parentElement) {
        const { backgroundColor } = getComputedStyle(at);
        if (!/, 0\)$|transparent/.test(backgroundColor)) return light(backgroundColor);
      }
      return light('Canvas');
    };
    const stands = (paint: string, ground: number): boolean => {
      if (paint === 'none' || paint.startsWith('url')) return paint !== 'none';
      const [a, b] = [light(paint), ground].sort((x, y) => y - x);
      return ((a ?? 0) + 0.05) / ((b ?? 0) + 0.05) >= 3;
    };
    const pictures = [...document.querySelectorAll<SVGElement>('svg')].filter(
      (each) => each.checkVisibility() && each.closest('button, a') === null,
    );
    const gone = pictures.filter((picture) => {
      const shapes = [...picture.querySelectorAll('path, rect, circle, line, polyline')];
      if (shapes.length === 0) return false;
      const ground = groundOf(picture);
      return !shapes.some((shape) => {
        const { fill, stroke } = getComputedStyle(shape);
        return stands(fill, ground) || stands(stroke, ground);
      });
    });
    probe.remove();
    return gone.map((each) => `not to be seen: ${each.outerHTML.slice(0, 120)}`);
  });
