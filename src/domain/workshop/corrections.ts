import { parsePlan } from '../programme/parse.ts';
import type { PlanCode, PlanProblem } from '../programme/problem.ts';

/** A way to put a mistake right. */
export interface Correction {
  /** What is written in place of the mistake; empty: it is taken away. */
  readonly write: string;
  /** The whole text with it. */
  readonly text: string;
  /** Offset just behind what is written. */
  readonly end: number;
  /** How long it makes what it stands for, where two readings differ in that. */
  readonly total?: string;
}

interface Attempt {
  readonly write: string;
  readonly from: number;
  readonly to: number;
  readonly total?: string;
}

type Attempts = (problem: PlanProblem, text: string) => readonly Attempt[];

const of = ({ detail }: PlanProblem, key: string): string => String(detail?.[key] ?? '');

/** Something in place of what was found. */
const instead = (problem: PlanProblem, write: string, total?: string): Attempt => {
  const { offset, length } = problem.place;
  const attempt = { write, from: offset, to: offset + length };
  return total === undefined ? attempt : { ...attempt, total };
};

/** Nothing, where the problem suggests nothing. */
const detail = (problem: PlanProblem, key: string): readonly Attempt[] => {
  const write = of(problem, key);
  return write === '' ? [] : [instead(problem, write)];
};
const suggested: Attempts = (problem) => detail(problem, 'write');
const near: Attempts = (problem) => detail(problem, 'near');
const away: Attempts = (problem) => [instead(problem, '')];
const semicolon: Attempts = (problem) => [instead(problem, ';')];
/** An effort is found with its @. */
const effort: Attempts = (problem) => [instead(problem, `@ ${of(problem, 'write')}`)];

/** Codes whose mistake has an answer that nobody has to think about. */
const ATTEMPTS: Readonly<Partial<Record<PlanCode, Attempts>>> = {
  'bad-character': away,
  'bad-separator': semicolon,
  bullet: away,
  'clock-seconds': suggested,
  decimal: (problem, text) =>
    problem.found.startsWith('@') ? effort(problem, text) : suggested(problem, text),
  'duration-order': suggested,
  'duration-over': suggested,
  'effort-range': effort,
  'effort-twice': away,
  'effort-unit': effort,
  'label-colon': (problem) => [instead(problem, `${problem.found}:`)],
  'label-unknown': near,
  'missing-separator': (problem, text) => [
    {
      ...instead(problem, `; ${problem.found}`),
      from: text.slice(0, problem.place.offset).trimEnd().length,
    },
  ],
  'missing-times': (problem) => [instead(problem, `${of(problem, 'write')} x`)],
  'missing-unit': (problem) => [
    ...suggested(problem, ''),
    // `1 min 30`: the suggestion says the whole length, and only its end is missing.
    instead(problem, of(problem, 'write').split(' ').slice(-2).join(' ')),
    ...detail(problem, 'other'),
  ],
  'needs-brackets': (problem) => [
    instead(problem, of(problem, 'together'), of(problem, 'togetherTotal')),
    instead(problem, of(problem, 'apart'), of(problem, 'apartTotal')),
  ],
  'needs-brackets-count': suggested,
  'note-empty': away,
  'note-open': (problem) => [instead(problem, `${problem.found}"`)],
  'note-twice': away,
  'nothing-between': away,
  'number-word': suggested,
  'slash-outside': semicolon,
  'stray-close': away,
  'unclosed-bracket': (_, text) => [{ write: ')', from: text.trimEnd().length, to: text.length }],
  'unit-m': suggested,
  'unknown-activity': near,
  'unknown-unit': suggested,
};

function correctionOf(text: string, attempt: Attempt, problem: PlanProblem): Correction[] {
  const { write, from, to, total } = attempt;
  const corrected = text.slice(0, from) + write + text.slice(to);
  const end = from + write.length;
  const read = parsePlan(corrected);
  // Of several mistakes the first is told: the next one must lie behind this one.
  const isHelp = read.ok || (read.error.place.offset >= end && corrected !== text);
  if (!isHelp || (write === '' && problem.place.length === 0)) return [];
  return [{ write, text: corrected, end, ...(total === undefined ? {} : { total }) }];
}

/**
 * Ways to put the first mistake of a text right, each tried: after it the text can be read, or its
 * next mistake lies further on. None where only the writer knows what was meant.
 */
export function correctionsOf(text: string, problem: PlanProblem): readonly Correction[] {
  const attempts = ATTEMPTS[problem.code]?.(problem, text) ?? [];
  const corrections = attempts.flatMap((attempt) => correctionOf(text, attempt, problem));
  return corrections.filter(
    (one, n) => corrections.findIndex((other) => other.text === one.text) === n,
  );
}
