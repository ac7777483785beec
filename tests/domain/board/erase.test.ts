import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { goesOn, isDue } from '../../../src/domain/board/erase.ts';
import { withForgotten } from '../../../src/domain/board/forget.ts';
import {
  described,
  marked,
  nobody,
  unsaid,
  withExpected,
  withKeep,
} from '../../../src/domain/board/written.ts';
import type { Programme } from '../../../src/domain/programme/programme.ts';
import { readProgramme } from '../../../src/domain/programme/read.ts';
import { marshProgramme } from '../../drivers/exchange/programmes.ts';
import { DATE, days, heards, PROGRAMME, SUNDAY, setups } from './records.ts';

const DAY_MS = 86_400_000;
const NONE = { heard: [], days: [] };

function programme(change: (file: Record<string, unknown>) => object): Programme {
  const read = readProgramme(JSON.stringify(change({ ...marshProgramme(4) })));
  if (!read.ok) throw new Error('no programme');
  return read.value;
}

const dated = programme((file) => ({
  ...file,
  startDate: '2027-03-01',
  goal: { name: 'Heron Loop', distanceM: 5000, date: '2027-04-11' },
}));
const weeks = programme((file) => ({
  ...file,
  startDate: '2027-03-01',
  goal: { name: 'Heron Loop', distanceM: 5000 },
}));
const undated = programme(({ startDate: _, ...file }) => ({
  ...file,
  goal: { name: 'Heron Loop', distanceM: 5000 },
}));
const HEARD = {
  ...nobody(PROGRAMME, '7f'.repeat(16)),
  told: { at: SUNDAY, group: 'wren', revision: 1, leftOut: 0 },
};

describe('when what was heard goes', () => {
  // 11 April and 90 days is 10 July: 19 days left in April, 31, 30 and 10.
  it('KEEP-3 is 90 days after the event', () => {
    expect(goesOn(dated, { ...NONE, heard: [HEARD] })).toBe('2027-07-10');
  });

  it('KEEP-3 is 90 days after the last Sunday where the event has no date', () => {
    const last = Date.UTC(2027, 2, 1) + (7 * weeks.weeks.length - 1) * DAY_MS;
    const expected = new Date(last + 90 * DAY_MS).toISOString().slice(0, 10);
    expect(goesOn(weeks, { ...NONE, heard: [HEARD] })).toBe(expected);
  });

  it('KEEP-3 is 90 days after the latest thing heard where nothing has a date, or the programme is not here', () => {
    // 7 March and 90 days is 5 June: 24 left in March, 30, 31 and 5.
    expect(goesOn(undated, { ...NONE, heard: [HEARD] })).toBe('2027-06-05');
    expect(goesOn(undefined, { ...NONE, heard: [HEARD] })).toBe('2027-06-05');
  });

  it('KEEP-3 is never within 14 days of what was told, ticked or written last, whenever the event was', () => {
    // The event was on 11 April 2027, and its 90 days were over on 10 July.
    const at = Date.UTC(2027, 7, 20, 9);
    const told = { ...HEARD, told: { ...HEARD.told, at } };
    // 20 August and 14 days is 3 September: 11 left in August, and 3.
    expect(goesOn(dated, { ...NONE, heard: [told] })).toBe('2027-09-03');
    const written = described(HEARD, { name: 'Rosa' }, at);
    expect(goesOn(dated, { ...NONE, heard: [written] })).toBe('2027-09-03');
    const day = { date: '2027-08-20', week: 1, session: 1 };
    const ticked = marked(undefined, PROGRAMME, day, { person: 'hand.1', present: true, now: at });
    expect(goesOn(dated, { ...NONE, days: [ticked] })).toBe('2027-09-03');
    const counted = withExpected(unsaid(PROGRAMME), 'wren', 9, at);
    expect(goesOn(dated, { ...NONE, setup: counted })).toBe('2027-09-03');
  });

  it('KEEP-3 is not put off by letting them go or by forgetting somebody', () => {
    const at = Date.UTC(2027, 7, 20, 9);
    const released = withKeep(withKeep(unsaid(PROGRAMME), true, SUNDAY), false, at);
    expect(goesOn(dated, { ...NONE, heard: [HEARD], setup: released })).toBe('2027-07-10');
    const forgot = withForgotten(undefined, PROGRAMME, [{ digest: 'a'.repeat(43), at }]);
    expect(goesOn(dated, { ...NONE, heard: [HEARD], setup: forgot })).toBe('2027-07-10');
    // Without dates it is all that the 90 days are counted from: 11 left in August, 30, 31 and 18.
    expect(goesOn(undated, { ...NONE, setup: forgot })).toBe('2027-11-18');
  });

  it('KEEP-3 never comes while the leader keeps them, and not where there is nothing', () => {
    const keep = withKeep(unsaid(PROGRAMME), true, SUNDAY);
    expect(goesOn(dated, { ...NONE, heard: [HEARD], setup: keep })).toBeUndefined();
    const again = withKeep(keep, false, SUNDAY);
    expect(goesOn(dated, { ...NONE, heard: [HEARD], setup: again })).toBe('2027-07-10');
    expect(goesOn(dated, NONE)).toBeUndefined();
  });

  it('KEEP-3 is due on its day and no day before', () => {
    expect(isDue('2027-07-10', '2027-07-09')).toBe(false);
    expect(isDue('2027-07-10', '2027-07-10')).toBe(true);
    expect(isDue(undefined, '2999-01-01')).toBe(false);
  });

  it('KEEP-3 is never within 90 days of anything that was said, where nothing has a date', () => {
    fc.assert(
      fc.property(
        fc.array(heards),
        fc.option(days, { nil: undefined }),
        setups,
        (heard, day, setup) => {
          const date = goesOn(undated, { heard, days: day ? [day] : [], setup });
          if (setup.keep?.on === true) return date === undefined;
          const moments = [
            ...heard.flatMap(({ told, known, entries }) => [
              told?.at ?? 0,
              known?.at ?? 0,
              ...entries.map(({ toldAt }) => toldAt),
            ]),
            ...Object.values(day?.marks ?? {}).map(({ at }) => at),
          ];
          const latest = Math.max(0, ...moments);
          return latest === 0 || Date.parse(`${date}T23:59:59Z`) >= latest + 90 * DAY_MS;
        },
      ),
    );
    expect(DATE < (goesOn(undated, { ...NONE, heard: [HEARD] }) ?? '')).toBe(true);
  });
});
