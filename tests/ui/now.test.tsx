import { act, screen, waitFor, within } from '@testing-library/react';
import { describe, expect, it } from 'vitest';
import { advice } from '../../src/copy/advice.ts';
import { before } from '../../src/copy/before.ts';
import { cautions } from '../../src/copy/cautions.ts';
import { findGroupCopy as find } from '../../src/copy/find-group.ts';
import { groups } from '../../src/copy/groups.ts';
import { nowCopy as words } from '../../src/copy/now.ts';
import { weeks } from '../../src/copy/weeks.ts';
import { welcome } from '../../src/copy/welcome.ts';
import type { Feeling, LogEntry } from '../../src/domain/log/entry.ts';
import { did, followed, on } from '../domain/advice/people.ts';
import { DEMO, type FakeApp, type FakeOptions, viewAt } from '../drivers/fake-app.ts';
import { askedFor, here, show, user } from './show.tsx';

const ON_THE_DAY = {
  chosen: { [DEMO.id]: 'curlew' },
  zone: { offsetMinutes: 0, zone: 'Europe/London' },
};
const PAGE = `/p/${DEMO.id}`;
const utc = (date: string, time = '12:00'): number => Date.parse(`${date}T${time}:00Z`);

/** The programme's page on a day, in group Curlew, where it is noon. */
async function onDay(date: string, options: FakeOptions = {}): Promise<FakeApp> {
  // Put into the options themselves: the fake clock reads them as they are then.
  const app = show(PAGE, Object.assign(options, { ...ON_THE_DAY, now: utc(date), ...options }));
  await screen.findByRole('heading', { name: words.title });
  return app;
}

const one = (date: string, feeling: Feeling = {}, week = 1, session = 1): LogEntry =>
  did({ date, week, session, feeling });
/** The first week as its leader meant it, with a last session that felt as given. */
const firstWeek = (last: Feeling = { effort: 5 }): readonly LogEntry[] => [
  one(on(1, 1), { effort: 5 }, 1, 1),
  one(on(1, 3), { effort: 5 }, 1, 2),
  one(on(1, 5), last, 1, 3),
];
const card = () => screen.getByRole('region', { name: /^Week \d, session \d$/ });
const opener = () => screen.getByRole('link', { name: weeks.open });
const isPrimary = () => opener().classList.contains('primary');
/** Whether one thing stands above another. */
const isAbove = (a: Node, b: Node): boolean =>
  (a.compareDocumentPosition(b) & Node.DOCUMENT_POSITION_FOLLOWING) !== 0;
const followedLast = (app: FakeApp) => askedFor(app, 'follow').at(-1)?.[0];

describe('what is next', () => {
  it('UI-40 the next session stands first, with its length, its effort in words and its focus', async () => {
    await onDay(on(1, 2));
    const next = within(card());
    expect(next.getByRole('heading', { name: weeks.session(1, 1) })).toBeDefined();
    // By hand from the demo's file: 5 + 7 x (1 + 2) + 5 min; the week is meant at 5 of 10.
    expect(next.getByText('31 min in all, main set 21 min')).toBeDefined();
    expect(next.getByText(/^5 of 10: whole sentences/)).toBeDefined();
    expect(next.getByText(/rhythm/)).toBeDefined();
    expect(next.getByText(words.need.due)).toBeDefined();
    expect(isPrimary()).toBe(true);
    await user.click(opener());
    expect(here()).toBe(`${PAGE}/1/1`);
  });

  it('UI-40 the count of the week and the days to the event are said', async () => {
    await onDay(on(1, 3), { entries: [one(on(1, 1))] });
    // 3 March to 11 April 2027: 28 days left of March, and 11.
    expect(screen.getByText('39 days to Heron Loop.')).toBeDefined();
    expect(screen.getByText('1 of 2 to 3 this week.')).toBeDefined();
  });

  it('UI-40 a week that has enough offers one more, and a full one shows when the next is', async () => {
    await onDay(on(1, 6), { entries: firstWeek().slice(0, 2) });
    expect(within(card()).getByText(words.need.extra)).toBeDefined();
    expect(isPrimary()).toBe(false);
  });

  it('UI-40 after a full week the first session of the next one is shown, with its day', async () => {
    await onDay(on(1, 7), { entries: firstWeek() });
    const next = within(card());
    expect(next.getByRole('heading', { name: weeks.session(2, 1) })).toBeDefined();
    expect(next.getByText('From Mon, 8 March 2027.')).toBeDefined();
    expect(isPrimary()).toBe(false);
  });

  it('UI-40 with every week behind, any session can be done again', async () => {
    await onDay(on(9, 1), { entries: [one(on(6, 6), {}, 6, 1), one(on(6, 4), {}, 6, 2)] });
    expect(screen.getByText(words.through)).toBeDefined();
    expect(screen.queryByRole('link', { name: weeks.open })).toBeNull();
  });
});

describe('several programmes', () => {
  it('NOW-11 the first page asks which one, and says of each what is next', async () => {
    const other = { ...DEMO, id: 'other', title: 'Round the reed beds' };
    show('/start', {
      ...ON_THE_DAY,
      now: utc(on(1, 2)),
      programmes: { programmes: [DEMO, other] },
      chosen: { [DEMO.id]: 'curlew', other: 'wren' },
      entries: [one(on(1, 1))],
    });
    expect(await screen.findByRole('heading', { name: welcome.which })).toBeDefined();
    // Curlew did its first session on Monday; nobody did one of the other programme yet.
    expect(await screen.findByText(/Week 1, session 2, 31 min/)).toBeDefined();
    expect(await screen.findByText(/Week 1, session 1, 31 min/)).toBeDefined();
  });

  it('NOW-11 with one programme nothing is asked', async () => {
    show('/start', { ...ON_THE_DAY, now: utc(on(1, 2)) });
    await screen.findByText(/Week 1, session 1, 31 min/);
    expect(screen.queryByRole('heading', { name: welcome.which })).toBeNull();
  });
});

describe('rest and days missed', () => {
  it('UI-41 done for today is said, and the next one is from tomorrow', async () => {
    await onDay(on(1, 1), { entries: [one(on(1, 1))] });
    expect(screen.getByText(/^Done for today/)).toBeDefined();
    expect(within(card()).getByText('From Tue, 2 March 2027.')).toBeDefined();
    expect(isPrimary()).toBe(false);
  });

  it('UI-41 two hard days running get one word with the day to come out again', async () => {
    const entries = [one(on(1, 1), { effort: 8 }), one(on(1, 2), { effort: 8 }, 1, 2)];
    await onDay(on(1, 2), { entries });
    expect(screen.getAllByText(/hard days came one after the other/)).toHaveLength(1);
    expect(screen.getByText(/best from Thu, 4 March 2027/)).toBeDefined();
    expect(isPrimary()).toBe(false);
  });

  it('UI-41 a thin week is met kindly, once, and nothing speaks of a streak', async () => {
    await onDay(on(2, 1), { entries: [one(on(1, 1), { effort: 5 })] });
    expect(screen.getAllByText(/that happens/)).toHaveLength(1);
    expect(document.body.textContent).not.toMatch(/streak|behind|make up for it/i);
    expect(isPrimary()).toBe(true);
  });
});

describe('a sign comes first', () => {
  const entries = [one(on(1, 3), { effort: 5, warningSign: true })];

  it('UI-42 a warning sign stands above the session, with what to do and the way to the cautions', async () => {
    await onDay(on(1, 5), { entries });
    const sign = screen.getByText('On Wed, 3 March 2027 you felt one of the stop signs.');
    expect(isAbove(sign, card())).toBe(true);
    const told = screen.getByText(/doctor has said yes; if you feel it now, call your local/);
    expect(isAbove(told, card())).toBe(true);
    await user.click(screen.getByRole('link', { name: cautions.title }));
    expect(here()).toBe('/cautions');
  });

  it('UI-42 nothing on the page then asks for a session', async () => {
    await onDay(on(2, 1), { entries });
    expect(within(card()).getByText(words.waits)).toBeDefined();
    expect(isPrimary()).toBe(false);
    expect(document.body.textContent).not.toMatch(/\d this week|still fit|Go on with week|Welcome/);
    expect(document.body.textContent).not.toContain(words.need.due);
  });

  it('UI-42 coming back after days away, the sign still stands in the way', async () => {
    await onDay(on(4, 1), { entries: [...firstWeek(), one(on(1, 6), { warningSign: true })] });
    expect(screen.getByRole('heading', { name: 'Stop and ask' })).toBeDefined();
    expect(document.body.textContent).not.toMatch(/Welcome back|Go on with week/);
  });

  it('UI-42 on the day of the sign a yes cannot be said, and the page says from when', async () => {
    await onDay(on(1, 3), { entries });
    expect(screen.queryByRole('button', { name: advice.asked })).toBeNull();
    expect(screen.getByText(advice.askedTomorrow)).toBeDefined();
  });

  it('UI-49 once a sign was asked about, the way is open again and the reader at its top', async () => {
    const app = await onDay(on(1, 5), { entries });
    await user.click(screen.getByRole('button', { name: advice.asked }));
    await waitFor(() => expect(isPrimary()).toBe(true));
    expect(followedLast(app)).toMatchObject({ decisions: [{ on: on(1, 5), why: 'asked' }] });
    expect(screen.queryByText(/one of the stop signs/)).toBeNull();
    expect(document.activeElement?.textContent).toBe(words.title);
  });

  it('UI-42 a niggle that made someone stop waits for its days of rest', async () => {
    const niggle = { place: 'knee', side: 'left', severity: 3 } as const;
    await onDay(on(1, 4), { entries: [one(on(1, 3), { niggle })] });
    const seen = screen.getByText(/a niggle, left knee, made you stop/);
    expect(isAbove(seen, card())).toBe(true);
    expect(screen.queryByRole('button', { name: advice.asked })).toBeNull();
    expect(isPrimary()).toBe(false);
  });
});

describe('a pause and the way back', () => {
  it('UI-43 a pause is taken with its reason and days; the session waits', async () => {
    const app = await onDay(on(2, 3), { entries: firstWeek() });
    await user.click(screen.getByText(words.pause));
    await user.click(screen.getByRole('radio', { name: words.pauseWhy.illness }));
    const since = screen.getByLabelText(words.pauseSince);
    await user.clear(since);
    await user.type(since, on(2, 1));
    await user.type(screen.getByLabelText(new RegExp(`^${words.pauseUntil}`)), on(2, 6));
    await user.click(screen.getByRole('button', { name: words.pauseBegin }));
    expect(followedLast(app)).toMatchObject({
      pauses: [{ from: on(2, 1), to: on(2, 6), why: 'illness' }],
    });
    expect(await screen.findByText(/^Getting well until Sat, 13 March 2027/)).toBeDefined();
    expect(screen.getByText(/never go out with a fever/)).toBeDefined();
    expect(within(card()).getByText(words.waits)).toBeDefined();
    expect(isPrimary()).toBe(false);
    expect(document.activeElement?.textContent).toBe(words.title);
  });

  it('UI-43 a pause without an end is one until one says so', async () => {
    const app = await onDay(on(2, 3), { entries: firstWeek() });
    await user.click(screen.getByText(words.pause));
    await user.click(screen.getByRole('button', { name: words.pauseBegin }));
    expect(followedLast(app)).toMatchObject({ pauses: [{ from: on(2, 3), why: 'holiday' }] });
    expect(followedLast(app)).not.toHaveProperty('pauses.0.to');
    expect(await screen.findByText('On holiday. The programme waits.')).toBeDefined();
  });

  it('UI-43 a pause that would end before today, or begin after it, is caught at its field', async () => {
    const app = await onDay(on(2, 3));
    await user.click(screen.getByText(words.pause));
    const until = screen.getByLabelText(new RegExp(`^${words.pauseUntil}`));
    await user.type(until, on(2, 1));
    await user.click(screen.getByRole('button', { name: words.pauseBegin }));
    expect(screen.getByText(words.pauseUntilWrong)).toBeDefined();
    expect(until.getAttribute('aria-invalid')).toBe('true');
    await waitFor(() => expect(document.activeElement).toBe(until));
    await user.clear(until);
    const since = screen.getByLabelText(words.pauseSince);
    await user.clear(since);
    await user.type(since, on(2, 5));
    await user.click(screen.getByRole('button', { name: words.pauseBegin }));
    expect(screen.getByText(words.pauseSinceWrong)).toBeDefined();
    expect(askedFor(app, 'follow')).toEqual([]);
  });

  it('UI-43 who says that they are back has the pause behind them, and is told where to go on', async () => {
    const app = await onDay(on(4, 1), {
      entries: firstWeek(),
      following: [followed({ pauses: [{ from: on(2, 1), why: 'holiday' }] })],
    });
    await user.click(screen.getByRole('button', { name: words.resume }));
    expect(followedLast(app)).toMatchObject({
      pauses: [{ from: on(2, 1), to: on(3, 7), why: 'holiday' }],
    });
    expect(await screen.findByText(/^Welcome back after the holiday: 16 days/)).toBeDefined();
    expect(screen.getAllByText(/is a gentle way in/)).toHaveLength(1);
    expect(screen.queryByRole('button', { name: words.resume })).toBeNull();
  });

  it('UI-43 days away without a pause are welcomed back the same way, and the week can be taken', async () => {
    const app = await onDay(on(3, 5), { entries: firstWeek() });
    expect(
      screen.getByText(/^Welcome back after a while: 13 days without a session/),
    ).toBeDefined();
    await user.click(screen.getByRole('button', { name: advice.comeBack(1) }));
    expect(followedLast(app)).toMatchObject({ decisions: [{ on: on(3, 5), why: 're-entry' }] });
  });
});

describe('advice', () => {
  const eased = [
    one(on(1, 1), { effort: 8 }, 1, 1),
    one(on(1, 3), { effort: 8 }, 1, 2),
    one(on(1, 5), { effort: 8 }, 1, 3),
  ];

  it('UI-44 it says why in two sentences and what would change it, and changes nothing by itself', async () => {
    const app = await onDay(on(1, 7), { entries: eased });
    const said = screen.getByRole('region', { name: 'Ease off for now' });
    expect(within(said).getByText(/felt 3 points or more harder than meant\.$/)).toBeDefined();
    expect(within(said).getByText(/^Week 1 in Dunlin would be gentler/)).toBeDefined();
    expect(within(said).getByText(advice.decide)).toBeDefined();
    expect(within(said).getByText(/would change this\.$/)).toBeDefined();
    expect(within(said).getByText(advice.notAdvice)).toBeDefined();
    expect(askedFor(app, 'follow')).toEqual([]);
    expect(askedFor(app, 'chooseGroup')).toEqual([]);
  });

  it('UI-44 taken, it is kept, and the other group is the person’s', async () => {
    const app = await onDay(on(1, 7), { entries: eased });
    await user.click(screen.getByRole('button', { name: advice.yes.ease }));
    await waitFor(() => expect(askedFor(app, 'chooseGroup')).toEqual([[DEMO.id, 'dunlin']]));
    expect(followedLast(app)).toMatchObject({
      programmeId: DEMO.id,
      decisions: [{ on: on(1, 7), week: 1, group: 'dunlin', why: 'ease' }],
    });
    expect(await screen.findByText(/^Group Dunlin/)).toBeDefined();
    expect(document.activeElement?.textContent).toBe(words.title);
  });

  it('UI-44 what was decided for a day to come is not proposed again, and can be taken back', async () => {
    const hard = [one(on(1, 1), { effort: 7 }), one(on(1, 3), { effort: 7 }, 1, 2)];
    const app = await onDay(on(1, 5), { entries: hard });
    await user.click(screen.getByRole('button', { name: advice.yes.repeat }));
    expect(followedLast(app)).toMatchObject({ decisions: [{ on: on(2, 1), week: 1 }] });
    expect(screen.queryByRole('button', { name: advice.yes.repeat })).toBeNull();
    await user.click(screen.getByRole('button', { name: advice.takeBack }));
    expect(followedLast(app)).toMatchObject({ decisions: [] });
    expect(screen.getByRole('button', { name: advice.yes.repeat })).toBeDefined();
  });

  it('UI-44 what was decided for a day to come is said, and the next session is that one', async () => {
    const decided = { on: on(2, 1), week: 1, group: 'curlew', why: 'repeat' } as const;
    await onDay(on(1, 7), {
      entries: firstWeek(),
      following: [followed({ decisions: [decided] })],
    });
    expect(screen.getByText('Decided: week 1 in Curlew from Mon, 8 March 2027.')).toBeDefined();
    expect(within(card()).getByRole('heading', { name: weeks.session(1, 1) })).toBeDefined();
  });

  it('UI-44 where all is as meant there is nothing to take', async () => {
    await onDay(on(2, 1), { entries: firstWeek() });
    expect(screen.getByRole('region', { name: 'Go on' })).toBeDefined();
    expect(screen.queryByRole('button', { name: advice.yes['go-on'] })).toBeNull();
    expect(screen.queryByText(advice.decide)).toBeNull();
  });
});

describe('find my group', () => {
  const answer = async (walk: number, run: number, wish: string, gently: string) => {
    const sets = screen.getAllByRole('group');
    const pick = (n: number, name: string) =>
      user.click(within(sets[n] as HTMLElement).getByRole('radio', { name }));
    await pick(0, walk === 0 ? 'Not yet' : `About ${walk} min`);
    await pick(1, run === 0 ? 'Not yet' : `About ${run} min`);
    await pick(2, wish);
    await pick(3, gently);
  };
  const open = async () => {
    const app = show(`${PAGE}/groups`);
    await user.click(await screen.findByRole('link', { name: groups.find }));
    expect(here()).toBe(`${PAGE}/find`);
    await screen.findByText(find.notYet);
    return app;
  };
  const found = () => screen.getByRole('heading', { level: 2, name: / would suit you$/ });

  it('UI-45 the answers lead to a group with the reason and what it asks, told to a reader too', async () => {
    const app = await open();
    await answer(20, 0, find.wishes.walk, find.gentlyNo);
    expect(found().textContent).toBe(find.answer('Wren'));
    const told = screen.getAllByRole('status').map((each) => each.textContent);
    expect(told).toContain(find.answer('Wren'));
    expect(screen.getByText(/It begins with brisk walks of up to/)).toBeDefined();
    await user.click(screen.getByRole('button', { name: find.take('Wren') }));
    expect(askedFor(app, 'chooseGroup')).toEqual([[DEMO.id, 'wren']]);
    expect(here()).toBe(PAGE);
  });

  it('UI-45 any other group can be taken instead', async () => {
    const app = await open();
    await answer(20, 0, find.wishes.walk, find.gentlyNo);
    for (const { name } of DEMO.groups)
      expect(screen.getByRole('button', { name: find.take(name) })).toBeDefined();
    await user.click(screen.getByRole('button', { name: find.take('Swift') }));
    expect(askedFor(app, 'chooseGroup')).toEqual([[DEMO.id, 'swift']]);
  });

  it('UI-45 a changed answer changes the group at once', async () => {
    await open();
    await answer(20, 0, find.wishes.walk, find.gentlyNo);
    const before = found().textContent;
    await answer(30, 20, find.wishes.run, find.gentlyNo);
    expect(found().textContent).not.toBe(before);
  });

  it('UI-45 who should start gently is told to ask first, with the way to the cautions', async () => {
    await open();
    await user.click(screen.getByRole('radio', { name: find.gentlyYes }));
    expect(screen.getByText(find.gentlyCare)).toBeDefined();
    expect(screen.getByRole('link', { name: cautions.title }).getAttribute('href')).toBe(
      '#/cautions',
    );
  });

  it('UI-45 nothing of the answers is kept', async () => {
    const app = await open();
    await answer(20, 0, find.wishes.walk, find.gentlyYes);
    expect(app.asked).toEqual([]);
    expect(JSON.stringify({ ...localStorage, ...sessionStorage })).toBe('{}');
  });
});

describe('a start of one’s own, and weeks', () => {
  it('UI-46 who comes late is told where the group is and can begin at week 1 now', async () => {
    const app = await onDay(on(3, 4));
    expect(
      screen.getByText(/^The group is in week 3\. You can begin at week 1 today\./),
    ).toBeDefined();
    await user.click(screen.getByRole('button', { name: words.startNow }));
    expect(followedLast(app)).toMatchObject({ startedOn: on(3, 1) });
    await waitFor(() => expect(screen.queryByRole('button', { name: words.startNow })).toBeNull());
    expect(within(card()).getByRole('heading', { name: weeks.session(1, 1) })).toBeDefined();
  });

  it('UI-46 before the first week the days are counted, and one can begin at once', async () => {
    const app = await onDay('2027-02-24');
    expect(screen.getByText('It starts in 5 days, on Mon, 1 March 2027.')).toBeDefined();
    expect(isPrimary()).toBe(false);
    await user.click(screen.getByRole('button', { name: words.startNow }));
    // The Monday of the week in which it is begun.
    expect(followedLast(app)).toMatchObject({ startedOn: '2027-02-22' });
    await waitFor(() => expect(isPrimary()).toBe(true));
  });

  it('UI-47 each week says how it stands, on its days', async () => {
    await onDay(on(3, 2), { entries: [...firstWeek(), one(on(3, 1), {}, 3)] });
    const rows = [...document.querySelectorAll('.week')].map((row) => row.textContent ?? '');
    expect(rows).toHaveLength(6);
    expect(rows[0]).toContain(`${words.weekNames.done} 1 Mar to 7 Mar`);
    expect(rows[1]).toContain(`${words.weekNames.missed} 8 Mar to 14 Mar`);
    expect(rows[2]).toContain(`${words.weekNames.now} 15 Mar to 21 Mar`);
    expect(rows[3]).toContain(`${words.weekNames.coming} 22 Mar to 28 Mar`);
  });

  it('UI-48 today is the day where the phone is', async () => {
    // Sunday evening in UTC, Monday already at UTC+9.
    await onDay(on(1, 7), {
      now: utc(on(1, 7), '16:30'),
      zone: { offsetMinutes: 540, zone: 'Asia/Tokyo' },
      entries: firstWeek(),
    });
    expect(within(card()).getByText(words.need.due)).toBeDefined();
    expect(within(card()).getByRole('heading', { name: weeks.session(2, 1) })).toBeDefined();
  });

  it('UI-48 a page that stayed open past midnight shows the new day when it is looked at', async () => {
    const options = { now: utc(on(1, 1), '22:00'), entries: [one(on(1, 1))] };
    await onDay(on(1, 1), options);
    expect(screen.getByText(/^Done for today/)).toBeDefined();
    options.now = utc(on(1, 3), '07:00');
    act(() => void document.dispatchEvent(new Event('visibilitychange')));
    expect(screen.queryByText(/^Done for today/)).toBeNull();
    expect(isPrimary()).toBe(true);
  });
});

describe('the page of a session', () => {
  const choice = { programmeId: DEMO.id, groupId: 'curlew', week: 1, session: 2 };
  const open = (entries: readonly LogEntry[]) =>
    show(`${PAGE}/1/2`, {
      ...ON_THE_DAY,
      now: utc(on(1, 3)),
      entries: [...entries],
      settings: { cautionsReadOn: on(1, 1), pocketCheckSkipped: true },
      view: viewAt(choice, 0, { state: 'ready' }),
    });
  const isAsked = async () =>
    (await screen.findByRole('button', { name: before.start })).classList.contains('primary');
  const alarm = () => screen.queryByRole('region', { name: 'Stop and ask' });

  it('NOW-13 a warning sign is said above the session too, with what follows from it', async () => {
    open([one(on(1, 1), { effort: 5, warningSign: true })]);
    const title = await screen.findByRole('heading', { name: 'Stop and ask' });
    expect(within(alarm() as HTMLElement).getByText(/until a doctor has said yes/)).toBeDefined();
    expect(isAbove(title, screen.getByText(before.coming))).toBe(true);
    expect(await isAsked()).toBe(false);
  });

  it('NOW-13 where nothing is in the way, nothing of it is said', async () => {
    open([one(on(1, 1), { effort: 5 })]);
    await screen.findByText(before.coming);
    expect(alarm()).toBeNull();
    expect(await isAsked()).toBe(true);
  });
});
