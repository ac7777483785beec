/** The board's rules by themselves: all people at once, one who told anew, and what is suggested. */
import { boardOf } from '../../src/domain/board/board-of.ts';
import type { Heard } from '../../src/domain/board/heard.ts';
import { suggestionsFor } from '../../src/domain/board/suggest.ts';
import { wordsDue } from '../../src/domain/board/words-due.ts';
import type { Programme } from '../../src/domain/programme/programme.ts';
import { boardInput, HERON, member, type Told } from '../domain/board/members.ts';

/** Twelve weeks of the club's programme: six, twice over. */
export const TWELVE: Programme = {
  ...HERON,
  goal: { ...HERON.goal, date: '2027-05-23' },
  weeks: [...HERON.weeks, ...HERON.weeks],
};

const DAY_MS = 86_400_000;
const START = Date.parse('2027-03-01');
const dateOf = (week: number, weekday: number): string =>
  new Date(START + ((week - 1) * 7 + weekday - 1) * DAY_MS).toISOString().slice(0, 10);

/** Without chance: the same people every time, of all groups, with up to three sessions a week. */
export function people(count: number): readonly Heard[] {
  const groups = HERON.groups.map(({ id }) => id);
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

export interface BoardTimes {
  readonly people: number;
  /** Milliseconds: everything anew, one person anew, who is due, what is suggested. */
  readonly whole: number;
  readonly one: number;
  readonly due: number;
  readonly suggested: number;
}

const timed = (job: () => unknown): number => {
  const from = performance.now();
  job();
  return performance.now() - from;
};

/** Medians over some runs, each with objects of its own, so that nothing is known from before. */
export function boardTimes(count: number, runs = 7): BoardTimes {
  const middle = (list: readonly number[]): number =>
    [...list].sort((a, b) => a - b)[Math.floor(list.length / 2)] ?? 0;
  const all = Array.from({ length: runs }, () => {
    const input = boardInput(people(count), { programme: TWELVE, today: dateOf(11, 7) });
    const whole = timed(() => boardOf(input));
    const due = timed(() => wordsDue(input));
    const suggested = timed(() => suggestionsFor(input));
    const [first, ...rest] = input.heard;
    const later = { ...input, heard: first === undefined ? rest : [{ ...first }, ...rest] };
    return { whole, due, suggested, one: timed(() => boardOf(later)) };
  });
  return {
    people: count,
    whole: middle(all.map(({ whole }) => whole)),
    one: middle(all.map(({ one }) => one)),
    due: middle(all.map(({ due }) => due)),
    suggested: middle(all.map(({ suggested }) => suggested)),
  };
}
