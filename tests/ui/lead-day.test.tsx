import { act, fireEvent, screen, within } from '@testing-library/react';
import { afterEach, beforeAll, describe, expect, it, vi } from 'vitest';
import { NOTHING_OFFERED } from '../../src/app/session/idle-view.ts';
import type { Led, SessionView } from '../../src/app/session-contract.ts';
import { agreedStart } from '../../src/copy/agreed-start.ts';
import { STOP_SIGNS } from '../../src/copy/cautions.ts';
import { leadCare, leadDay, leading, leadWrong } from '../../src/copy/lead-day.ts';
import { running, wrong } from '../../src/copy/running.ts';
import { timeOfDay } from '../../src/copy/times.ts';
import { desk } from '../../src/copy/workshop.ts';
import { ms } from '../../src/domain/units.ts';
import { PRESS_MS } from '../../src/ui/parts/PressLong.tsx';
import { DEMO, type FakeOptions, leadViewAt } from '../drivers/fake-app.ts';
import { LED } from '../drivers/gallery/lead.ts';
import { STATES } from '../drivers/gallery/states.ts';
import { askedFor, here, show, user } from './show.tsx';

beforeAll(async () => {
  await import('../../src/ui/lead/index.ts');
});
afterEach(() => {
  vi.useRealTimers();
});

const button = (name: string) => screen.findByRole('button', { name });
const stateOf = (name: string) => {
  const state = STATES[name];
  if (state === undefined) throw new Error(`no state ${name}`);
  return state;
};
const open = (name: string, options: FakeOptions = {}) =>
  show(stateOf(name).path, { ...stateOf(name).options, ...options });
/** What was last made ready. */
const ready = (app: ReturnType<typeof show>) => askedFor(app, 'prepare').at(-1) as [Led, string];
const SENT = { id: LED.programme.id, revision: 1, text: DEMO.text, signature: '', at: 0 };
const sent = { publishing: { sent: { [SENT.id]: SENT } } } as FakeOptions;
const groupBlock = async (name: string) => within(await screen.findByRole('region', { name }));

describe('choosing who is led', () => {
  it('DAY-1 is one tap from the programme, and begins at today’s session with everyone', async () => {
    const { sheets = [], now } = stateOf('lead-day').options;
    const app = show('/lead/sheet-1', { sheets, ...(now === undefined ? {} : { now }) });
    await user.click(await screen.findByRole('link', { name: desk.lead }));
    await screen.findByRole('heading', { level: 1, name: leadDay.title });
    const [led, medium] = ready(app);
    expect(medium).toBe('sound');
    expect(led.key).toBe('sheet-1');
    expect(led.choice).toMatchObject({ week: 1, session: 1, tick: true });
    expect(
      led.plan.groups.map(({ number, name, startsAt, voice }) => [number, name, startsAt, voice]),
    ).toEqual([
      [1, 'Wren', 0, 'words'],
      [2, 'Dunlin', 0, 'words'],
      [3, 'Curlew', 0, 'words'],
      [4, 'Swift', 0, 'words'],
    ]);
  });

  it('DAY-1 another week, another session, how a group is told and the tick go along', async () => {
    const app = open('lead-day');
    await user.selectOptions(await screen.findByLabelText(leadDay.week), '3');
    await user.selectOptions(screen.getByLabelText(leadDay.session), '2');
    await user.selectOptions(screen.getByLabelText(leadDay.voice('Curlew')), 'tone');
    await user.click(screen.getByRole('checkbox', { name: leadDay.tick }));
    const [{ choice, plan }] = ready(app);
    expect(choice).toMatchObject({ week: 3, session: 2, tick: false });
    expect(plan.tick).toBe(false);
    expect(plan.groups[2]?.voice).toBe('tone');
  });

  it('DAY-1 what was chosen last on this device is there again', async () => {
    const choice = {
      ...LED.choice,
      tick: false,
      groups: LED.choice.groups.map((each) => ({ ...each, here: each.id !== 'swift' })),
    };
    const app = open('lead-day', { session: { ledBefore: { key: 'sheet-1', choice } } });
    await button(leadDay.begin);
    const [led] = ready(app);
    expect(led.plan.groups.map(({ id, startsAt }) => [id, startsAt])).toEqual([
      ['wren', 0],
      ['dunlin', 120_000],
      ['curlew', 240_000],
    ]);
    expect(led.plan.tick).toBe(false);
  });

  it('DAY-2 groups are staggered with one tap, and one that is not here takes no turn', async () => {
    const app = open('lead-day');
    await user.click(await screen.findByRole('checkbox', { name: leadDay.here(2, 'Dunlin') }));
    await user.click(await button(leadDay.stagger));
    const starts = () =>
      ready(app)[0].plan.groups.map(({ id, startsAt }) => [id, startsAt / 60_000]);
    expect(starts()).toEqual([
      ['wren', 0],
      ['curlew', 2],
      ['swift', 4],
    ]);
    await user.selectOptions(screen.getByLabelText(leadDay.starts('Swift')), '7');
    expect(starts().at(-1)).toEqual(['swift', 7]);
    await user.click(await button(leadDay.atOnce));
    expect(starts().map(([, at]) => at)).toEqual([0, 0, 0]);
  });

  it('DAY-2 without any group there is nothing to start', async () => {
    open('lead-day');
    for (const [n, name] of ['Wren', 'Dunlin', 'Curlew', 'Swift'].entries())
      await user.click(await screen.findByRole('checkbox', { name: leadDay.here(n + 1, name) }));
    expect(screen.queryByRole('button', { name: leadDay.begin })).toBeNull();
    expect(screen.getAllByText(leadDay.nobody).length).toBeGreaterThan(0);
  });

  it('DAY-3 groups that finish apart are told with when each is done, and may be started', async () => {
    open('lead-day');
    await button(leadDay.begin);
    expect(screen.queryByText(/do not finish together/)).toBeNull();
    await user.click(await button(leadDay.stagger));
    // Thirty-one minutes each, two minutes apart: by hand.
    expect(screen.getByText(leadDay.apart('6 min'))).toBeDefined();
    expect(screen.getByText('Swift after 37 min')).toBeDefined();
    expect(await button(leadDay.begin)).toBeDefined();
  });

  it('DAY-7 leading that was cut off comes first, with the place by the clock', async () => {
    const app = open('lead-cut-off');
    // 12:08 ago by the made-up clock.
    expect(await button(leadDay.cutOff.goOn('12:08'))).toBeDefined();
    const [led] = ready(app);
    expect(led.from).toEqual({ place: 0, wall: expect.any(Number), holding: false });
    expect(led.plan.groups[3]?.startsAt).toBe(360_000);
    await user.click(await button(leadDay.cutOff.goOn('12:08')));
    expect(askedFor(app, 'start')).toHaveLength(1);
    await user.click(await button(leadDay.cutOff.leave));
    expect(askedFor(app, 'close')).toHaveLength(1);
  });

  it('DAY-7 cut off before an agreed start, it can be waited for again or let go', async () => {
    const at = (stateOf('lead-day').options.now ?? 0) + 600_000;
    const mark = { place: ms(0), wall: at, holding: false };
    const before = { key: 'sheet-1', choice: LED.choice, mark };
    const app = open('lead-day', { session: { ledBefore: before } });
    expect(await screen.findByText(agreedStart.cutOff(timeOfDay(at)))).toBeDefined();
    await user.click(await button(agreedStart.goOn));
    expect(ready(app)[0].from).toEqual(mark);
    expect(askedFor(app, 'start')).toHaveLength(1);
    await user.click(await button(agreedStart.letGo));
    expect(askedFor(app, 'close')).toHaveLength(1);
  });

  it('DAY-10 without the voice it can be led by the screen', async () => {
    const app = open('lead-day-missing');
    await user.click(await screen.findByRole('button', { name: 'Go without sound' }));
    expect(await button(leadDay.beginSilent)).toBeDefined();
    expect(ready(app)[1]).toBe('screen');
    expect(screen.getByText(leadDay.silentWords)).toBeDefined();
  });

  it('DAY-11 a word of care stands before every start, and the list of who came when it was sent', async () => {
    open('lead-day', sent);
    for (const point of leadCare.points) expect(await screen.findByText(point)).toBeDefined();
    expect(screen.getByText(leadCare.rules)).toBeDefined();
    const list = await screen.findByRole('link', { name: leadDay.list });
    expect(list.getAttribute('href')).toBe(`#/board/${LED.programme.id}/list`);
  });

  it('DAY-11 cautions that were never read come before the start', async () => {
    const app = open('lead-day', { settings: {} });
    await user.click(await button('Read the cautions first'));
    expect(here()).toBe('/cautions');
    expect(askedFor(app, 'start')).toEqual([]);
  });

  it('DAY-5 while a session of one’s own is under way it is said, and nothing is made ready', async () => {
    const own = stateOf('run-run').options;
    const app = open('lead-day', { ...(own.view && { view: own.view }) });
    expect(await screen.findByText(leadDay.ownUnderWay)).toBeDefined();
    expect(askedFor(app, 'prepare')).toEqual([]);
  });

  it('DAY-5 every page leads back to groups that are led', async () => {
    const view = leadViewAt(LED, 60_000);
    const { sheets = [] } = stateOf('lead-day').options;
    show('/settings', { view, sheets });
    await user.click(await screen.findByRole('link', { name: 'Back to it' }));
    expect(await screen.findByRole('region', { name: '1 Wren' })).toBeDefined();
    expect(here()).toBe('/lead/sheet-1/day/go');
  });
});

describe('all groups side by side', () => {
  it('DAY-8 says of each what it does, how long yet, what comes then, its set and its end', async () => {
    open('lead-go');
    // 12:08 after the first start, worked by hand from the plans: Wren is in the brisk walk of its
    // third set, Dunlin (10:08) in the jog of its second, Curlew (8:08) in the walk before its
    // second run, Swift (6:08) in its first run, of ten minutes.
    const wren = await groupBlock('1 Wren');
    expect(wren.getByText('1:52 left, then WALK 1:00')).toBeDefined();
    expect(wren.getByText('WALK', { exact: false, selector: '.lead-word' }).textContent).toBe(
      'brisk WALK',
    );
    const dunlin = await groupBlock('2 Dunlin');
    expect(dunlin.getByText('0:52 left, then WALK 2:00')).toBeDefined();
    const curlew = await groupBlock('3 Curlew');
    expect(curlew.getByText('0:52 left, then RUN 2:00')).toBeDefined();
    const swift = await groupBlock('4 Swift');
    expect(swift.getByText('RUN')).toBeDefined();
    expect(swift.getByText('8:52 left, then WALK 1:00')).toBeDefined();
    // Ten o'clock less 12:08 is the start; Wren is done 31 minutes later, Swift after 37.
    const at = (minutes: number) => {
      const when = new Date(Date.UTC(2027, 2, 6, 10) + minutes * 60_000 - 728_000);
      return `${String(when.getHours()).padStart(2, '0')}:${String(when.getMinutes()).padStart(2, '0')}`;
    };
    expect(wren.getByText(`Set 3 of 7 · ${leading.ends(at(31))}`)).toBeDefined();
    expect(swift.getByText(leading.ends(at(37)))).toBeDefined();
  });

  it('DAY-8 those who wait are told when they start, those who are done that they are', async () => {
    const app = open('lead-start');
    const swift = await groupBlock('4 Swift');
    expect(swift.getByText(leading.waits)).toBeDefined();
    // It starts after six minutes; four seconds are gone.
    expect(swift.getByText('starts in 5:56')).toBeDefined();
    act(() => app.session.setState({ view: leadViewAt(LED, 1_860_000) }));
    const wren = await groupBlock('1 Wren');
    expect(wren.getByText(leading.done)).toBeDefined();
  });

  it('DAY-8 while a start is waited for, it says what every group begins with, and who later', async () => {
    open('lead-wait');
    await screen.findByRole('heading', { level: 1 });
    expect(screen.getByText(leading.groups)).toBeDefined();
    // From the demo's plans by hand: five minutes of easy walk for all, two minutes apart.
    expect(screen.getAllByRole('listitem').map((item) => item.textContent)).toEqual([
      '1 WrenEASY WALK 5:00',
      '2 DunlinEASY WALK 5:00 after 2:00',
      '3 CurlewEASY WALK 5:00 after 4:00',
      '4 SwiftEASY WALK 5:00 after 6:00',
    ]);
  });

  it('DAY-8 follows from second to second', async () => {
    const app = open('lead-go');
    await screen.findByText('1:52 left, then WALK 1:00');
    act(() => app.session.setState({ view: leadViewAt(LED, 729_000) }));
    expect(screen.getByText('1:51 left, then WALK 1:00')).toBeDefined();
  });

  it.each([
    ['lead-held', leading.hold],
    ['lead-taken', leading.wait],
  ])('DAY-8 nobody reads RUN while everyone stands (%s)', async (state, word) => {
    const app = open(state);
    await groupBlock('4 Swift');
    const words = [...document.querySelectorAll('.lead-word')].map((each) => each.textContent);
    expect(words).toEqual([word, word, word, word]);
    expect(screen.getByText('then RUN, 8:52 left of it')).toBeDefined();
    await user.click(await button(leading.goOn));
    expect(askedFor(app, 'goOn')).toHaveLength(1);
  });

  it('DAY-4 hold all is one tap; what moves one person alone is not there', async () => {
    const app = open('lead-go');
    await user.click(await button(leading.holdAll));
    expect(askedFor(app, 'hold')).toHaveLength(1);
    for (const name of [running.more, running.walkNow, running.oneMore, running.skip])
      expect(screen.queryByRole('button', { name })).toBeNull();
  });

  it('DAY-4 it ends for all after a press of one second, and a shorter one asks', async () => {
    const app = open('lead-go');
    const end = await button(leading.end);
    vi.useFakeTimers();
    fireEvent.pointerDown(end);
    act(() => vi.advanceTimersByTime(PRESS_MS - 1));
    expect(askedFor(app, 'end')).toEqual([]);
    act(() => vi.advanceTimersByTime(1));
    expect(askedFor(app, 'end')).toHaveLength(1);
    vi.useRealTimers();
    fireEvent.pointerUp(end);
    await user.click(await button(leading.end));
    expect(screen.getByRole('group', { name: leading.endAsk })).toBeDefined();
    await user.click(await button(running.endNo));
    expect(askedFor(app, 'end')).toHaveLength(1);
  });

  it('DAY-4 something is wrong: all on hold, the stop signs, how to get help, none of it "go on"', async () => {
    const app = open('lead-wrong');
    const dialog = within(await screen.findByRole('dialog', { name: wrong.title }));
    for (const sign of STOP_SIGNS) expect(dialog.getByText(sign)).toBeDefined();
    expect(dialog.getByText(leadWrong.held)).toBeDefined();
    expect(dialog.getByText(/your local emergency number/)).toBeDefined();
    expect(dialog.queryByRole('button', { name: leading.goOn })).toBeNull();
    await user.click(dialog.getByRole('button', { name: wrong.alright }));
    expect(askedFor(app, 'allRight')).toHaveLength(1);
  });

  it('DAY-10 a screen reader hears of changes that no voice says, and of nothing else', async () => {
    const app = open('lead-go');
    await groupBlock('1 Wren');
    const said = () =>
      screen
        .getAllByRole('status')
        .map((each) => each.textContent)
        .join('');
    expect(said()).toBe('');
    const groups = LED.plan.groups.map((group) =>
      group.number > 2 ? { ...group, voice: 'tone' as const } : group,
    );
    const tones = { ...LED, plan: { ...LED.plan, groups } };
    act(() => app.session.setState({ view: leadViewAt(tones, 728_000) }));
    expect(said()).toBe('Group 3 walk · Group 4 run');
    const silent: Partial<SessionView> = { medium: 'screen' };
    act(() => app.session.setState({ view: leadViewAt(LED, 728_000, silent) }));
    expect(said()).toContain('Group 1 brisk walk · Group 2 easy jog · Group 3 walk · Group 4 run');
  });

  it('DAY-10 the screen is kept on while it shows the groups', async () => {
    const app = open('lead-go');
    await groupBlock('1 Wren');
    expect(askedFor(app, 'watch')).toEqual([[true]]);
  });

  it('DAY-11 at the end the list of who came is one tap away, for a programme that was sent', async () => {
    const app = open('lead-go', sent);
    await groupBlock('1 Wren');
    const over: SessionView = {
      ...leadViewAt(LED, 2_220_000),
      state: 'finished',
      offers: NOTHING_OFFERED,
      left: ms(0),
    };
    act(() => app.session.setState({ view: over }));
    await screen.findByRole('heading', { level: 1, name: leading.over.finished });
    const list = await screen.findByRole('link', { name: leading.over.list });
    expect(list.getAttribute('href')).toBe(`#/board/${LED.programme.id}/list`);
    act(() => app.session.setState({ view: { ...over, state: 'ended-early' } }));
    expect(screen.getByRole('heading', { level: 1, name: leading.over.ended })).toBeDefined();
  });

  it('DAY-11 a programme that nobody has has no list of people', async () => {
    open('lead-over');
    await screen.findByRole('heading', { level: 1, name: leading.over.finished });
    expect(screen.queryByRole('link', { name: leading.over.list })).toBeNull();
  });

  it('DAY-5 the page of groups that nobody leads is the one where they are chosen', async () => {
    const { sheets = [] } = stateOf('lead-day').options;
    show('/lead/sheet-1/day/go', { sheets });
    await screen.findByRole('heading', { level: 1, name: leadDay.title });
    expect(here()).toBe('/lead/sheet-1/day');
  });
});
