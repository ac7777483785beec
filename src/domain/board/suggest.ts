import { dayIn } from '../advice/days.ts';
import { rule } from '../advice/rules.ts';
import { weekdayOf } from '../programme/calendar.ts';
import { factsOf } from '../review/facts.ts';
import { sessionsIn } from '../review/outline.ts';
import type { BoardInput } from './board.ts';
import { type Calendar, mondayOfWeek } from './calendar.ts';
import { groundsOf, isShare, isTooFew } from './grounds.ts';
import { boardLimit } from './limits.ts';
import type { Grounds, Suggestion, Way, WayReason } from './next-week.ts';
import { everybodyIn, type Seen } from './row.ts';
import { mayStretch } from './stretch.ts';

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
