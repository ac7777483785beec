import { act, cleanup, fireEvent, screen, within } from '@testing-library/react';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { NOTHING_OFFERED } from '../../src/app/session/idle-view.ts';
import type { SessionView } from '../../src/app/session-contract.ts';
import { STOP_SIGNS } from '../../src/copy/cautions.ts';
import { common } from '../../src/copy/common.ts';
import { running, wrong } from '../../src/copy/running.ts';
import { ms } from '../../src/domain/units.ts';
import { PRESS_MS } from '../../src/ui/parts/PressLong.tsx';
import { SETTINGS, viewAt } from '../drivers/fake-app.ts';
import { CURLEW, STATES } from '../drivers/gallery/states.ts';
import { askedFor, here, show, user } from './show.tsx';

afterEach(() => {
  vi.useRealTimers();
});

/** 12:08 into the session: the second minute of the third run (5 + 2 x 3 + 1 min, by hand). */
const RUN = viewAt(CURLEW, 728_000, {
  caption: 'Run. Two minutes.',
  offers: {
    ...NOTHING_OFFERED,
    hold: true,
    walkNow: true,
    skip: true,
    back: true,
    coolDown: 'jump',
  },
});
const open = (view: SessionView = RUN) => show('/run', { view, settings: SETTINGS });
const button = (name: string) => screen.findByRole('button', { name });

describe('the running screen', () => {
  it('UI-3 says all of it: activity, what is left, what comes then, part, set, effort, place', async () => {
    open();
    expect(await screen.findByRole('heading', { level: 1, name: 'RUN' })).toBeDefined();
    expect(screen.getByRole('timer').textContent).toBe('1:52');
    expect(screen.getByText('then WALK 1:00')).toBeDefined();
    expect(screen.getByText('Main set. Set 3 of 7')).toBeDefined();
    expect(screen.getByText('12:08 of 31 min')).toBeDefined();
    expect(screen.getByText('Effort 7: a few words at a time')).toBeDefined();
    expect(screen.getByText('Run. Two minutes.')).toBeDefined();
  });

  it('UI-3 follows the session from second to second', async () => {
    const app = open();
    await screen.findByText('1:52');
    act(() => app.session.setState({ view: { ...RUN, left: ms(RUN.left - 1000) } }));
    expect(screen.getByRole('timer').textContent).toBe('1:51');
  });

  it('UI-3 a screen reader says by itself only what no voice says', async () => {
    const app = open();
    await screen.findByText('1:52');
    const said = () =>
      screen
        .getAllByRole('status')
        .map((region) => region.textContent)
        .join('');
    expect(said()).toBe('');
    act(() => app.session.setState({ view: { ...RUN, state: 'interrupted' } }));
    expect(said()).toBe(`${running.interruptedTitle}.`);
    act(() => app.session.setState({ view: { ...RUN, medium: 'screen' } }));
    expect(said()).toContain('run, 2 minutes');
  });

  it('UI-4 three controls stand out, and the one in the middle fits the moment', async () => {
    const app = open();
    await user.click(await button(running.hold));
    await user.click(await button(running.walkNow));
    expect(screen.queryByRole('button', { name: running.oneMore })).toBeNull();
    const offers = { ...RUN.offers, walkNow: false, oneMore: true };
    act(() => app.session.setState({ view: { ...RUN, offers } }));
    await user.click(await button(running.oneMore));
    expect(screen.queryByRole('button', { name: running.walkNow })).toBeNull();
    await user.click(await button(running.wrong));
    expect(app.asked.map(([name]) => name)).toEqual([
      'hold',
      'walkNow',
      'oneMore',
      'somethingIsWrong',
    ]);
  });

  it('UI-4 the rest is one tap away, and closes after its use', async () => {
    const app = open();
    await user.click(await button(running.more));
    await user.click(await button(running.skip));
    expect(askedFor(app, 'skip')).toHaveLength(1);
    expect(screen.queryByRole('button', { name: running.skip })).toBeNull();
  });

  it('UI-4 a skip or an early walk can be undone while that is offered', async () => {
    const app = open({ ...RUN, offers: { ...RUN.offers, undo: 'walk-now' } });
    await user.click(await button(running.undoWalk));
    expect(askedFor(app, 'undo')).toHaveLength(1);
  });

  it('PLAY-27 a sound that takes its time is waited for in words, also for a screen reader', async () => {
    open({ ...RUN, late: true });
    expect(await screen.findByText(running.late)).toBeDefined();
    expect(
      screen.getByText(`${running.late}.`).closest('[aria-live], [role=status]'),
    ).not.toBeNull();
    expect(await button(running.hold)).toBeDefined();
    cleanup();
    open(RUN);
    await button(running.hold);
    expect(screen.queryByText(running.late)).toBeNull();
  });

  it('UI-4 on hold, interrupted or stalled the way on is Go on, and the reason is said', async () => {
    for (const [state, text] of [
      ['holding', 'Standing by. Then RUN, 1:52 left of it.'],
      ['interrupted', running.interruptedBody],
      ['stalled', running.stalledBody],
    ] as const) {
      const app = open({ ...RUN, state, offers: { ...NOTHING_OFFERED, goOn: true } });
      expect(await screen.findByText(text)).toBeDefined();
      await user.click(await button(running.goOn));
      expect(askedFor(app, 'goOn')).toHaveLength(1);
      cleanup();
    }
  });
});

describe('ending a session', () => {
  const openEnd = async () => {
    const app = open();
    await user.click(await button(running.more));
    const end = await button(running.end);
    vi.useFakeTimers();
    return { app, end };
  };

  it('UI-5 a press of one second ends it', async () => {
    const { app, end } = await openEnd();
    fireEvent.pointerDown(end);
    act(() => vi.advanceTimersByTime(PRESS_MS - 1));
    expect(askedFor(app, 'end')).toEqual([]);
    act(() => vi.advanceTimersByTime(1));
    expect(askedFor(app, 'end')).toHaveLength(1);
  });

  it('UI-5 a shorter press only asks, and the answer decides', async () => {
    const { app, end } = await openEnd();
    fireEvent.pointerDown(end);
    act(() => vi.advanceTimersByTime(400));
    fireEvent.pointerUp(end);
    fireEvent.click(end);
    act(() => vi.advanceTimersByTime(5000));
    expect(askedFor(app, 'end')).toEqual([]);
    fireEvent.click(screen.getByRole('button', { name: running.endYes }));
    expect(askedFor(app, 'end')).toHaveLength(1);
  });

  it('UI-5 the keyboard ends it too: a key held for a second, not a key pressed', async () => {
    const { app, end } = await openEnd();
    fireEvent.keyDown(end, { key: 'Enter' });
    act(() => vi.advanceTimersByTime(300));
    fireEvent.keyUp(end, { key: 'Enter' });
    act(() => vi.advanceTimersByTime(PRESS_MS));
    expect(askedFor(app, 'end')).toEqual([]);
    fireEvent.click(screen.getByRole('button', { name: running.endNo }));
    const again = screen.getByRole('button', { name: running.end });
    fireEvent.keyDown(again, { key: ' ' });
    act(() => vi.advanceTimersByTime(PRESS_MS));
    expect(askedFor(app, 'end')).toHaveLength(1);
  });

  it('UI-5 a finger that slides off ends nothing', async () => {
    const { app, end } = await openEnd();
    fireEvent.pointerDown(end);
    act(() => vi.advanceTimersByTime(600));
    fireEvent.pointerLeave(end);
    act(() => vi.advanceTimersByTime(5000));
    expect(askedFor(app, 'end')).toEqual([]);
  });
});

describe('trouble on the way', () => {
  it('UI-6 something is wrong: stop signs and how to get help, none answered with go on', async () => {
    const offers = { ...NOTHING_OFFERED, goOn: true, coolDown: 'jump' as const };
    const app = open({ ...RUN, state: 'holding', wrong: true, offers });
    const dialog = within(await screen.findByRole('dialog', { name: wrong.title }));
    for (const sign of STOP_SIGNS) expect(dialog.getByText(sign)).toBeDefined();
    expect(dialog.getByText(/your local emergency number/)).toBeDefined();
    expect(dialog.queryByRole('button', { name: running.goOn })).toBeNull();
    await user.click(await button(wrong.alright));
    expect(askedFor(app, 'allRight')).toHaveLength(1);
    expect(askedFor(app, 'goOn')).toEqual([]);
  });

  it('UI-7 a gap is told with both times and the minute, and asks what to do', async () => {
    const stoppedAt = new Date(2027, 2, 2, 12, 31, 40).getTime();
    const cameBackAt = new Date(2027, 2, 2, 16, 40, 5).getTime();
    const app = open({ ...RUN, gap: { stoppedAt, cameBackAt, position: ms(8 * 60_000 + 5000) } });
    expect(
      await screen.findByText(
        'The sound stopped at 12:31 and came back at 16:40. You were at minute 9. Go on from minute 9, or catch up?',
      ),
    ).toBeDefined();
    await user.click(await button(running.gapCatchUp));
    expect(askedFor(app, 'afterGap')).toEqual([['catch-up']]);
  });

  it.each(['interrupted', 'stalled'] as const)(
    'UI-7 a sound that is still away is not said to have come back (%s)',
    async (state) => {
      const stoppedAt = new Date(2027, 2, 1, 12, 31).getTime();
      const cameBackAt = stoppedAt + 60_000;
      open({ ...RUN, state, gap: { stoppedAt, cameBackAt, position: ms(8 * 60_000 + 5000) } });
      expect(await screen.findByText(/stopped at 12:31 and is still silent/)).toBeDefined();
      expect(screen.queryByText(/came back/)).toBeNull();
    },
  );

  it('UI-7 an answer or an ended session that waits for storage is said on every page', async () => {
    const app = show('/done');
    act(() => app.log.setState({ unsaved: true }));
    expect(await screen.findByText(common.unsaved)).toBeDefined();
  });

  it('UI-7 storage that refuses is said, and the session goes on', async () => {
    open({ ...RUN, unsaved: true });
    expect(await screen.findByText(running.unsaved)).toBeDefined();
    expect(await button(running.hold)).toBeDefined();
  });
});

describe('following the session', () => {
  it('UI-8 the page follows: to the running screen at the start, to the rating at the end', async () => {
    const state = STATES['felt-new'];
    const app = show('/settings', { ...state?.options, view: { ...RUN, state: 'ready' } });
    await screen.findByRole('heading', { level: 1 });
    act(() => app.session.setState({ view: RUN }));
    expect(here()).toBe('/run');
    act(() => app.session.setState({ view: { ...RUN, state: 'finished' }, entryId: 'e3' }));
    expect(here()).toBe('/felt/e3');
  });

  it('UI-8 another page says that a session is under way and leads back to it', async () => {
    show('/settings', { view: RUN });
    await user.click(await screen.findByRole('link', { name: 'Back to it' }));
    expect(here()).toBe('/run');
  });
});
