// @vitest-environment happy-dom
import { afterEach, describe, expect, it, vi } from 'vitest';
import { createWakeLock } from '../../../src/platform/device/wake-lock.ts';

class Sentinel extends EventTarget {
  async release(): Promise<void> {
    this.dispatchEvent(new Event('release'));
  }
}

function withLock(request: () => Promise<Sentinel>) {
  const asked = vi.fn(request);
  Object.defineProperty(navigator, 'wakeLock', { value: { request: asked }, configurable: true });
  return asked;
}

function visible(is: boolean): void {
  const state = is ? 'visible' : 'hidden';
  Object.defineProperty(document, 'visibilityState', { value: state, configurable: true });
  document.dispatchEvent(new Event('visibilitychange'));
}

const settled = () => new Promise((resolve) => setTimeout(resolve, 0));

afterEach(() => {
  Reflect.deleteProperty(navigator, 'wakeLock');
  Reflect.deleteProperty(document, 'visibilityState');
});

describe('keeping the screen on', () => {
  it('DEV-2 is asked for again whenever the page is seen, for as long as it is wanted', async () => {
    const held: Sentinel[] = [];
    const asked = withLock(async () => {
      const sentinel = new Sentinel();
      held.push(sentinel);
      return sentinel;
    });
    const told: boolean[] = [];
    const lock = createWakeLock();
    lock.onChange((awake) => told.push(awake));
    visible(true);
    expect(asked).not.toHaveBeenCalled();
    lock.want(true);
    await settled();
    // The browser lets go when the page is hidden.
    visible(false);
    await held[0]?.release();
    visible(true);
    await settled();
    expect(asked).toHaveBeenCalledTimes(2);
    expect(told).toEqual([true, false, true]);
    lock.want(false);
    await settled();
    visible(true);
    await settled();
    expect(asked).toHaveBeenCalledTimes(2);
    expect(told).toEqual([true, false, true, false]);
  });

  it('DEV-2 a refusal is told, and nothing is thrown', async () => {
    withLock(() => Promise.reject(new DOMException('saving', 'NotAllowedError')));
    const told: boolean[] = [];
    const lock = createWakeLock();
    lock.onChange((awake) => told.push(awake));
    visible(true);
    lock.want(true);
    await settled();
    expect(told).toEqual([false]);
  });

  it('DEV-2 a lock that comes after it is no longer wanted is given back', async () => {
    let give = (_: Sentinel): void => {};
    withLock(() => new Promise<Sentinel>((resolve) => (give = resolve)));
    const lock = createWakeLock();
    visible(true);
    lock.want(true);
    lock.want(false);
    const sentinel = new Sentinel();
    const released = vi.spyOn(sentinel, 'release');
    give(sentinel);
    await settled();
    expect(released).toHaveBeenCalled();
  });

  it('DEV-2 says when a browser has it not', () => {
    const lock = createWakeLock();
    expect(lock.possible).toBe(false);
    expect(() => lock.want(true)).not.toThrow();
  });
});
