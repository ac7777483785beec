/** Contrast of every text on a page, worked out beside axe, which leaves undecided what overlaps. */
import type { Page } from 'playwright-core';

type Colour = readonly [red: number, green: number, blue: number];

/** Relative luminance of a colour with parts from 0 to 255. Source: WCAG 2.2, "relative luminance". */
function luminance(colour: Colour): number {
  const [red = 0, green = 0, blue = 0] = colour.map((part) => {
    const share = part / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

/** Contrast ratio of two colours, 1 to 21. Source: WCAG 2.2, "contrast ratio". */
export function contrast(one: Colour, other: Colour): number {
  const [light, dark] = [luminance(one), luminance(other)].sort((a, b) => b - a);
  return ((light ?? 0) + 0.05) / ((dark ?? 0) + 0.05);
}

interface Seen {
  readonly text: string;
  readonly ink: Colour;
  readonly paper: Colour;
}

/** Texts below a contrast ratio, as lines, and how many were looked at. */
export async function faint(
  page: Page,
  atLeast: number,
): Promise<{ readonly looked: number; readonly lines: readonly string[] }> {
  const seen = await page.evaluate(textsWithColours);
  const lines = seen
    .map((each) => ({ ...each, ratio: contrast(each.ink, each.paper) }))
    .filter(({ ratio }) => ratio < atLeast)
    .map(({ text, ratio }) => `${ratio.toFixed(2)}:1 ${text}`);
  return { looked: seen.length, lines };
}

/** Runs in the page. A text's paper is the first ancestor with a colour of its own behind it. */
function textsWithColours(): Seen[] {
  const parts = (colour: string): number[] => (colour.match(/[\d.]+/g) ?? []).map(Number);
  const blend = (top: number[], under: number[]): [number, number, number] => {
    const alpha = top[3] ?? 1;
    const mix = (part: number): number =>
      (top[part] ?? 0) * alpha + (under[part] ?? 0) * (1 - alpha);
    return [mix(0), mix(1), mix(2)];
  };
  const paperOf = (element: Element | null): [number, number, number] => {
    if (element === null) return [255, 255, 255];
    const own = parts(getComputedStyle(element).backgroundColor);
    return own[3] === 0
      ? paperOf(element.parentElement)
      : blend(own, paperOf(element.parentElement));
  };
  const opacityOf = (element: Element | null): number =>
    element === null
      ? 1
      : Number(getComputedStyle(element).opacity) * opacityOf(element.parentElement);
  const root = document.querySelector('dialog[open]') ?? document.body;
  const seen: Seen[] = [];
  const walker = document.createTreeWalker(root, NodeFilter.SHOW_TEXT);
  for (let node = walker.nextNode(); node !== null; node = walker.nextNode()) {
    const element = node.parentElement;
    const text = node.textContent?.trim() ?? '';
    if (element === null || text === '' || !element.checkVisibility()) continue;
    if (element.getBoundingClientRect().width <= 1) continue;
    const paper = paperOf(element);
    const ink = parts(getComputedStyle(element).color);
    // Letters that are not drawn at all only keep the place for those of the field above them.
    if (ink[3] === 0 && element.closest('[aria-hidden="true"]') !== null) continue;
    ink[3] = (ink[3] ?? 1) * opacityOf(element);
    seen.push({ text: text.slice(0, 60), ink: blend(ink, paper), paper });
  }
  return seen;
}
