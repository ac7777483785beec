import { describe, expect, it } from 'vitest';
import type { Signal } from '../../../src/app/ports.ts';
import { ms } from '../../../src/domain/units.ts';
import { createScreenClock } from '../../../src/platform/audio/screen.ts';
import { HandClock } from '../../drivers/clock.ts';

function onScreen() {
  const clock = new HandClock();
  const screen = createScreenClock(clock, () => {});
  const signals: Signal[] = [];
  screen.listen((signal) => signals.push(signal));
  screen.load({ total: ms(600_000) });
  return { clock, screen, signals };
}

describe('a session on the screen', () => {
  it('SND-10 moves with the monotonic clock, from where it was put', async () => {
    const { clock, screen, signals } = onScreen();
    await clock.pass(5);
    expect(screen.place()).toBe(0);
    screen.play();
    await clock.pass(12.3);
    expect(screen.place()).toBe(12_300);
    screen.seek(ms(100_000));
    await clock.pass(1);
    expect(screen.place()).toBe(101_000);
    screen.pause();
    await clock.pass(50);
    expect(screen.place()).toBe(101_000);
    expect(signals[0]).toBe('playing');
    expect(signals.filter((signal) => signal === 'tick').length).toBeGreaterThan(40);
  });

  it('SND-10 stands while the phone sleeps, so that the wall clock shows the gap', async () => {
    const { clock, screen } = onScreen();
    screen.play();
    await clock.pass(10);
    clock.sleep(300);
    await clock.pass(1);
    expect(screen.place()).toBe(11_000);
  });

  it('SND-10 is asked twice to play and does not jump', async () => {
    const { clock, screen } = onScreen();
    screen.play();
    await clock.pass(10);
    screen.play();
    expect(screen.place()).toBe(10_000);
    await clock.pass(10);
    expect(screen.place()).toBe(20_000);
  });

  it('SND-10 ends at the end of the track', async () => {
    const { clock, screen } = onScreen();
    screen.play();
    screen.seek(ms(599_000));
    await clock.pass(10);
    expect(screen.place()).toBe(600_000);
    screen.close();
    expect(screen.place()).toBe(0);
  });
});
