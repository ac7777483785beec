import { formatPlan } from '../programme/format.ts';
import { parsePlan } from '../programme/parse.ts';
import type { Plan } from '../programme/plan.ts';
import type { Programme, Week } from '../programme/programme.ts';
import { type Alignment, align } from './align.ts';
import { cellsOf } from './places.ts';
import type { Sheet, SheetWeek } from './sheet.ts';

/** What a week says besides its sessions. */
export type WeekText = 'focus' | 'effort' | 'times' | 'together';

/** Sessions of a group as plans: another spelling of the same plan is no change. */
type Said = (week: number, group: string) => string;

/** What was sent and what is being written, side by side. */
export interface Sides {
  readonly said: { readonly before: Said; readonly now: Said };
  /** Ids of groups that are in both. */
  readonly shared: readonly string[];
  readonly weeks: Alignment;
}

/** Plans that were sent stay the same objects, however often they are compared. */
const spelt = new WeakMap<Plan, string>();

function spell(plan: Plan): string {
  const text = spelt.get(plan) ?? formatPlan(plan);
  spelt.set(plan, text);
  return text;
}

function saying(before: Programme, now: Sheet): Sides['said'] {
  const known = new Map<string, string>();
  const say = (text: string, read: () => string): string => {
    const said = known.get(text) ?? read();
    known.set(text, said);
    return said;
  };
  const saidNow = (text: string): string =>
    say(text, () => {
      const plan = parsePlan(text);
      return plan.ok ? formatPlan(plan.value) : text;
    });
  return {
    before: (week, group) =>
      JSON.stringify(
        (before.weeks[week]?.sessions[group] ?? []).map(({ text, plan }) =>
          say(text, () => spell(plan)),
        ),
      ),
    now: (week, group) =>
      JSON.stringify(cellsOf(now.weeks[week], group).map(({ text }) => saidNow(text))),
  };
}

/** The same as texts that can be compared. */
export const textsOf = (week: Week | SheetWeek): Readonly<Record<WeekText, string>> => ({
  focus: week.focus.trim(),
  effort: String(week.effort),
  times: `${week.timesPerWeek.min}-${week.timesPerWeek.max}`,
  together: String(week.together ?? ''),
});

/** Weeks are matched by what they say of the groups that are in both. */
export function sidesOf(before: Programme, now: Sheet): Sides {
  const said = saying(before, now);
  const ids = new Set(before.groups.map(({ id }) => id));
  const shared = now.groups.map(({ id }) => id).filter((id) => ids.has(id));
  const mark = (week: Week | SheetWeek, n: number, side: Said): string =>
    JSON.stringify([textsOf(week), shared.map((group) => side(n, group))]);
  const weeks = align(
    before.weeks.map((week, n) => mark(week, n, said.before)),
    now.weeks.map((week, n) => mark(week, n, said.now)),
  );
  return { said, shared, weeks };
}
