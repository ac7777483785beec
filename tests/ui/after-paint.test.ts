import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { afterPaint, painted } from '../../src/ui/after-paint.ts';

describe('a job for after the drawing', () => {
  let frames: Map<number, () => void>;

  beforeEach(() => {
    vi.useFakeTimers();
    frames = new Map();
    vi.stubGlobal('requestAnimationFrame', (job: () => void) => {
      frames.set(frames.size + 1, job);
      return frames.size;
    });
    vi.stubGlobal('cancelAnimationFrame', (id: number) => frames.delete(id));
  });

  afterEach(() => {
    vi.restoreAllMocks();
    vi.unstubAllGlobals();
    vi.useRealTimers();
  });

  const draw = (): void => {
    for (const job of frames.values()) job();
    frames.clear();
  };

  it('OFF-12 is done behind the frame, not in it, and once', async () => {
    const job = vi.fn();
    afterPaint(job);
    await vi.advanceTimersByTimeAsync(16);
    expect(job).not.toHaveBeenCalled();
    draw();
    expect(job).not.toHaveBeenCalled();
    await vi.advanceTimersByTimeAsync(1000);
    expect(job).toHaveBeenCalledOnce();
  });

  it('OFF-12 is done without a frame on a page that nobody sees', async () => {
    vi.spyOn(document, 'hidden', 'get').mockReturnValue(true);
    const job = vi.fn();
    afterPaint(job);
    await vi.advanceTimersByTimeAsync(1);
    expect(job).toHaveBeenCalledOnce();
    expect(frames.size).toBe(0);
  });

  it('OFF-12 can be waited for', async () => {
    const job = vi.fn();
    void painted().then(job);
    await vi.advanceTimersByTimeAsync(1000);
    expect(job).not.toHaveBeenCalled();
    draw();
    await vi.advanceTimersByTimeAsync(1);
    expect(job).toHaveBeenCalledOnce();
  });

  it('OFF-12 is called off, before the frame and behind it', async () => {
    const job = vi.fn();
    afterPaint(job)();
    draw();
    const callOff = afterPaint(job);
    draw();
    callOff();
    await vi.advanceTimersByTimeAsync(1000);
    expect(job).not.toHaveBeenCalled();
  });
});
