import type { Niggle } from '../log/entry.ts';
import type { Programme } from '../programme/programme.ts';
import type { Attendance } from './attendance.ts';
import type { Heard } from './heard.ts';
import type { BoardSetup } from './setup.ts';

/** All that a board is made of. */
export interface BoardInput {
  readonly programme: Programme;
  /** Of this programme, in any order. */
  readonly heard: readonly Heard[];
  /** Of this programme, in any order. */
  readonly days: readonly Attendance[];
  readonly setup?: BoardSetup;
  /** The local date where the leader is, ISO 8601. */
  readonly today: string;
}

/** One session of a person. Attendance and their own log of the same day are one. */
export interface BoardSession {
  /** Of their own entry; none: only the leader's list says that they were there. */
  readonly id?: string;
  readonly localDate: string;
  /** Both from 1. */
  readonly week: number;
  readonly session: number;
  readonly group: string;
  /** Ticked on the leader's list. */
  readonly there: boolean;
  /** Of the plan, in whole percent, where programme and length are known. */
  readonly donePercent?: number;
  readonly activeSeconds?: number;
  /** 0 to 10. */
  readonly felt?: number;
  /** 0 to 10. */
  readonly target: number;
  readonly niggle?: Niggle;
  readonly sign: boolean;
  readonly note?: string;
  /** It counts as one of its week. */
  readonly counts: boolean;
  readonly cutShort: boolean;
}

/**
 * How a week of a person stands. `unknown`: nobody has heard since it began, or it is not known
 * whether; `none-told`: they have told since it was over, and nothing of it; `ahead`: not begun.
 * None of them is ever "0 sessions".
 */
export type CellState = 'heard' | 'none-told' | 'unknown' | 'ahead';

/** One week of one person. */
export interface BoardCell {
  /** From 1. */
  readonly week: number;
  readonly state: CellState;
  /** In the order of time. */
  readonly sessions: readonly BoardSession[];
  /** Sessions that count as done, as for the person's own week. */
  readonly done: number;
  /** Whether that is as many as the week asks for at least, or as the group has sessions. */
  readonly enough: boolean;
  /** What the leader asked for. */
  readonly wanted: { readonly min: number; readonly max: number };
  /** Median of felt less target over the rated sessions, in points; nothing: none was rated. */
  readonly gap?: number;
  readonly niggles: number;
  readonly signs: number;
  readonly cutShort: number;
}

/** All that is known of one person, by weeks. */
export interface PersonRow {
  /** As in `Heard`. */
  readonly person: string;
  /** As the leader calls them, or as they call themselves. */
  readonly name?: string;
  readonly byHand: boolean;
  /** Id of their group now; one that the programme no longer has stays as it is. */
  readonly group: string;
  /** When they last told, UTC milliseconds. */
  readonly heardAt?: number;
  /** Sessions that they kept to themselves. */
  readonly leftOut: number;
  /** One for every week of the programme. */
  readonly cells: readonly BoardCell[];
  /** Of weeks that the programme has no more, in the order of time. */
  readonly elsewhere: readonly BoardSession[];
}

/** What is known of a group in one week. */
export interface GroupWeek {
  /** From 1. */
  readonly week: number;
  /** People of the group of whom something of this week is known. */
  readonly heard: number;
  /** People in the group: as the leader said, or as many as are known where that is more. */
  readonly of: number;
  readonly sessions: number;
  /** Over all rated sessions of the group's people, 0 to 10. */
  readonly felt?: Spread;
  /** Felt less target, in points, over the same sessions. */
  readonly gap?: Spread;
  /** 0 to 10. */
  readonly target: number;
  readonly niggles: number;
  readonly signs: number;
  readonly cutShort: number;
}

/** By linear interpolation between ordered values (Hyndman and Fan 1996, definition 7). */
export interface Spread {
  readonly count: number;
  readonly least: number;
  readonly lower: number;
  readonly median: number;
  readonly upper: number;
  readonly most: number;
}

/** A group as a whole, by weeks. */
export interface GroupBoard {
  readonly id: string;
  readonly name: string;
  /** From 1, as it is spoken. */
  readonly number: number;
  readonly people: number;
  readonly weeks: readonly GroupWeek[];
}

/** What came back from the people of a programme. Made anew from what is kept; never stored. */
export interface Board {
  /** The week that today lies in, from 1; before the first 1, behind the last the last. */
  readonly week: number;
  readonly people: readonly PersonRow[];
  /** In the programme's order; last, where there are any, people of groups that it has no more. */
  readonly groups: readonly GroupBoard[];
}
