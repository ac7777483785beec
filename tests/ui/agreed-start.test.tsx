import { act, screen } from '@testing-library/react';
import { afterEach, describe, expect, it, vi } from 'vitest';
import type { Settings } from '../../src/app/contract.ts';
import { NOTHING_OFFERED } from '../../src/app/session/idle-view.ts';
import type { SessionView } from '../../src/app/session-contract.ts';
import { agreedStart } from '../../src/copy/agreed-start.ts';
import { before } from '../../src/copy/before.ts';
import { running } from '../../src/copy/running.ts';
import { ms } from '../../src/domain/units.ts';
import { DEMO, SETTINGS, viewAt } from '../drivers/fake-app.ts';
import { CURLEW } from '../drivers/gallery/states.ts';
import { askedFor, here, show, user } from './show.tsx';

afterEach(() => {
  vi.useRealTimers();
});

const PATH = `/p/${DEMO.id}/1/1`;
const READY: Settings = {
  ...SETTINGS,
  cautionsReadOn: '2027-03-01',
  pocketCheckSkipped: true,
};
/** 8 March 2027, 9:01:20 by clocks nine and a half hours ahead of UTC. */
const ZONE = { offsetMinutes: 570, zone: 'Australia/Darwin' };
const NOW = Date.UTC(2027, 2, 7, 23, 31, 20);
const at = (hour: number, minute: number): number => Date.UTC(2027, 2, 7, hour + 14, minute + 30);
const button = (name: string | RegExp) => screen.findByRole('button', { name });

async function sheet(now = NOW) {
  const app = show(PATH, { chosen: { [DEMO.id]: 'wren' }, settings: READY, now, zone: ZONE });
  await user.click(await button(agreedStart.open));
  const field = (await screen.findByLabelText(agreedStart.time)) as HTMLInputElement;
  return { app, field };
}

describe('a start together, before the session', () => {
  it('WAIT-9 is one control beside Start, which starts at once as before', async () => {
    const app = show(PATH, { chosen: { [DEMO.id]: 'wren' }, settings: READY });
    expect(await button(agreedStart.open)).toBeDefined();
    await user.click(await button(before.start));
    expect(askedFor(app, 'start')).toEqual([[]]);
  });

  it('WAIT-9 is not offered before the cautions are read and the phone is checked', async () => {
    show(PATH, { chosen: { [DEMO.id]: 'wren' }, settings: SETTINGS });
    expect(await button(before.readFirst)).toBeDefined();
    expect(screen.queryByRole('button', { name: agreedStart.open })).toBeNull();
  });

  it('WAIT-9 proposes the next full five minutes, two minutes ahead at least, by the local clock', async () => {
    const { app, field } = await sheet();
    expect(field.value).toBe('09:05');
    expect(screen.getByText(agreedStart.clocks)).toBeDefined();
    await user.click(await button(agreedStart.wait('09:05')));
    expect(askedFor(app, 'start')).toEqual([[at(9, 5)]]);
  });

  it('WAIT-9 takes any time within half an hour, and says what is not one', async () => {
    const { app, field } = await sheet();
    await user.clear(field);
    await user.type(field, '09:31');
    await user.click(await button(agreedStart.wait('09:31')));
    expect(askedFor(app, 'start')).toEqual([[at(9, 31)]]);
    await user.clear(field);
    await user.type(field, '09:32');
    expect(screen.getByRole('alert').textContent).toBe(agreedStart.problem['too-far']);
    await user.click(await button(agreedStart.wait('09:32')));
    await user.clear(field);
    expect(screen.getByRole('alert').textContent).toBe(agreedStart.problem['no-time']);
    expect(askedFor(app, 'start')).toHaveLength(1);
  });
});

const WAIT: SessionView = viewAt(CURLEW, 0, {
  state: 'waiting',
  caption: 'Two minutes to go.',
  offers: { ...NOTHING_OFFERED, goOn: true },
  wait: { startsAt: at(9, 5), left: ms(130_000) },
});
const waiting = (view: Partial<SessionView> = {}) =>
  show('/run', { view: { ...WAIT, ...view }, settings: SETTINGS, now: NOW, zone: ZONE });
const missed = { startsAt: at(9, 5), left: ms(0) };

describe('the wait', () => {
  it('WAIT-9 says when, in how long, what comes first and that the phone may lock', async () => {
    const app = waiting();
    const heading = await screen.findByRole('heading', { level: 1 });
    expect(heading.textContent).toBe(`${agreedStart.startsAt('09:05')}${agreedStart.andIn}`);
    expect(screen.getByRole('timer').textContent).toBe('2:10');
    expect(screen.getByText('First: EASY WALK 5:00')).toBeDefined();
    expect(screen.getByText(agreedStart.pocket)).toBeDefined();
    expect(screen.getByText('Two minutes to go.')).toBeDefined();
    act(() =>
      app.session.setState({ view: { ...WAIT, wait: { startsAt: at(9, 5), left: ms(9000) } } }),
    );
    expect(screen.getByRole('timer').textContent).toBe('0:09');
  });

  it('PLAY-27 while its sound is late it keeps the phone in view, also for a screen reader', async () => {
    const app = waiting({ late: true });
    expect(await screen.findAllByText(running.lateKeep)).toHaveLength(2);
    expect(screen.getAllByRole('status').map((status) => status.textContent)).toContain(
      running.lateKeep,
    );
    expect(screen.queryByText(agreedStart.pocket)).toBeNull();
    act(() => app.session.setState({ view: WAIT }));
    expect(screen.queryByText(running.lateKeep)).toBeNull();
    expect(screen.getByText(agreedStart.pocket)).toBeDefined();
  });

  it('WAIT-9 can be begun at once', async () => {
    const app = waiting();
    await user.click(await button(agreedStart.now));
    expect(askedFor(app, 'goOn')).toHaveLength(1);
  });

  it('WAIT-9 is left by a second tap or a long press, and leads back to the session', async () => {
    const app = waiting({
      choice: { programmeId: DEMO.id, groupId: 'wren', week: 1, session: 1 },
    });
    await user.click(await button(new RegExp(agreedStart.leave)));
    expect(askedFor(app, 'end')).toEqual([]);
    await user.click(await button(agreedStart.leaveNo));
    await user.click(await button(new RegExp(agreedStart.leave)));
    await user.click(await button(agreedStart.leaveYes));
    expect(askedFor(app, 'end')).toHaveLength(1);
    expect(here()).toBe(PATH);
  });

  it('WAIT-9 in silence says so, and waits on when tapped', async () => {
    const app = waiting({ state: 'waiting-silent' });
    expect((await screen.findByRole('heading', { level: 1 })).textContent).toBe(
      agreedStart.silentTitle,
    );
    expect(screen.getByText(agreedStart.silentBody('09:05'))).toBeDefined();
    expect(screen.getAllByRole('status').map((status) => status.textContent)).toContain(
      agreedStart.silentTitle,
    );
    await user.click(await button(agreedStart.waitOn));
    expect(askedFor(app, 'goOn')).toHaveLength(1);
  });

  it('WAIT-9 missed, it offers the beginning or the others, and no wait', async () => {
    const app = waiting({ state: 'waiting-silent', wait: missed });
    expect(
      await screen.findByText(agreedStart.missedTitle('09:05'), { selector: 'h1' }),
    ).toBeDefined();
    expect(screen.queryByRole('timer')).toBeNull();
    await user.click(await button(agreedStart.catchUp));
    expect(askedFor(app, 'afterGap')).toEqual([['catch-up']]);
    await user.click(await button(agreedStart.fromTheStart));
    expect(askedFor(app, 'goOn')).toHaveLength(1);
  });

  it('WAIT-9 on the screen it says to keep it in view', async () => {
    waiting({ medium: 'screen' });
    expect(await screen.findByText(agreedStart.seen)).toBeDefined();
  });

  it('WAIT-9 cut off, it is offered again on the first page, or let go', async () => {
    const app = show('/start', { now: NOW, zone: ZONE });
    const choice = { programmeId: DEMO.id, groupId: 'wren', week: 1, session: 1 };
    const unfinished = {
      choice,
      position: ms(0),
      total: ms(1_860_000),
      startedAt: at(9, 5),
      lastSeenAt: NOW - 60_000,
      offer: 'wait',
    } as const;
    act(() => app.session.setState({ unfinished }));
    expect(await screen.findByText(agreedStart.cutOff('09:05'))).toBeDefined();
    await user.click(await button(agreedStart.letGo));
    await user.click(await button(agreedStart.goOn));
    expect(askedFor(app, 'recover')).toEqual([['keep'], ['go-on']]);
    expect(here()).toBe('/run');
  });
});
