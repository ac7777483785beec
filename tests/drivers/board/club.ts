/** A large club that is made up without chance: the same people every time. */
import { DEMO_PROGRAMME_TEXT } from '../../../src/app/demo/demo.ts';
import type { Heard } from '../../../src/domain/board/heard.ts';
import type { Programme } from '../../../src/domain/programme/programme.ts';
import { readProgramme } from '../../../src/domain/programme/read.ts';
import { member, type Told } from '../../domain/board/members.ts';

interface ProgrammeFile {
  readonly goal: object;
  readonly weeks: readonly unknown[];
}

/** Twelve weeks of the club's programme: six, twice over. */
function twelve(): Programme {
  const file = JSON.parse(DEMO_PROGRAMME_TEXT) as ProgrammeFile;
  const { goal, weeks } = file;
  const text = JSON.stringify({
    ...file,
    goal: { ...goal, date: '2027-05-23' },
    weeks: [...weeks, ...weeks],
  });
  const read = readProgramme(text);
  if (!read.ok) throw new Error('twelve weeks are no programme');
  return read.value;
}

export const TWELVE = twelve();

const DAY_MS = 86_400_000;
const START = Date.parse('2027-03-01');
/** The date of a weekday (from 1) of a week. */
export const dateOf = (week: number, weekday: number): string =>
  new Date(START + ((week - 1) * 7 + weekday - 1) * DAY_MS).toISOString().slice(0, 10);

/** Without chance: the same people every time, of all groups, with up to three sessions a week. */
export function people(count: number): readonly Heard[] {
  const groups = TWELVE.groups.map(({ id }) => id);
  return Array.from({ length: count }, (_, n) => {
    const group = groups[n % groups.length] ?? 'wren';
    const sessions = Array.from({ length: 36 }, (_, k): Told => {
      const [week, session] = [1 + Math.floor(k / 3), 1 + (k % 3)];
      const effort = (n * 7 + k * 3) % 11;
      return {
        id: `p${n}s${k}`,
        week,
        session,
        group,
        date: dateOf(week, 2 * session),
        effort,
        done: (n + k) % 9 === 0 ? 60 : 100,
        ...((n + k) % 17 === 0 && { niggle: { place: 'knee' as const, severity: 2 as const } }),
        ...((n * 36 + k) % 499 === 0 && { sign: true as const }),
      };
    }).filter((_, k) => (n + k) % 5 !== 0);
    return member(`person${n}`.padEnd(24, 'x'), {
      name: `Member ${n}`,
      group,
      sessions,
      programme: TWELVE,
    });
  });
}
