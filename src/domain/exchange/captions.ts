import type { Cue, CuePlan } from '../cues/cue.ts';
import type { Ms } from '../units.ts';

/**
 * A cue plan as a WebVTT file (W3C WebVTT: The Web Video Text Tracks Format).
 *
 * Every cue spans what is heard. Its identifier begins with its kind and ends with its number
 * among all cues, from 1. Its text is the words; what the leader wrote and nobody says stands in
 * round brackets on a line of its own.
 */
export function toWebVtt(plan: CuePlan): string {
  return ['WEBVTT', ...plan.cues.map(block), ''].join('\n\n').replace(/\n+$/, '\n');
}

const block = (cue: Cue, i: number): string =>
  [
    `${cue.kind}-${i + 1}`,
    `${timestamp(cue.at)} --> ${timestamp(cue.end)}`,
    escapeText(cue.text),
    ...(cue.note === undefined || oneLine(cue.note) === '' ? [] : [`(${escapeText(cue.note)})`]),
  ].join('\n');

const digits = (n: number, width: number): string => String(n).padStart(width, '0');

/** Hours, minutes, seconds and thousandths, as WebVTT wants them: `00:15:03.700`. */
function timestamp(at: Ms): string {
  const seconds = Math.floor(at / 1000);
  const clock = [Math.floor(seconds / 3600), Math.floor(seconds / 60) % 60, seconds % 60];
  return `${clock.map((n) => digits(n, 2)).join(':')}.${digits(at % 1000, 3)}`;
}

/** A blank line would end the cue; a zero byte and half a surrogate pair are not text. */
const oneLine = (text: string): string =>
  Array.from(text, (sign) => (/^[\ud800-\udfff]$/.test(sign) ? '\ufffd' : sign))
    .join('')
    .replace(/[\s\p{Cc}\u2028\u2029]+/gu, ' ')
    .trim();

/** "<" would open a tag, "&" an entity, and ">" could complete an arrow. */
const escapeText = (text: string): string =>
  oneLine(text).replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;');
