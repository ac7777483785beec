import { dayIn } from '../advice/days.ts';
import { rule } from '../advice/rules.ts';
import { weekdayOf } from '../programme/calendar.ts';
import { factsOf } from '../review/facts.ts';
import { sessionsIn } from '../review/outline.ts';
import type { BoardInput } from './board.ts';
import { sizeOf } from './board-of.ts';
import { type Calendar, mondayOfWeek } from './calendar.ts';
import { gapOf, isKnown } from './cells.ts';
import { boardLimit } from './limits.ts';
import type { Grounds, Suggestion, Way, WayReason } from './next-week.ts';
import { everybodyIn, type Seen } from './row.ts';
import { medianOf, tenths } from './spread.ts';
import { mayStretch } from './stretch.ts';

/** One person's week in their group. Sessions in other groups say nothing of this one's plan. */
function weekOf({ row, record }: Seen, number: number) {
  const cell = row.cells[number - 1];
  const sessions = record.sessions.filter(
    ({ week, group }) => week === number && group === row.group,
  );
  const gap = medianOf(sessions.flatMap((session) => gapOf(session) ?? []));
  return {
    isKnown: cell !== undefined && isKnown(cell),
    // Who did enough did it in whichever group.
    enough: cell?.enough ?? false,
    cutShort: sessions.some((session) => session.cutShort),
    niggle: sessions.some(({ niggle }) => niggle !== undefined),
    sign: sessions.some(({ sign }) => sign),
    gap,
  };
}

function groundsOf(
  input: BoardInput,
  group: string,
  people: readonly Seen[],
  looked: number,
): Grounds {
  const of = sizeOf(input, group, people.length);
  const weeks = people.map((seen) => weekOf(seen, looked)).filter((week) => week.isKnown);
  const gaps = weeks.flatMap(({ gap }) => gap ?? []);
  const gap = medianOf(gaps);
  const count = (holds: (each: (typeof weeks)[number]) => boolean): number =>
    weeks.filter(holds).length;
  return {
    heard: weeks.length,
    of,
    rated: gaps.length,
    harder: gaps.filter((each) => tenths(each) >= rule('harder')).length,
    muchHarder: gaps.filter((each) => tenths(each) >= rule('muchHarder')).length,
    easier: gaps.filter((each) => tenths(each) <= -rule('harder')).length,
    cutShort: count(({ cutShort }) => cutShort),
    enough: count(({ enough }) => enough),
    niggles: count(({ niggle }) => niggle),
    signs: count(({ sign }) => sign),
    hurt: count(({ niggle, sign }) => niggle || sign),
    ...(gap !== undefined && { gap: tenths(gap) }),
  };
}

/** Whether so many of some are at least a share in percent; of none nothing is. */
const isShare = (n: number, of: number, percent: number): boolean =>
  of > 0 && n * 100 >= of * percent - 1e-9;

const isTooFew = ({ heard, of }: Grounds): boolean =>
  heard < boardLimit('fewest') || !isShare(heard, of, boardLimit('leastShare'));

/** What the week that was looked at asks for, before anything is weighed against it. */
function leaning(grounds: Grounds): readonly [Way, WayReason] {
  const { heard, rated, hurt } = grounds;
  const half = boardLimit('half');
  const isRated = rated >= boardLimit('fewest');
  const isHarder = isRated && isShare(grounds.harder, rated, half);
  const isHurt =
    hurt >= boardLimit('niggleFewest') && isShare(hurt, heard, boardLimit('niggleShare'));
  if (isRated && isShare(grounds.muchHarder, rated, half)) return ['ease', 'much-harder'];
  if (isHurt && (isHarder || isShare(hurt, heard, half))) return ['ease', 'niggles'];
  if (isHarder) return ['repeat', 'harder'];
  if (isHurt) return ['repeat', 'niggles'];
  if (isShare(grounds.cutShort, heard, half)) return ['repeat', 'cut-short'];
  if (!isShare(grounds.enough, heard, half)) return ['repeat', 'thin'];
  const isEasier =
    isRated &&
    isShare(grounds.easier, rated, boardLimit('easierShare')) &&
    grounds.harder === 0 &&
    grounds.cutShort === 0;
  return isEasier ? ['stretch', 'easier'] : ['go-on', 'as-meant'];
}

/** Whether the event lies within two weeks of the beginning of a week, or of today. */
function isEventNear({ programme }: BoardInput, calendar: Calendar, next: number): boolean {
  const event = dayIn(programme.goal.date);
  if (event === undefined) return false;
  const from = Math.max(calendar.today, mondayOfWeek(calendar, next) ?? calendar.today);
  return event >= calendar.today && event - from <= rule('eventNear');
}

/** Any sign of anybody in the group within 28 days: nothing is raised then. */
const standsSign = (people: readonly Seen[], today: number): boolean =>
  people.some(({ record }) =>
    record.sessions.some(
      ({ sign, localDate }) => sign && today - (dayIn(localDate) ?? today) <= rule('afterSign'),
    ),
  );

/** Whether a week asks for no more than another of a group, by work and longest run of its sessions. */
function isLighter(
  { programme }: BoardInput,
  group: string,
  next: number,
  looked: number,
): boolean {
  const [then, now] = [next, looked].map((number) => {
    const week = programme.weeks[number - 1];
    const facts =
      week === undefined ? [] : sessionsIn(week, group).map(({ plan }) => factsOf(plan));
    return {
      work: Math.max(0, ...facts.map(({ work }) => work)),
      stretch: Math.max(0, ...facts.map(({ stretch }) => stretch)),
    };
  });
  if (then === undefined || now === undefined) return false;
  const isSame = then.work === now.work && then.stretch === now.stretch;
  return !isSame && then.work <= now.work && then.stretch <= now.stretch;
}

interface Asked {
  readonly input: BoardInput;
  readonly calendar: Calendar;
  readonly group: string;
  readonly people: readonly Seen[];
  readonly looked: number;
}

/** What stands against a way that the numbers lean to. */
function weighed(asked: Asked, grounds: Grounds): readonly [Way, WayReason] {
  const { input, calendar, group, people, looked } = asked;
  const next = looked + 1;
  const [way, why] = leaning(grounds);
  if (way === 'repeat' && isLighter(input, group, next, looked)) return ['go-on', 'lighter'];
  const isNear = isEventNear(input, calendar, next);
  // What was missed so near the event is not made up for.
  if (why === 'thin' && isNear) return ['go-on', 'event-near'];
  if (way !== 'stretch') return [way, why];
  if (isNear) return ['go-on', 'event-near'];
  if (standsSign(people, calendar.today)) return ['go-on', 'sign'];
  return mayStretch(input.programme, group, next) ? [way, why] : ['go-on', 'limits'];
}

function suggestionFor(asked: Asked): Suggestion {
  const { input, group, people, looked } = asked;
  const grounds = groundsOf(input, group, people, looked);
  const [way, why]: readonly [Way, WayReason] = isTooFew(grounds)
    ? ['go-on', 'too-few']
    : weighed(asked, grounds);
  return { group, looked, next: looked + 1, way, why, grounds };
}

/**
 * The week to look at when nothing else is asked: this one from Thursday on, before that the last.
 * Without dates, the one that most have reached. Nothing before the first week, and none when no
 * week comes after it.
 */
export function weekToLookAt(input: BoardInput): number | undefined {
  const { calendar } = everybodyIn(input);
  const { start, today, week } = calendar;
  const weeks = input.programme.weeks.length;
  if (start !== undefined && today < start) return undefined;
  const isOver = start !== undefined && today >= start + 7 * weeks;
  if (isOver) return undefined;
  const isEarly = start !== undefined && weekdayOf(today) < rule('lateDay');
  const looked = isEarly ? week - 1 : week;
  return looked >= 1 && looked < weeks ? looked : undefined;
}

/**
 * What the answers of each group suggest for its next week, with the numbers behind it. A leader
 * decides. Nothing is raised within two weeks of the event, while a warning sign stands in the
 * group, or beyond what the review of a programme would ask about.
 *
 * @param looked the week that is looked at, from 1; left out: `weekToLookAt`
 * @returns nothing where there is no week to look at, or none after it
 */
export function suggestionsFor(input: BoardInput, looked?: number): readonly Suggestion[] {
  const { calendar, people } = everybodyIn(input);
  const number = looked ?? weekToLookAt(input);
  const { groups, weeks } = input.programme;
  if (number === undefined || number < 1 || number >= weeks.length) return [];
  return groups.map(({ id }) =>
    suggestionFor({
      input,
      calendar,
      group: id,
      people: people.filter(({ row }) => row.group === id),
      looked: number,
    }),
  );
}
