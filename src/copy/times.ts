/** How lengths, places and dates are written. One way each, everywhere. */

import { type Ms, ms } from '../domain/units.ts';
import { dateFormat } from './date-format.ts';

const two = (n: number): string => String(n).padStart(2, '0');

const clockOf = (seconds: number): string => {
  const h = Math.floor(seconds / 3600);
  const m = Math.floor((seconds % 3600) / 60);
  const s = seconds % 60;
  return h > 0 ? `${h}:${two(m)}:${two(s)}` : `${m}:${two(s)}`;
};

/** Time left, such as `1:12`. Rounds up: it shows 0:00 only when nothing is left. */
export const left = (value: Ms): string => clockOf(Math.ceil(Math.max(0, value) / 1000));

/** A place in a session, such as `12:31`. Rounds down, as a watch does. */
export const place = (value: Ms): string => clockOf(Math.floor(Math.max(0, value) / 1000));

/** The minute that a place lies in, from 1 as people count them. */
export const minuteOf = (value: Ms): number => Math.floor(Math.max(0, value) / 60_000) + 1;

const units = (seconds: number, h: string, m: string, s: string): string => {
  const parts = [
    [Math.floor(seconds / 3600), h],
    [Math.floor((seconds % 3600) / 60), m],
    [Math.round(seconds % 60), s],
  ] as const;
  const said = parts.filter(([n]) => n > 0).map(([n, unit]) => `${n} ${unit}`);
  return said.length > 0 ? said.join(' ') : `0 ${m}`;
};

/** A length in short units: `31 min`, `1 h 5 min`, `1 min 30 s`. */
export const length = (value: Ms): string => units(Math.round(value / 1000), 'h', 'min', 's');

/** A length in whole minutes, for summaries: `31 min`; under a minute in seconds. */
export const minutes = (value: Ms): string =>
  value < 60_000 ? length(value) : length(ms(Math.round(value / 60_000) * 60_000));

/** A length as read aloud by a screen reader: `1 minute 30 seconds`. */
export const inWords = (value: Ms): string => {
  const seconds = Math.round(value / 1000);
  const many = (n: number, word: string): string => (n === 1 ? word : `${word}s`);
  return units(
    seconds,
    many(Math.floor(seconds / 3600), 'hour'),
    many(Math.floor((seconds % 3600) / 60), 'minute'),
    many(seconds % 60, 'second'),
  );
};

/** A sentence as somebody else wrote it, with a full stop unless it ends in a sign already. */
export function sentence(text: string): string {
  const said = text.trim();
  return said === '' || /[.!?…]$/.test(said) ? said : `${said}.`;
}

const dayText = dateFormat({
  weekday: 'short',
  day: 'numeric',
  month: 'long',
  year: 'numeric',
  timeZone: 'UTC',
});

/** A calendar date (ISO 8601) as people write it: `Mon, 1 March 2027`. */
export const day = (isoDate: string): string => {
  const at = Date.parse(`${isoDate}T00:00:00Z`);
  return Number.isNaN(at) ? isoDate : dayText(at);
};

/** Time of day on this phone: `12:31`. */
export const timeOfDay = (utcMs: number, offsetMinutes?: number): string => {
  if (offsetMinutes === undefined) {
    const at = new Date(utcMs);
    return `${two(at.getHours())}:${two(at.getMinutes())}`;
  }
  const at = new Date(utcMs + offsetMinutes * 60_000);
  return `${two(at.getUTCHours())}:${two(at.getUTCMinutes())}`;
};
