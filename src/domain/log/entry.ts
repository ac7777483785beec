import type { Percent } from '../units.ts';

/** Where a niggle may be. */
export const NIGGLE_PLACES = [
  'foot',
  'ankle',
  'shin',
  'calf',
  'knee',
  'thigh',
  'hip',
  'back',
  'other',
] as const;
/** One of these places. */
export type NigglePlace = (typeof NIGGLE_PLACES)[number];

/** 1: noticed; 2: it changed how I moved; 3: it made me stop. */
export type Severity = 1 | 2 | 3;

/** Pain in one place. */
export interface Niggle {
  readonly place: NigglePlace;
  readonly side?: 'left' | 'right' | 'both';
  readonly severity?: Severity;
}

/** How it felt, in the person's own answer. Everything may be left out. */
export interface Feeling {
  /** 0 to 10. */
  readonly effort?: number;
  /** Asked again half an hour or more afterwards, of those who wish; 0 to 10. */
  readonly effortLater?: number;
  readonly niggle?: Niggle;
  /** Ordinary soreness: dull, in the muscles of both sides. Never counted as a niggle. */
  readonly soreness?: true;
  /** A sign to stop and get help: its own field, never mixed with niggle or note. */
  readonly warningSign?: boolean;
  readonly note?: string;
}

/** A session that ended. Orders by `startedAt`, shows by `localDate`. */
export interface LogEntry {
  readonly format: 'towpath-log/2';
  readonly id: string;
  readonly programme: { readonly id: string; readonly revision: number; readonly title: string };
  readonly group: { readonly id: string; readonly name: string };
  /** Both from 1. */
  readonly week: number;
  readonly session: number;
  /** The session in shorthand, as the leader wrote it on that day. */
  readonly plan: string;
  readonly target: Percent;
  /** UTC milliseconds, with the offset, zone and date of the place where it started. */
  readonly startedAt: number;
  readonly offsetMinutes: number;
  readonly zone: string;
  readonly localDate: string;
  readonly outcome: 'finished' | 'ended-early';
  /** Plan seconds gone through, each counted once. */
  readonly doneSeconds: number;
  /** Seconds moved, repeats and extra minutes counted, holds left out. Load uses this. */
  readonly activeSeconds: number;
  /** Stretches of the plan gone through, in seconds, merged and in order: what the strip shows. */
  readonly covered: readonly (readonly [number, number])[];
  readonly feeling: Feeling;
  readonly feltAt?: number;
  /** `app`: led by Towpath; `there`: done with the group; `by-hand`: written down afterwards. */
  readonly how: 'app' | 'there' | 'by-hand';
  /** As the person knows it. */
  readonly distanceM?: number;
  /** When it was last put right by hand, UTC milliseconds. */
  readonly editedAt?: number;
}
