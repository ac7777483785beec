import { parsePlan } from '../../../src/domain/programme/parse.ts';
import type { Plan } from '../../../src/domain/programme/plan.ts';
import type { SessionPlan, Week } from '../../../src/domain/programme/programme.ts';
import type { Outline } from '../../../src/domain/review/outline.ts';
import { reviewOutline } from '../../../src/domain/review/review.ts';

export const planOf = (text: string): Plan => {
  const plan = parsePlan(text);
  if (!plan.ok) throw new Error(`${plan.error.code}: ${text}`);
  return plan.value;
};

export const sessionOf = (text: string): SessionPlan => ({ text, plan: planOf(text) });

const EASY = '5 min easy walk';
/** Five minutes of walking before and after. */
export const around = (main: string): string => `${EASY}; ${main}; ${EASY}`;

type Cell = string | readonly string[];

export interface Extra {
  /** By week. */
  readonly efforts?: readonly number[];
  readonly times?: readonly number[];
  readonly distanceM?: number;
  readonly dates?: readonly [start: string, event: string];
}

/** Main parts by group, then week; groups in order from gentle to demanding. */
export function outlineOf(
  groups: Readonly<Record<string, readonly Cell[]>>,
  { efforts = [], times = [], distanceM = 1, dates }: Extra = {},
): Outline {
  const count = Math.max(...Object.values(groups).map((weeks) => weeks.length));
  const sessions = (n: number): Week['sessions'] =>
    Object.fromEntries(
      Object.entries(groups).map(([id, weeks]) => {
        const cell = weeks[n] ?? [];
        const list = typeof cell === 'string' ? [cell] : cell;
        return [id, list.map((main) => sessionOf(around(main)))];
      }),
    );
  return {
    groups: Object.keys(groups).map((id) => ({
      id,
      name: id.charAt(0).toUpperCase() + id.slice(1),
      for: '',
    })),
    weeks: Array.from({ length: count }, (_, n) => ({
      focus: '',
      effort: efforts[n] ?? 50,
      timesPerWeek: { min: 1, max: times[n] ?? 3 },
      sessions: sessions(n),
    })),
    goal: { name: 'Heron Loop', distanceM, ...(dates ? { date: dates[1] } : {}) },
    ...(dates ? { startDate: dates[0] } : {}),
  };
}

/** What the review finds, as `code path`. */
export const found = (outline: Outline): readonly string[] =>
  reviewOutline(outline).map(({ code, path }) => `${code} ${path}`);
