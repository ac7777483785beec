/** A plan in one line, for paper and for messages. */
import { PARTS, type Plan } from '../domain/programme/plan.ts';
import { lower } from './grammar.ts';
import { PART, partLines } from './words.ts';

/** "Warm-up: easy walk 5 min. Main set: 7 times: walk 1 min, run 2 min." */
export const planLine = (plan: Plan): string =>
  PARTS.filter((part) => plan[part].length > 0)
    .map((part) => `${PART[part]}: ${partLines(plan[part]).map(lower).join(', then ')}.`)
    .join(' ');
