/** The board's rules by themselves: all people at once, one who told anew, and what is suggested. */
import { boardOf } from '../../src/domain/board/board-of.ts';
import type { Heard } from '../../src/domain/board/heard.ts';
import { suggestionsFor } from '../../src/domain/board/suggest.ts';
import { wordsDue } from '../../src/domain/board/words-due.ts';
import type { Programme } from '../../src/domain/programme/programme.ts';
import { boardInput, HERON, member, type Told } from '../domain/board/members.ts';
import { median, type Table } from './table.ts';

/** Twelve weeks of the club's programme: six, twice over. */
const TWELVE: Programme = {
  ...HERON,
  goal: { ...HERON.goal, date: '2027-05-23' },
  weeks: [...HERON.weeks, ...HERON.weeks],
};

const DAY_MS = 86_400_000;
const START = Date.parse('2027-03-01');
const dateOf = (week: number, weekday: number): string =>
  new Date(START + ((week - 1) * 7 + weekday - 1) * DAY_MS).toISOString().slice(0, 10);

/** Without chance: the same people every time, of all groups, with up to three sessions a week. */
function people(count: number): readonly Heard[] {
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

const timed = (job: () => unknown): number => {
  const from = performance.now();
  job();
  return performance.now() - from;
};

const ms = (times: readonly number[]): string => `${median(times).toFixed(1)} ms`;

/** Each turn with people of its own, so that nothing is known from the turn before. */
function row(count: number, turns: number): readonly string[] {
  const all = Array.from({ length: turns }, () => {
    const input = boardInput(people(count), { programme: TWELVE, today: dateOf(11, 7) });
    const whole = timed(() => boardOf(input));
    const due = timed(() => wordsDue(input));
    const suggested = timed(() => suggestionsFor(input));
    const [first, ...rest] = input.heard;
    const later = { ...input, heard: first === undefined ? rest : [{ ...first }, ...rest] };
    return { whole, due, suggested, one: timed(() => boardOf(later)) };
  });
  return [
    String(count),
    ms(all.map(({ whole }) => whole)),
    ms(all.map(({ one }) => one)),
    ms(all.map(({ due }) => due)),
    ms(all.map(({ suggested }) => suggested)),
  ];
}

/** What the rules of the board take, and how it grows. */
export const summarising = (): Table => ({
  title: 'The leader’s board, its rules',
  how: 'People over 12 weeks with about 29 sessions each, half of them off their target; medians, rules only.',
  head: ['people', 'whole board', 'after one answer more', 'who needs a word', 'suggestions'],
  rows: [row(50, 15), row(500, 9), row(5000, 3)],
});
