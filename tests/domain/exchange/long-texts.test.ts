import { describe, expect, it } from 'vitest';
import { createAnswerFinder, type FoundAnswer } from '../../../src/domain/exchange/find-answers.ts';

function* answersIn(text: string): Generator<FoundAnswer> {
  const finder = createAnswerFinder();
  yield* finder.push(text);
  yield* finder.end();
  yield* finder.finish();
}

const timed = (text: string): number => {
  const begun = performance.now();
  for (const _ of answersIn(text));
  return performance.now() - begun;
};

/** Texts that are nothing but trouble for who reads them twice. */
const HOSTILE: Readonly<Record<string, (length: number) => string>> = {
  'beginnings of links': (length) => `/answer/${'A'.repeat(60)} `.repeat(length / 70),
  'beginnings of codes, a line each': (length) => `AQI${'A'.repeat(50)}\n`.repeat(length / 54),
  'beginnings before one endless line': (length) =>
    `${`AQI${'A'.repeat(41)}\n`.repeat(5000)}${'A'.repeat(200_000)}/\n`.repeat(length / 425_000),
  'one line of nothing but code': (length) => `/answer/${'A'.repeat(length)}`,
  'lines of one letter': (length) => `/answer/AQ${'\nA'.repeat(length / 2)}`,
  'full stops': (length) => `/answer/${'.'.repeat(length)}A`,
  'white space': (length) => `/answer/AQIA${' '.repeat(length)}`,
  'doors and nothing behind them': (length) => '/answer/'.repeat(length / 8),
  'marks without width': (length) => `/answer/AQI${'\u200b'.repeat(length)}A`,
  'parts that never meet': (length) =>
    Array.from(
      { length: length / 1000 },
      (_, n) => `/answer/1.2.${n.toString(36).padStart(6, '0')}.${'A'.repeat(980)}`,
    ).join(' '),
};

describe('texts that are meant to take long', () => {
  it.each(Object.entries(HOSTILE))('IN-11 %s take time by their length', (_, make) => {
    timed(make(250_000));
    const [one, four] = [timed(make(1_000_000)), timed(make(4_000_000))];
    // Four times the text in four times the time, with room for a busy machine; a square would be 16.
    expect(four).toBeLessThan(9 * Math.max(one, 60));
  });
});
