import type { Niggle } from '../log/entry.ts';
import { type Day, isoDate } from '../programme/calendar.ts';
import type { Course } from './course.ts';
import { dayIn } from './days.ts';
import { type Finding, finding } from './finding.ts';
import { rule } from './rules.ts';
import { between, inOrder, type Situation } from './situation.ts';

interface Felt {
  readonly day: Day;
  readonly niggle: Niggle;
}

/** The last day on which the person said that they had asked. What was said to them is not kept. */
function cleared({ following }: Pick<Situation, 'following'>, today: Day): Day {
  const days = (following?.decisions ?? [])
    .filter(({ why }) => why === 'asked')
    .flatMap(({ on }) => dayIn(on) ?? [])
    .filter((day) => day <= today);
  return Math.max(Number.NEGATIVE_INFINITY, ...days);
}

/** The day of the last warning sign, asked about since or not. */
export function lastSign({ entries }: Pick<Situation, 'entries'>, today: Day): Day | undefined {
  return inOrder(entries).findLast(
    ({ day, entry }) => day <= today && entry.feeling.warningSign === true,
  )?.day;
}

/** The day of the last warning sign, until the person says that a doctor agreed. */
export function openSign(
  situation: Pick<Situation, 'entries' | 'following'>,
  today: Day,
): Day | undefined {
  const day = lastSign(situation, today);
  // On the very day of the sign nothing clears it.
  return day === undefined || cleared(situation, today) > day ? undefined : day;
}

function signs(situation: Situation, today: Day): readonly Finding[] {
  const day = openSign(situation, today);
  return day === undefined ? [] : [finding('warning-sign', { date: isoDate(day) })];
}

const SIDES = { left: 1, right: 2, both: 3 } as const;

/** The same place, and sides that can be the same: one that was not said can be either. */
const isSame = (a: Niggle, b: Niggle): boolean =>
  a.place === b.place && (SIDES[a.side ?? 'both'] & SIDES[b.side ?? 'both']) !== 0;

/**
 * Each niggle that was felt twice or more: the last time within 14 days of today, the others
 * within 14 days before it.
 */
function repeated(felt: readonly Felt[], today: Day): readonly (readonly Felt[])[] {
  const window = rule('niggleAgain');
  return felt
    .filter(({ day }) => today - day <= window)
    .filter(({ niggle }, n, lately) =>
      lately.slice(n + 1).every((later) => !isSame(niggle, later.niggle)),
    )
    .map((last) => {
      const before = felt.slice(0, felt.indexOf(last) + 1);
      return before.filter(
        ({ day, niggle }) => last.day - day <= window && isSame(niggle, last.niggle),
      );
    })
    .filter((same) => same.length >= 2);
}

function again(same: readonly Felt[], today: Day, since: Day): Finding | undefined {
  const last = same.at(-1);
  if (last === undefined) return undefined;
  const { place, side } = last.niggle;
  const detail = {
    place,
    ...(side && { side }),
    times: same.length,
    days: rule('niggleAgain'),
    date: isoDate(last.day),
  };
  // One whose weight was not said is taken as one that counts.
  const isSlight = same.every(({ niggle }) => niggle.severity === 1);
  const isAsked = since > last.day;
  if (!isAsked && (!isSlight || same.length >= rule('niggleOften')))
    return finding('niggle-back', detail);
  const until = last.day + rule('niggleRest') + 1;
  if (today < until) return finding('niggle-twice', { ...detail, until: isoDate(until) });
  return finding('niggle-eased', detail);
}

/** One niggle alone, by what it did. */
function alone(felt: readonly Felt[], today: Day): readonly Finding[] {
  return felt.flatMap(({ day, niggle }): Finding[] => {
    const { place, side, severity } = niggle;
    const detail = { place, ...(side && { side }), date: isoDate(day) };
    const until = day + rule('niggleRest') + 1;
    if (severity === 3 && today < until)
      return [finding('niggle-stopped', { ...detail, until: isoDate(until) })];
    const isLate = today - day >= rule('niggleEase');
    return (severity ?? 1) >= 2 && !isLate ? [finding('niggle-moved', detail)] : [];
  });
}

/** Whether any niggle was felt within 14 days, whatever it did. */
export const hasNiggle = ({ entries }: Situation, today: Day): boolean =>
  between(entries, today - rule('niggleAgain'), today).some(
    ({ entry }) => entry.feeling.niggle !== undefined,
  );

/** Warning signs and niggles, of all programmes: there is one body. Ordinary soreness is none. */
export function bodyFindings(situation: Situation, { today }: Course): readonly Finding[] {
  const from = today - 2 * rule('niggleAgain');
  const felt = between(situation.entries, from, today).flatMap(({ day, entry }): Felt[] => {
    const { niggle } = entry.feeling;
    return niggle === undefined ? [] : [{ day, niggle }];
  });
  const since = cleared(situation, today);
  return [
    ...signs(situation, today),
    ...repeated(felt, today).flatMap((same) => again(same, today, since) ?? []),
    ...alone([...felt].reverse(), today),
  ];
}
