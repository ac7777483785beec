import { act, fireEvent, screen } from '@testing-library/react';
import fc from 'fast-check';
import { afterEach, describe, expect, it, vi } from 'vitest';
import type { SessionView } from '../../src/app/session-contract.ts';
import { running, watching } from '../../src/copy/running.ts';
import { PRESS_MS } from '../../src/ui/parts/PressLong.tsx';
import { CHANGE_MS, shapeKey, watchShape } from '../../src/ui/parts/watch-shape.ts';
import { SETTINGS, viewAt } from '../drivers/fake-app.ts';
import { CURLEW } from '../drivers/gallery/states.ts';
import { askedFor, show } from './show.tsx';

afterEach(() => {
  vi.useRealTimers();
});

const at = (place: number): SessionView => viewAt(CURLEW, place, { medium: 'screen' });
const shapeAt = (place: number): string => shapeKey(watchShape(at(place)));
const total = at(0).timeline?.total ?? 0;

describe('watching instead of hearing', () => {
  it('UI-16 the whole screen counts 3, 2, 1 before every boundary, and changes shape at it', () => {
    for (const segment of at(0).timeline?.segments ?? []) {
      expect(shapeAt(segment.end - 3000)).toBe('count-3');
      expect(shapeAt(segment.end - 2000)).toBe('count-2');
      expect(shapeAt(segment.end - 1000)).toBe('count-1');
      expect(shapeAt(segment.end - 3001)).toBe('ground');
      if (segment.index > 0) expect(['harder', 'easier']).toContain(shapeAt(segment.start));
    }
  });

  it('UI-16 the shape says harder or easier as the effort does', () => {
    // Week 1, Curlew: the walk ends at 6:00 and the run at 8:00 (by hand).
    expect(shapeAt(360_000)).toBe('harder');
    expect(shapeAt(480_000)).toBe('easier');
    expect(shapeAt(480_000 + CHANGE_MS)).toBe('ground');
  });

  it('UI-16 no second of a session has more than three changes of shape (WCAG 2.2, 2.3.1)', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: total - 1000 }), (start) => {
        let changes = 0;
        for (let t = start; t < start + 1000; t += 20)
          if (shapeAt(t) !== shapeAt(t + 20)) changes += 1;
        expect(changes).toBeLessThanOrEqual(3);
      }),
    );
  });

  it('UI-16 on hold nothing counts down', () => {
    const held = { ...at(358_000), state: 'holding' as const };
    expect(shapeKey(watchShape(held))).toBe('ground');
  });

  it('UI-17 the controls are behind a touch guard, which opens to a press of one second', async () => {
    const app = show('/run', {
      view: { ...at(420_000), awake: true },
      settings: { mode: 'watch' },
    });
    const guard = await screen.findByRole('button', { name: watching.guard });
    expect(screen.queryByRole('button', { name: running.hold })).toBeNull();
    vi.useFakeTimers();
    fireEvent.pointerDown(guard);
    act(() => vi.advanceTimersByTime(PRESS_MS));
    fireEvent.click(screen.getByRole('button', { name: running.hold }));
    expect(askedFor(app, 'hold')).toHaveLength(1);
  });

  it('UI-17 something is wrong needs no second, guard or not', async () => {
    const app = show('/run', { view: at(420_000), settings: { ...SETTINGS, mode: 'watch' } });
    fireEvent.click(await screen.findByRole('button', { name: running.wrong }));
    expect(askedFor(app, 'somethingIsWrong')).toHaveLength(1);
  });

  it('UI-17 the guard closes by itself, but never over a session on hold', async () => {
    const app = show('/run', { view: at(420_000), settings: { mode: 'watch' } });
    const guard = await screen.findByRole('button', { name: watching.guard });
    vi.useFakeTimers();
    fireEvent.pointerDown(guard);
    act(() => vi.advanceTimersByTime(PRESS_MS));
    act(() => vi.advanceTimersByTime(60_000));
    expect(screen.queryByRole('button', { name: running.hold })).toBeNull();
    const held = { ...at(420_000), state: 'holding' as const };
    act(() => app.session.setState({ view: { ...held, offers: { ...held.offers, goOn: true } } }));
    act(() => vi.advanceTimersByTime(60_000));
    expect(screen.getByRole('button', { name: running.goOn })).toBeDefined();
  });

  it('UI-17 says that a phone in a pocket cannot signal to someone who hears nothing', async () => {
    show('/settings', { settings: { mode: 'watch' } });
    expect(await screen.findByText(watching.truth)).toBeDefined();
    expect(screen.getByText(watching.battery)).toBeDefined();
  });
});
