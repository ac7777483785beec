import { FRAME_MS, type Ms, ms, msOfFrame } from '../units.ts';

/** A stretch of the track, in track time. It includes its start and excludes its end. */
export interface Lane {
  readonly start: Ms;
  readonly end: Ms;
}

/** What is heard before a start that was agreed ahead, in track time: all of it below 0. */
export interface LeadIn {
  /** Whole frames. The file's own time is track time and this. */
  readonly length: Ms;
  /** Where something sounds, in order: between them a seek cuts nothing off. */
  readonly sounds: readonly Lane[];
}

/**
 * Where things lie in one composed track. Session time and track time are the same from 0 to
 * `session`; what follows is reached by a seek only. Every lane ends in quiet, so that a late
 * script costs quiet and never somebody else's words.
 */
export interface TrackLayout {
  /** Before 0, only where people wait for a start that was agreed ahead. */
  readonly leadIn?: LeadIn;
  /** Length of the session itself: the timeline's total. */
  readonly session: Ms;
  /** Quiet after the end (it begins with the finish words). */
  readonly tail: Lane;
  readonly holding: Lane;
  /** Words, then one minute; `minute.end` is where the session is to be gone back to. */
  readonly oneMore: Lane & { readonly minute: Lane };
  /** Five minutes of easy walk, only where the plan has no cool-down of its own. */
  readonly coolDown?: Lane;
  /** From 0 to the end; a lead-in is not part of it. */
  readonly total: Ms;
}

/** Quiet after the session and after every lane. A frozen page wakes up well within it. */
export const GUARD = ms(120_000);
/** The extra minute. */
const MINUTE = ms(60_000);

/** Lengths of the lanes' own plans, without the quiet after them. */
export interface LaneLengths {
  readonly holding: Ms;
  /** Words and the minute together: the minute is its end. */
  readonly oneMore: Ms;
  readonly coolDown?: Ms | undefined;
}

/** The first start of a frame at or after a place. */
export const onFrame = (at: Ms): Ms => msOfFrame(Math.ceil(at / FRAME_MS));

/**
 * Lay the lanes out one after another behind the session. Every lane starts on a frame and is
 * followed by at least {@link GUARD} of quiet, which the next lane's start ends.
 *
 * @param leadIn what comes before 0, where there is a wait
 */
export function layOut(session: Ms, lanes: LaneLengths, leadIn?: LeadIn): TrackLayout {
  const after = (end: Ms): Ms => onFrame(ms(end + GUARD));
  const tail = { start: session, end: after(session) };
  const holding = { start: tail.end, end: ms(tail.end + lanes.holding) };
  const oneMoreStart = after(holding.end);
  const oneMoreEnd = ms(oneMoreStart + lanes.oneMore);
  const oneMore = {
    start: oneMoreStart,
    end: oneMoreEnd,
    minute: { start: ms(oneMoreEnd - MINUTE), end: oneMoreEnd },
  };
  const behind = after(oneMore.end);
  const sides = { ...(leadIn && { leadIn }), session, tail, holding, oneMore };
  if (lanes.coolDown === undefined) return { ...sides, total: behind };
  const coolDown = { start: behind, end: ms(behind + lanes.coolDown) };
  return { ...sides, coolDown, total: after(coolDown.end) };
}
