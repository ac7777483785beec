// @vitest-environment node
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { ROOT } from '../drivers/tree.ts';

const css = readFileSync(join(ROOT, 'src/ui/styles/tokens.css'), 'utf8');

/** The inks of each block of the stylesheet that sets them all. Colours of the system have no figures. */
const twins = [...css.matchAll(/\{([^{}]*--paper: #[^{}]*)\}/g)].map(([, block = '']) =>
  Object.fromEntries(
    [...block.matchAll(/--([\w-]+): (#[0-9a-f]{6});/g)].map(([, name = '', value = '']) => [
      name,
      value,
    ]),
  ),
);

/** Relative luminance and contrast ratio as WCAG 2.2 defines them. */
function luminance(hex: string): number {
  const [r = 0, g = 0, b = 0] = [1, 3, 5].map((at) => {
    const c = Number.parseInt(hex.slice(at, at + 2), 16) / 255;
    return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}
function contrast(a: string, b: string): number {
  const [light, dark] = [luminance(a), luminance(b)].sort((x, y) => y - x);
  return ((light ?? 0) + 0.05) / ((dark ?? 0) + 0.05);
}

describe('paper and ink', () => {
  it('UI-19 contrast is counted as WCAG 2.2 does: black on white is 21, #767676 on white 4.54', () => {
    expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 5);
    expect(contrast('#767676', '#ffffff')).toBeCloseTo(4.54, 2);
  });

  it('UI-19 every text is 7:1 or better on everything that it stands on, in both twins', () => {
    expect(twins).toHaveLength(css.match(/--paper: #/g)?.length ?? 0);
    expect(twins.length).toBeGreaterThanOrEqual(4);
    for (const ink of twins) {
      for (const text of ['ink', 'soft', 'accent'])
        for (const ground of ['paper', 'shade'])
          expect(contrast(ink[text] ?? '', ink[ground] ?? '')).toBeGreaterThanOrEqual(7);
      expect(contrast(ink['on-accent'] ?? '', ink.accent ?? '')).toBeGreaterThanOrEqual(7);
    }
  });

  it('UI-19 the edges of controls are 3:1 or better against the paper', () => {
    for (const ink of twins)
      expect(contrast(ink.edge ?? '', ink.paper ?? '')).toBeGreaterThanOrEqual(3);
  });
});
