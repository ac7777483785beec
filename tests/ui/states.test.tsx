import { screen } from '@testing-library/react';
import { describe, expect, it } from 'vitest';
import { STATES } from '../drivers/gallery/states.ts';
import { show } from './show.tsx';

const nameOf = (element: Element): string =>
  (
    element.getAttribute('aria-label') ??
    (element instanceof HTMLInputElement || element instanceof HTMLTextAreaElement
      ? (element.labels?.[0]?.textContent ?? '')
      : null) ??
    element.textContent ??
    ''
  ).trim();

describe('every screen in every state', () => {
  for (const [name, state] of Object.entries(STATES))
    it(`UI-21 has one title, and a name on every control: ${name}`, async () => {
      show(state.path, state.options);
      const titles = await screen.findAllByRole('heading', { level: 1 });
      expect(titles.filter((title) => title.closest('dialog') === null)).toHaveLength(1);
      const controls = document.querySelectorAll('button, a, input, textarea, summary');
      for (const control of controls) expect(nameOf(control), control.outerHTML).not.toBe('');
    });
});
