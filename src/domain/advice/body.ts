import type { LogEntry, Niggle } from '../log/entry.ts';
import type { Course } from './course.ts';
import { type Day, dayIn, isoDate } from './days.ts';
import { type Finding, finding } from './finding.ts';
import { rule } from './rules.ts';
import { byTime, type Situation } from './situation.ts';

interface Felt {
  readonly day: Day;
  readonly niggle: Niggle;
}

/** Entries of all programmes up to today: there is one body. */
function entriesUntil({ entries }: Situation, today: Day): readonly [Day, LogEntry][] {
  return [...entries].sort(byTime).flatMap((entry): [Day, LogEntry][] => {
    const day = dayIn(entry.localDate);
    return day === undefined || day > today ? [] : [[day, entry]];
  });
}

/** The last day on which the person said that they had asked. What was said to them is not kept. */
function cleared({ following }: Situation, today: Day): Day {
  const days = (following?.decisions ?? [])
    .filter(({ why }) => why === 'asked')
    .flatMap(({ on }) => dayIn(on) ?? [])
    .filter((day) => day <= today);
  return Math.max(Number.NEGATIVE_INFINITY, ...days);
}

/** The day of the last warning sign, asked about since or not. */
export function lastSign(situation: Situation, today: Day): Day | undefined {
  return entriesUntil(situation, today).findLast(
    ([, { feeling }]) => feeling.warningSign === true,
  )?.[0];
}

function signs(situation: Situation, today: Day): readonly Finding[] {
  const day = lastSign(situation, today);
  // On the very day of the sign nothing clears it.
  if (day === undefined || cleared(situation, today) > day) return [];
  return [finding('warning-sign', { date: isoDate(day) })];
}

const SIDES = { left: 1, right: 2, both: 3 } as const;

/** The same place, and sides that can be the same: one that was not said can be either. */
const isSame = (a: Niggle, b: Niggle): boolean =>
  a.place === b.place && (SIDES[a.side ?? 'both'] & SIDES[b.side ?? 'both']) !== 0;

/** The niggle that was felt most often, twice or more within 14 days up to today. */
function repeated(felt: readonly Felt[], today: Day): readonly Felt[] {
  const lately = felt.filter(({ day }) => today - day <= rule('niggleAgain'));
  const groups = lately.map(({ niggle }) => lately.filter((other) => isSame(niggle, other.niggle)));
  const often = groups.filter((group) => new Set(group).size >= 2);
  const worst = (group: readonly Felt[]): number =>
    group.length * 10 + Math.max(...group.map(({ niggle }) => niggle.severity ?? 2));
  return often.sort((a, b) => worst(b) - worst(a))[0] ?? [];
}

function again(felt: readonly Felt[], today: Day, since: Day): readonly Finding[] {
  const same = repeated(felt, today);
  const last = same.at(-1);
  if (last === undefined) return [];
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
    return [finding('niggle-back', detail)];
  const until = last.day + rule('niggleRest') + 1;
  if (today < until) return [finding('niggle-twice', { ...detail, until: isoDate(until) })];
  return [finding('niggle-eased', detail)];
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
export const hasNiggle = (situation: Situation, today: Day): boolean =>
  entriesUntil(situation, today).some(
    ([day, { feeling }]) => feeling.niggle !== undefined && today - day <= rule('niggleAgain'),
  );

/** Warning signs and niggles. Ordinary soreness is none. */
export function bodyFindings(situation: Situation, { today }: Course): readonly Finding[] {
  const felt = entriesUntil(situation, today).flatMap(([day, { feeling }]): Felt[] =>
    feeling.niggle === undefined ? [] : [{ day, niggle: feeling.niggle }],
  );
  const since = cleared(situation, today);
  return [
    ...signs(situation, today),
    ...again(felt, today, since),
    ...alone([...felt].reverse(), today),
  ];
}
