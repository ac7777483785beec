import type { Segment, Timeline } from '../timeline/timeline.ts';
import { type Ms, ms, type Percent } from '../units.ts';
import { hasOwnEffort } from './change-words.ts';
import type { ClipLengths, CueKind, Talk } from './cue.ts';
import { type Phrase, sayActivity, sayEffort, sayReminder, sayTimeLeft } from './phrases.ts';
import { isReminderId } from './reminders.ts';
import { gapsOf, putAt, type Room } from './room.ts';
import { chooseSlots, type Slot } from './slots.ts';
import { heardFor } from './speak.ts';

interface Habit {
  /** Longest quiet. */
  readonly bound: number;
  /** Least time from one word to the next, besides the longest reminder. */
  readonly least: number;
  /** How often each reminder is wanted in a session. */
  readonly rounds: number;
  /** At most one in so long a time, where none is needed. */
  readonly oneIn: number;
  /** Least time before effort, or the same reminder, is said again. */
  readonly again: number;
}

const HABITS: Readonly<Record<Exclude<Talk, 'few'>, Habit>> = {
  usual: { bound: 180_000, least: 20_000, rounds: 1, oneIn: 120_000, again: 600_000 },
  many: { bound: 90_000, least: 15_000, rounds: 2, oneIn: 60_000, again: 360_000 },
};

/** In one segment, what is left of it is said after so many other things, where quiet must end. */
const THEN_TIME_LEFT = 2;

/** What gaps are filled with, and how much of it. */
export interface FillWith {
  readonly talk: Talk;
  readonly reminders: readonly string[];
  readonly target: Percent;
  readonly lengths: ClipLengths;
}

/**
 * Fill the widest gaps with effort and reminders, so that it is never quiet for long.
 *
 * Effort is said in the harder segments of the main part. Reminders take turns in the leader's
 * order. Where neither is due but quiet would last too long, and for a reminder in the leader's
 * own words, which is shown and not spoken, the activity and what is left of it are said.
 */
export function fillGaps(timeline: Timeline, rooms: readonly Room[], options: FillWith): void {
  const { talk, reminders, lengths } = options;
  if (talk === 'few') return;
  const habit = HABITS[talk];
  const longest = Math.max(
    0,
    ...reminders.map((text) => (isReminderId(text) ? heardFor(sayReminder(text), lengths) : 0)),
    heardFor(sayEffort(options.target), lengths),
  );
  const slots = chooseSlots(rooms.flatMap(gapsOf), {
    bound: habit.bound,
    least: habit.least + longest,
    wanted: Math.min(
      reminders.length * habit.rounds + effortsWanted(timeline, rooms, habit),
      timeline.total / habit.oneIn,
    ),
  });
  const choose = chooser(timeline, rooms, options, habit);
  for (const slot of slots) {
    const { room } = slot.gap;
    const filler = choose(slot);
    if (filler === undefined) continue;
    const { kind, phrase, note } = filler;
    const about = { kind, segment: room.segment.index, note };
    // Words longer than any reminder may not fit: whoever was not heard keeps the turn.
    if (putAt(room, about, phrase, slot.at, lengths)) filler.said();
  }
}

interface Filler {
  readonly kind: CueKind;
  readonly phrase: Phrase;
  readonly note?: string;
  /** To be called once it has its place. */
  said(): void;
}

/** Decides for one place after another, in order of time, what is said there. */
function chooser(
  { segments }: Timeline,
  rooms: readonly Room[],
  { reminders, target }: FillWith,
  { again }: Habit,
): (slot: Slot) => Filler | undefined {
  const effortAt = rooms.flatMap(({ cues }) => cues.filter(saysEffort).map(({ at }) => at));
  const saidAt = new Map<string, Ms>();
  let turn = 0;
  let since = { segment: -1, others: 0 };
  const due = (last: Ms | undefined, at: Ms): boolean => last === undefined || at - last >= again;
  const timeLeft = ({ gap, at }: Slot): Filler => ({
    kind: 'reminder',
    phrase: sayLeft(gap.room.segment, at),
    said: () => {
      since.others = 0;
    },
  });

  return (slot) => {
    const { at } = slot;
    const { segment } = slot.gap.room;
    if (since.segment !== segment.index) since = { segment: segment.index, others: 0 };
    if (slot.needed && since.others >= THEN_TIME_LEFT) return timeLeft(slot);
    const lastEffort = effortAt.findLast((said) => said <= at);
    const nextEffort = effortAt.find((said) => said > at) ?? Infinity;
    if (isWork(segments, segment) && due(lastEffort, at) && nextEffort - at >= again / 2) {
      const said = () => {
        since.others += 1;
        effortAt.splice(effortAt.findLastIndex((earlier) => earlier <= at) + 1, 0, at);
      };
      const effort = hasOwnEffort(segment) ? segment.effort : target;
      return { kind: 'effort', phrase: sayEffort(effort), said };
    }
    const reminder = reminders[turn % reminders.length];
    if (reminder !== undefined && due(saidAt.get(reminder), at)) {
      const isSpoken = isReminderId(reminder);
      const said = () => {
        saidAt.set(reminder, at);
        turn += 1;
        since.others = isSpoken ? since.others + 1 : 0;
      };
      return isSpoken
        ? { kind: 'reminder', phrase: sayReminder(reminder), said }
        : { ...timeLeft(slot), note: reminder, said };
    }
    return slot.needed ? timeLeft(slot) : undefined;
  };
}

const saysEffort = ({ clips }: Room['cues'][number]): boolean =>
  clips.some(({ clip }) => clip.startsWith('effort.'));

const sayLeft = (segment: Segment, at: Ms): Phrase => [
  ...sayActivity(segment.activity),
  ...sayTimeLeft(ms(segment.end - at)),
];

/** How many times effort may come up again in the main part, besides where it is said with a change. */
function effortsWanted({ segments }: Timeline, rooms: readonly Room[], habit: Habit): number {
  const work = segments.filter((segment) => isWork(segments, segment));
  const first = rooms.flatMap(({ cues }) => cues).find(saysEffort);
  const from = first?.at ?? (work[0]?.start ?? 0) - habit.again;
  const until = work.at(-1)?.end ?? 0;
  return Math.max(0, Math.min(habit.rounds, Math.floor((until - from) / habit.again)));
}

/** A main segment that is no easier than the main segments beside it. */
function isWork(segments: readonly Segment[], segment: Segment): boolean {
  if (segment.part !== 'main') return false;
  const beside = [segments[segment.index - 1], segments[segment.index + 1]];
  return beside.every((other) => other?.part !== 'main' || other.effort <= segment.effort);
}
