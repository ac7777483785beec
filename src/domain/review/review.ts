import type { Group } from '../programme/programme.ts';
import { checkArrival } from './arrival.ts';
import { checkSteps, checkTargets } from './effort.ts';
import { eventWeek } from './event.ts';
import { checkGrowth } from './growth.ts';
import { checkLighter } from './lighter.ts';
import { checkOrder } from './order.ts';
import { type Outline, type Placed, pathOf, placedOf } from './outline.ts';
import { checkTogether } from './together.ts';
import type { ProgrammeWarning } from './warning.ts';

/** A group with all of its sessions, by week. */
interface Written {
  readonly group: Group;
  readonly weeks: readonly (readonly Placed[])[];
}

/** What the sessions of one group leave to be asked, each alone and one week after another. */
function checkGroup({ group, weeks }: Written, outline: Outline): readonly ProgrammeWarning[] {
  const alone = weeks.flatMap((sessions, n): readonly ProgrammeWarning[] => {
    const max = outline.weeks[n]?.timesPerWeek.max ?? 0;
    const found = sessions.flatMap((session) =>
      session.facts.found.map((each) => ({ ...each, path: pathOf(session) })),
    );
    if (sessions.length <= max) return found;
    const path = pathOf({ week: n, group: group.id, session: 0, count: 1 });
    return [{ code: 'sessions-over', path, detail: { sessions: sessions.length, max } }, ...found];
  });
  return [...alone, ...checkGrowth(weeks), ...checkSteps(weeks)];
}

function checkEvent(groups: readonly Written[], outline: Outline): readonly ProgrammeWarning[] {
  const event = eventWeek(outline);
  if (event === undefined) return [];
  const upTo = groups.map(({ weeks }) => weeks.slice(0, event + 1));
  return [
    ...checkLighter(outline, upTo, event),
    ...upTo.flatMap((weeks, n) => checkArrival(outline, weeks, n === upTo.length - 1)),
  ];
}

const weekOf = ({ path }: ProgrammeWarning): number => Number(/^weeks\[(\d+)\]/.exec(path)?.[1]);

/**
 * Everything in a programme, or in what can be read of one in writing, that its leader may want to
 * look at again, week by week. Nothing in it stands in the way of using the programme. Facts of a
 * plan are kept by its identity: pass the same plans again and only what changed is measured.
 */
export function reviewOutline(outline: Outline): readonly ProgrammeWarning[] {
  const groups = outline.groups.map((group) => ({ group, weeks: placedOf(outline, group.id) }));
  const found = [
    ...checkTargets(outline.weeks),
    ...groups.flatMap((each) => checkGroup(each, outline)),
    ...groups.flatMap(({ weeks }, n) => {
      const below = groups[n - 1];
      return below === undefined ? [] : checkOrder(weeks, below.weeks, below.group);
    }),
    ...outline.weeks.flatMap((week, n) => checkTogether(outline, week, n)),
    ...checkEvent(groups, outline),
  ];
  return found.sort((a, b) => weekOf(a) - weekOf(b));
}
