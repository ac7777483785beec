/**
 * Domain time is whole milliseconds. Frames and seconds are made at the edge,
 * each by one named function, so that no two places can round differently.
 */

declare const msUnit: unique symbol;

/** A whole number of milliseconds: a place in a session, or a length of one. */
export type Ms = number & { readonly [msUnit]: true };

/** Effort in percent, 0 to 100. A tenth of it is the rating a person gives (0 to 10). */
export type Percent = number;

/** Brand a number as whole milliseconds. Rounds, so that sums of seconds with decimals stay whole. */
export const ms = (value: number): Ms => Math.round(value) as Ms;

/** Milliseconds of a number of seconds. */
export const msOfSeconds = (seconds: number): Ms => ms(seconds * 1000);

/** Seconds as the audio element counts them. */
export const secondsOf = (value: Ms): number => value / 1000;

/** One MPEG-2 Layer III frame at 24 kHz: 576 samples (ISO/IEC 13818-3). */
export const FRAME_MS = 24;

/** The frame whose start is nearest to a place in time: never more than 12 ms away. */
export const frameOf = (at: Ms): number => Math.round(at / FRAME_MS);

/** The place in time at which a frame starts. */
export const msOfFrame = (frame: number): Ms => ms(frame * FRAME_MS);
