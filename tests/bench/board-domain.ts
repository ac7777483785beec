/** The board's rules by themselves: all people at once, one who told anew, and what is suggested. */
import { boardOf } from '../../src/domain/board/board-of.ts';
import { suggestionsFor } from '../../src/domain/board/suggest.ts';
import { wordsDue } from '../../src/domain/board/words-due.ts';
import { boardInput } from '../domain/board/members.ts';
import { dateOf, people, TWELVE } from '../drivers/board/club.ts';
import { median, type Table } from './table.ts';

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
