import { describe, expect, it } from 'vitest';
import {
  APART,
  choiceAgain,
  firstChoice,
  leadPlanOf,
  planIn,
  sessionCount,
  spreadOf,
  staggered,
  weekOn,
} from '../../../src/domain/lead/choose.ts';
import { endOf } from '../../../src/domain/lead/moments.ts';
import { ledWith, marsh, SATURDAY } from '../../drivers/led.ts';

const choice = firstChoice(marsh, SATURDAY);

describe('which session, and who is here', () => {
  it('DAY-1 begins at the week of today, before the first at the first, after the last at the last', () => {
    // Weeks from Monday 1 March 2027: days counted by hand.
    const weeks = ['2027-02-20', '2027-03-01', '2027-03-07', '2027-03-08', '2027-05-01'];
    expect(weeks.map((day) => weekOn(marsh, day))).toEqual([1, 1, 1, 2, 2]);
    const { startDate: _, ...undated } = marsh;
    expect(weekOn(undated, SATURDAY)).toBe(1);
  });

  it('DAY-1 begins at the session done together, else the first, with all groups in words', () => {
    expect(firstChoice(marsh, SATURDAY)).toMatchObject({ week: 1, session: 1, tick: true });
    expect(firstChoice(marsh, '2027-03-09')).toMatchObject({ week: 2, session: 2 });
    expect(choice.groups).toEqual(
      ['wren', 'dunlin', 'swift'].map((id) => ({
        id,
        here: true,
        minutesLater: 0,
        voice: 'words',
      })),
    );
  });

  it('DAY-1 one plan stands for all sessions of its week', () => {
    expect(sessionCount(marsh, 1)).toBe(3);
    expect(sessionCount(marsh, 2)).toBe(2);
    expect(planIn(marsh, { week: 2, session: 2 }, 'wren')?.text).toBe('4 min walk');
    expect(planIn(marsh, { week: 2, session: 2 }, 'swift')?.text).toBe('5 min run');
    expect(planIn(marsh, { week: 2, session: 3 }, 'wren')).toBeUndefined();
    expect(planIn(marsh, { week: 9, session: 1 }, 'wren')).toBeUndefined();
  });

  it('DAY-1 how it was led last is taken over for the session of today, new groups with the others', () => {
    const last = {
      ...staggered(choice, 2),
      tick: false,
      groups: staggered(choice, 2).groups.slice(0, 2),
    };
    const again = choiceAgain(marsh, '2027-03-09', last);
    expect(again).toMatchObject({ week: 2, session: 2, tick: false });
    expect(again.groups.map(({ minutesLater }) => minutesLater)).toEqual([0, 2, 0]);
  });
});

describe('from one start', () => {
  it('DAY-2 those who are here start one after the other, in order and no later than 30 minutes', () => {
    const without = {
      ...choice,
      groups: choice.groups.map((each) => ({ ...each, here: each.id !== 'dunlin' })),
    };
    expect(staggered(without, 2).groups.map(({ minutesLater }) => minutesLater)).toEqual([0, 0, 2]);
    expect(staggered(choice, 20).groups.map(({ minutesLater }) => minutesLater)).toEqual([
      0, 20, 30,
    ]);
  });

  it('DAY-2 numbers are the programme’s, and the first to start is the start', () => {
    const plan = leadPlanOf(marsh, {
      ...choice,
      groups: [
        { id: 'wren', here: false, minutesLater: 0, voice: 'words' },
        { id: 'dunlin', here: true, minutesLater: 3, voice: 'tone' },
        { id: 'swift', here: true, minutesLater: 5, voice: 'silent' },
      ],
    });
    expect(plan?.groups.map(({ number, startsAt, voice }) => [number, startsAt, voice])).toEqual([
      [2, 0, 'tone'],
      [3, 120_000, 'silent'],
    ]);
  });

  it('DAY-2 a group without a plan that can be read is not led; without any group nothing is', () => {
    const third = leadPlanOf(marsh, { ...choice, week: 2, session: 3 });
    expect(third?.groups.map(({ id }) => id)).toEqual(['swift']);
    const nobody = choice.groups.map((each) => ({ ...each, here: false }));
    expect(leadPlanOf(marsh, { ...choice, groups: nobody })).toBeUndefined();
  });

  it('DAY-3 how far apart groups are done is counted from their own starts', () => {
    expect(spreadOf(ledWith([0, 0, 0]).plan)).toBe(0);
    const { plan } = ledWith([0, 2, 4]);
    // Three minutes each, worked by hand.
    expect(plan.groups.map(endOf)).toEqual([180_000, 300_000, 420_000]);
    expect(spreadOf(plan)).toBe(240_000);
    expect(APART).toBe(30_000);
  });
});
