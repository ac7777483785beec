/** What is wrong with a programme file: one sentence or two. */
import type { ProgrammeCode, ProgrammeProblem } from '../domain/programme/problem.ts';
import { planPlace, planProblem } from './plan.ts';
import { capital } from './words.ts';

const of = (problem: ProgrammeProblem, key: string): string => String(problem.detail?.[key] ?? '');

const EXPECTED: Readonly<Record<string, string>> = {
  text: 'text in quotes',
  number: 'a number',
  list: 'a list in [ ]',
  object: 'entries in { }',
  plan: 'a plan as text in quotes, or a list of them',
};

const SENTENCES: Readonly<Record<ProgrammeCode, (problem: ProgrammeProblem) => string>> = {
  amount: (p) => `This needs a number from ${of(p, 'min')} to ${of(p, 'max')}.`,
  'bad-character': () => 'This holds a character that cannot be seen. Take it out.',
  date: () => 'This is not a day of the calendar. Write it as 2027-03-01.',
  'date-order': (p) => `The event is before the programme starts (${of(p, 'start')}).`,
  'file-empty': () => 'The file is empty.',
  'file-json': () => 'The file is damaged or is something else: it cannot be read as JSON.',
  'file-large': (p) => `The file is too large. ${of(p, 'limitKiB')} KiB is the most.`,
  'file-other': () => 'This is not a Towpath programme. Its format would be towpath-programme/1.',
  'file-version': () =>
    'This programme was made by a newer Towpath. Update this one, then open the file again.',
  'group-twice': (p) => `Another group has the id ${of(p, 'id')}. Each needs its own.`,
  'group-unknown': (p) => `No group has this id. The groups are ${of(p, 'groups')}.`,
  id: () => 'An id is small letters, digits and hyphens, up to 64, such as heron-loop.',
  key: () => 'This is not a key that Towpath wrote.',
  language: () => 'This is not a language tag. Write it as en or en-GB.',
  list: (p) => `This list needs ${of(p, 'min')} to ${of(p, 'max')} entries.`,
  missing: () => 'This is missing.',
  monday: () => 'The start is not a Monday. Weeks begin on Monday.',
  number: (p) => `This needs a whole number from ${of(p, 'min')} to ${of(p, 'max')}.`,
  plan: ({ plan }) => (plan ? `${capital(planPlace(plan))}: ${planProblem(plan)}` : ''),
  'sessions-missing': (p) => `The group ${of(p, 'group')} has no session in this week.`,
  'text-empty': () => 'This text is empty.',
  'text-long': (p) => `This text is too long. ${of(p, 'limit')} characters is the most.`,
  'times-order': (p) =>
    `The most times a week (${of(p, 'max')}) is under the least (${of(p, 'min')}).`,
  together: (p) => `The week has no such session. ${of(p, 'max')} is the most.`,
  type: (p) => `This needs ${EXPECTED[of(p, 'expected')] ?? 'another kind of value'}.`,
};

/** What is wrong, without the path; for a plan, with the place in it. */
export const programmeSentence = (problem: ProgrammeProblem): string =>
  SENTENCES[problem.code](problem);

/** The path in the file, then what is wrong there. */
export function programmeProblem(problem: ProgrammeProblem): string {
  const sentence = programmeSentence(problem);
  return problem.path === '' ? sentence : `${problem.path}: ${sentence}`;
}
