import type { Detail } from '../programme/problem.ts';
import type { Finding, FindingCode } from './finding.ts';
import { rule } from './rules.ts';

/** What would lead to other advice. `src/copy/advice.ts` has a sentence for each. */
export type Mind =
  | 'doctor'
  | 'looked-at'
  | 'days-without'
  | 'rested'
  | 'pause-ends'
  | 'as-meant'
  | 'to-the-end'
  | 'week-done'
  | 'harder-twice'
  | 'easier-often'
  | 'rate-more'
  | 'again-one'
  | 'too-hard-there';

/** What would change an advice, with its numbers. */
export interface Change {
  readonly code: Mind;
  readonly detail: Detail;
}

const AGREE: Detail = { times: rule('agree'), of: rule('latest'), points: rule('harder') };

/** Changes of mind that take as many sessions as any judgement does. */
const AGREEING: ReadonlySet<Mind> = new Set([
  'harder-twice',
  'easier-often',
  'as-meant',
  'to-the-end',
  'too-hard-there',
]);

/** What would change each answer. */
const CHANGES: Readonly<Record<FindingCode, readonly Mind[]>> = {
  'warning-sign': ['doctor'],
  'niggle-back': ['looked-at'],
  'niggle-twice': ['rested'],
  'niggle-stopped': ['rested'],
  'hard-days': ['rested'],
  paused: ['pause-ends'],
  'niggle-eased': ['days-without'],
  'niggle-moved': ['days-without'],
  'much-harder': ['as-meant'],
  'still-harder': ['as-meant'],
  'still-cut-short': ['to-the-end'],
  harder: ['as-meant'],
  'cut-short': ['to-the-end'],
  away: ['again-one'],
  'thin-week': ['week-done'],
  through: [],
  starting: ['rate-more'],
  'one-harder': ['harder-twice'],
  'easier-but': ['harder-twice'],
  'as-meant': ['harder-twice', 'easier-often'],
  'few-rated': ['rate-more'],
  easier: ['too-hard-there'],
};

/** What would change advice that something seen has led to, with its numbers. */
export const changesOf = ({ code, detail }: Finding): readonly Change[] =>
  CHANGES[code].map((mind) => ({ code: mind, detail: { ...AGREE, ...detail, ...needs(mind) } }));

/** The numbers of a change of mind that are not those of what was seen. */
function needs(mind: Mind): Detail {
  if (AGREEING.has(mind)) return AGREE;
  return mind === 'days-without' ? { days: rule('niggleAgain') } : {};
}
