import { describe, expect, it } from 'vitest';
import { settle } from '../drivers/clock.ts';
import { openTab } from '../drivers/phone.ts';

describe('the main job', () => {
  it('PLAY-1 a session is prepared, started, heard to its end and logged', async () => {
    const { app, clock, store } = await openTab();
    const programme = app.programmes.getState().programmes[0];
    const group = programme?.groups[0];
    const choice = {
      programmeId: programme?.id ?? '',
      groupId: group?.id ?? '',
      week: 1,
      session: 1,
    };
    await app.session.getState().prepare(choice, 'sound');
    expect(app.session.getState().view.state).toBe('ready');
    const total = app.session.getState().view.timeline?.total ?? 0;
    app.session.getState().start();
    expect(app.session.getState().view.state).toBe('running');
    await clock.pass(total / 1000 - 1);
    expect(app.session.getState().view.state).toBe('running');
    await clock.pass(2);
    await settle();
    expect(app.session.getState().view.state).toBe('finished');
    const [entry] = app.log.getState().entries;
    expect(entry).toMatchObject({
      outcome: 'finished',
      doneSeconds: total / 1000,
      id: app.session.getState().entryId,
    });
    const stored = await store.load();
    expect(stored.ok && stored.value.log).toEqual([entry]);
    expect(stored.ok && stored.value.journals).toEqual([]);
  });
});
