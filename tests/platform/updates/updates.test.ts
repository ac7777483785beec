import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createUpdates } from '../../../src/platform/updates/updates.ts';
import type { WorkerPort } from '../../../src/platform/updates/worker.ts';

/** A worker whose events come when the test says so. */
function fakeWorker() {
  const on = { ready: () => {}, waiting: () => {}, takenOver: () => {} };
  const calls: string[] = [];
  const port: WorkerPort = {
    onReady: (listener) => {
      on.ready = listener;
    },
    onWaiting: (listener) => {
      on.waiting = listener;
    },
    onTakenOver: (listener) => {
      on.takenOver = listener;
    },
    giveWay: () => void calls.push('give way'),
    look: () => void calls.push('look'),
  };
  return { on, calls, port };
}

function tab(nobodyRuns: () => boolean = () => true) {
  const worker = fakeWorker();
  const due: (() => void)[] = [];
  let reloads = 0;
  const updates = createUpdates(
    worker.port,
    async () => nobodyRuns(),
    () => {
      reloads += 1;
    },
    (_, job) => due.push(job),
  );
  const passTime = (): void => {
    for (const job of due.splice(0)) job();
  };
  return {
    ...worker,
    updates,
    passTime,
    reloads: () => reloads,
    view: () => updates.store.getState(),
  };
}

const settled = (): Promise<void> => new Promise((resolve) => setTimeout(resolve));

describe('updates', () => {
  it('OFF-6 says that all is on the phone only once the worker is installed', () => {
    const { on, view } = tab();
    expect(view().offlineReady).toBe(false);
    on.ready();
    expect(view().offlineReady).toBe(true);
  });

  it('OFF-7 a waiting version is offered, and nothing happens before a yes', async () => {
    const { on, view, calls, reloads } = tab();
    on.waiting();
    await settled();
    expect(view().waiting).toBe(true);
    expect(calls).toEqual([]);
    expect(reloads()).toBe(0);
  });

  it('OFF-7 after a yes the new version is let in and the page opened anew, once', async () => {
    const { on, view, calls, reloads } = tab();
    on.waiting();
    await settled();
    view().apply();
    await settled();
    expect(calls).toEqual(['give way']);
    on.takenOver();
    expect(reloads()).toBe(1);
  });

  it('OFF-8 a version that comes during a session is offered when the session is over', async () => {
    const { on, view, updates } = tab();
    updates.setBusy(true);
    on.waiting();
    await settled();
    expect(view().waiting).toBe(false);
    updates.setBusy(false);
    await settled();
    expect(view().waiting).toBe(true);
  });

  it('OFF-8 an offer that stood is hidden while a session runs, and a late yes does nothing', async () => {
    const { on, view, updates, calls } = tab();
    on.waiting();
    await settled();
    updates.setBusy(true);
    expect(view().waiting).toBe(false);
    view().apply();
    await settled();
    expect(calls).toEqual([]);
  });

  it('OFF-8 a session that begins between the yes and the new version is not cut', async () => {
    const { on, view, updates, reloads } = tab();
    on.waiting();
    await settled();
    view().apply();
    await settled();
    updates.setBusy(true);
    on.takenOver();
    expect(reloads()).toBe(0);
    updates.setBusy(false);
    expect(reloads()).toBe(1);
  });

  it('OFF-9 a session in another tab holds the update back in this one', async () => {
    let elsewhere = true;
    const { on, view, calls, passTime } = tab(() => !elsewhere);
    on.waiting();
    await settled();
    expect(view().waiting).toBe(false);
    view().apply();
    await settled();
    expect(calls).toEqual([]);
    passTime();
    await settled();
    expect(view().waiting).toBe(false);
    elsewhere = false;
    passTime();
    await settled();
    expect(view().waiting).toBe(true);
    view().apply();
    await settled();
    expect(calls).toEqual(['give way']);
  });

  it('OFF-9 a tab whose version was replaced from another tab is asked, not reloaded', async () => {
    const { on, view, reloads, calls } = tab();
    on.takenOver();
    await settled();
    expect(reloads()).toBe(0);
    expect(view().waiting).toBe(true);
    view().apply();
    await settled();
    expect(reloads()).toBe(1);
    expect(calls).toEqual([]);
  });

  it('OFF-10 asks for a new version at most once an hour and never during a session', () => {
    const { updates, calls } = tab();
    const hour = 3_600_000;
    updates.setBusy(true);
    updates.look(0);
    expect(calls).toEqual([]);
    updates.setBusy(false);
    updates.look(0);
    updates.look(hour - 1);
    updates.look(hour);
    expect(calls).toEqual(['look', 'look']);
  });

  it('OFF-7, OFF-8 holds for any order of events: never shown or reloaded while busy, never without a yes', async () => {
    const event = fc.constantFrom('waiting', 'takenOver', 'busy', 'free', 'yes');
    await fc.assert(
      fc.asyncProperty(fc.array(event, { maxLength: 25 }), async (events) => {
        const { on, view, updates, reloads, calls } = tab();
        let busy = false;
        let yes = false;
        for (const name of events) {
          const before = reloads();
          if (name === 'waiting') on.waiting();
          if (name === 'takenOver') on.takenOver();
          if (name === 'busy' || name === 'free') {
            busy = name === 'busy';
            updates.setBusy(busy);
          }
          if (name === 'yes') {
            yes ||= view().waiting;
            view().apply();
          }
          await settled();
          if (busy) expect(view().waiting).toBe(false);
          if (busy || !yes) expect(reloads()).toBe(before);
          if (!yes) expect(calls).toEqual([]);
        }
      }),
    );
  });
});
