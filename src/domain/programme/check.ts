import type { Ms } from '../units.ts';
import { ms, msOfSeconds } from '../units.ts';
import { sayDuration } from './duration.ts';
import { pathText } from './path.ts';
import type { Item, Plan } from './plan.ts';
import { PARTS } from './plan.ts';
import type { Detail } from './problem.ts';
import type { Programme, SessionPlan, Week } from './programme.ts';
import { lengthOf, planLength } from './totals.ts';

/** Something to look at again; the programme can be used as it is. */
export interface ProgrammeWarning {
  readonly code:
    | 'ends-apart'
    | 'warm-up-none'
    | 'warm-up-short'
    | 'cool-down-none'
    | 'cool-down-short'
    | 'main-short'
    | 'no-recovery'
    | 'sessions-over';
  readonly path: string;
  readonly detail?: Detail;
}

/** Main sets that end further apart than this leave people waiting. Common practice, no source. */
const TOGETHER: Ms = msOfSeconds(30);
/** Light walking before and after: 5 to 10 min (ACSM), 5 and 5 min (Mayo Clinic). */
const EASY_WALK: Ms = msOfSeconds(300);

/** When the main set ends, from the start of the session: that is when groups meet again. */
export const mainEnd = (plan: Plan): Ms => ms(lengthOf(plan['warm-up']) + lengthOf(plan.main));

const isStill = (item: Item): boolean =>
  item.kind === 'step' && (item.activity === 'stand' || item.activity === 'stretch');

/** How long the items walk before anything faster begins; standing and stretching count as none. */
function walkFrom(items: readonly Item[]): { length: number; all: boolean } {
  let length = 0;
  for (const item of items) {
    if (isStill(item)) continue;
    if (item.kind === 'step') {
      if (!item.activity.endsWith('walk')) return { length, all: false };
      length += item.duration;
    } else {
      const inside = walkFrom(item.items);
      length += inside.length * (inside.all ? item.count : 1);
      if (!inside.all) return { length, all: false };
    }
  }
  return { length, all: true };
}

const backwards = (items: readonly Item[]): readonly Item[] =>
  items
    .map((item) => (item.kind === 'step' ? item : { ...item, items: backwards(item.items) }))
    .reverse();

/** A repeat of one running step: nothing to recover in between. */
const isBreathless = (item: Item): boolean =>
  item.kind === 'repeat' &&
  ((item.count > 1 &&
    item.items.length === 1 &&
    item.items[0]?.kind === 'step' &&
    item.items[0].activity.endsWith('run')) ||
    item.items.some(isBreathless));

type Found = Omit<ProgrammeWarning, 'path'>;

function checkEnds(plan: Plan): readonly Found[] {
  const all = PARTS.flatMap((part) => plan[part]);
  return (['warm-up', 'cool-down'] as const).flatMap((part): Found[] => {
    const { length } = walkFrom(part === 'warm-up' ? all : backwards(all));
    if (length >= EASY_WALK) return [];
    if (length === 0) return [{ code: `${part}-none` }];
    return [{ code: `${part}-short`, detail: { length: sayDuration(ms(length)) } }];
  });
}

/**
 * What one session leaves to be asked. The first and the last thing done should be walking, 5 min
 * or more each (American College of Sports Medicine: 5-10 min of light to moderate activity; Mayo
 * Clinic: 5 and 5 min). Main set at least half of the session, and rest between runs: common
 * practice, no source.
 */
export function checkPlan(plan: Plan): readonly Found[] {
  const found: Found[] = [...checkEnds(plan)];
  const [main, all] = [lengthOf(plan.main), planLength(plan)];
  if (main * 2 < all)
    found.push({ code: 'main-short', detail: { main: sayDuration(main), all: sayDuration(all) } });
  if (plan.main.some(isBreathless)) found.push({ code: 'no-recovery' });
  return found;
}

const nth = (sessions: readonly SessionPlan[], session: number): SessionPlan | undefined =>
  sessions.length === 1 ? sessions[0] : sessions[session - 1];

/** The value that most have; of several, the largest. */
function usual(values: readonly number[]): number {
  const count = (value: number): number => values.filter((other) => other === value).length;
  return [...values].sort((a, b) => count(b) - count(a) || b - a)[0] ?? 0;
}

/** Groups whose main set ends before or after the others' in the session done together. */
function checkTogether(
  { sessions, together }: Week,
  programme: Programme,
): readonly (Found & { group: string })[] {
  if (together === undefined) return [];
  const ends = programme.groups.flatMap(({ id }) => {
    const session = nth(sessions[id] ?? [], together);
    return session ? [{ group: id, end: mainEnd(session.plan) }] : [];
  });
  const common = usual(ends.map(({ end }) => end));
  return ends
    .filter(({ end }) => Math.abs(end - common) > TOGETHER)
    .map(({ group, end }) => ({
      code: 'ends-apart',
      group,
      detail: {
        apart: sayDuration(ms(Math.abs(end - common))),
        when: end < common ? 'before' : 'after',
        end: sayDuration(end),
        common: sayDuration(ms(common)),
      },
    }));
}

function checkWeek(week: Week, n: number, programme: Programme): readonly ProgrammeWarning[] {
  const path = (group: string, list: readonly unknown[], session: number): string =>
    pathText(['weeks', n, 'sessions', group, ...(list.length > 1 ? [session] : [])]);
  const sessions = programme.groups.flatMap(({ id }) => {
    const list = week.sessions[id] ?? [];
    const over: ProgrammeWarning[] =
      list.length > week.timesPerWeek.max
        ? [
            {
              code: 'sessions-over',
              path: path(id, [], 0),
              detail: { sessions: list.length, max: week.timesPerWeek.max },
            },
          ]
        : [];
    const plans = list.flatMap(({ plan }, session) =>
      checkPlan(plan).map((found) => ({ ...found, path: path(id, list, session) })),
    );
    return [...over, ...plans];
  });
  const apart = checkTogether(week, programme).map(({ group, ...found }) => {
    const list = week.sessions[group] ?? [];
    return { ...found, path: path(group, list, (week.together ?? 1) - 1) };
  });
  return [...sessions, ...apart];
}

/** Everything in a programme that its leader may want to look at again, week by week. */
export const checkProgramme = (programme: Programme): readonly ProgrammeWarning[] =>
  programme.weeks.flatMap((week, n) => checkWeek(week, n, programme));
