import type { Decision, Following, Pause } from '../log/following.ts';

/** Where a person has decided nothing yet. */
export const followingOf = (programmeId: string): Following => ({
  format: 'towpath-following/1',
  programmeId,
  pauses: [],
  decisions: [],
});

/**
 * What the person decided, kept. It takes the place of whatever was decided for its day or later,
 * so that the latest holds; deciding the same again changes nothing.
 */
export const decide = (following: Following, decision: Decision): Following => ({
  ...following,
  decisions: [...following.decisions.filter(({ on }) => on < decision.on), decision],
});

/** Without what was decided for a day. What it had taken the place of does not come back. */
export const undecide = (following: Following, { on }: Pick<Decision, 'on'>): Following => ({
  ...following,
  decisions: following.decisions.filter((each) => each.on !== on),
});

/** Week 1 from this Monday on. @param monday ISO 8601 */
export const startOn = (following: Following, monday: string): Following => ({
  ...following,
  startedOn: monday,
});

const dayBefore = (date: string): string =>
  new Date(Date.parse(`${date}T00:00:00Z`) - 86_400_000).toISOString().slice(0, 10);

/**
 * A pause from a day on, without an end or to a day, that included. Pauses that it would overlap
 * give way: one that began before ends the day before, later ones are taken out.
 */
export function pause(following: Following, made: Pause): Following {
  if (made.to !== undefined && made.to < made.from) return following;
  const before = following.pauses
    .filter(({ from }) => from < made.from)
    .map((each): Pause => {
      const isOver = each.to !== undefined && each.to < made.from;
      return isOver ? each : { ...each, to: dayBefore(made.from) };
    });
  const after = following.pauses.filter(({ from }) => made.to !== undefined && from > made.to);
  return { ...following, pauses: [...before, made, ...after] };
}

/** Back from a day on: a pause that this day lies in ends the day before, or never was. */
export function resume(following: Following, today: string): Following {
  const pauses = following.pauses.flatMap((each): Pause[] => {
    const isNow = each.from <= today && (each.to === undefined || each.to >= today);
    if (!isNow) return [each];
    return each.from === today ? [] : [{ ...each, to: dayBefore(today) }];
  });
  return { ...following, pauses };
}
