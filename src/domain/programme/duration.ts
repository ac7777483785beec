import type { Ms } from '../units.ts';
import { ms, msOfSeconds } from '../units.ts';
import { SESSION_MAX, STEP_MIN } from './bounds.ts';
import type { RawAmount, RawDuration, Span } from './raw.ts';
import type { Report } from './report.ts';

const UNIT_SECONDS = { h: 3600, min: 60, s: 1 } as const;
type Unit = keyof typeof UNIT_SECONDS;

const DISTANCES = new Set(
  'metre metres meter meters mtr mtrs km kms k kilometre kilometres kilometer kilometers mile miles mi yard yards yd yds lap laps'.split(
    ' ',
  ),
);
/** First letters of what people write for a unit, in a few languages. */
const UNIT_STARTS: readonly (readonly [string, Unit])[] = [
  ['min', 'min'],
  ['mn', 'min'],
  ['mim', 'min'],
  ['mni', 'min'],
  ['sec', 's'],
  ['sek', 's'],
  ['seg', 's'],
  ['hou', 'h'],
  ['std', 'h'],
];
/** From here on, `m` was surely meant as metres. */
const METRES_FROM = 100;

/** A length as the shorthand writes it: `1 min 30 s`, `1 h 5 min`. */
export function sayDuration(length: Ms): string {
  const seconds = Math.round(length / 1000);
  const counts: [number, Unit][] = [
    [Math.floor(seconds / 3600), 'h'],
    [Math.floor(seconds / 60) % 60, 'min'],
    [seconds % 60, 's'],
  ];
  const said = counts.filter(([n]) => n > 0).map(([n, unit]) => `${n} ${unit}`);
  return said.length === 0 ? '0 s' : said.join(' ');
}

function unitOf(written: string): Unit | undefined {
  if (written === '"' || /^s(ec(ond)?s?)?$/.test(written)) return 's';
  if (written === "'" || /^min(ute)?s?$/.test(written)) return 'min';
  return /^h((ou)?rs?)?$/.test(written) ? 'h' : undefined;
}

const FRACTIONS: Readonly<Record<string, number>> = {
  '¼': 1 / 4,
  '½': 1 / 2,
  '¾': 3 / 4,
  '⅓': 1 / 3,
  '⅔': 2 / 3,
};

/** The value of a number that may have a fraction, for the suggestion. */
function numberOf(number: string): number {
  const [, digits = '', fraction = ''] = /^([\d.,]*)([^\d.,]?)$/.exec(number) ?? [];
  return Number(digits.replace(',', '.')) + (FRACTIONS[fraction] ?? 0);
}

/** An amount whose unit is not one of time: say which mistake it is. */
function wrongUnit(amount: RawAmount, whole: RawDuration, report: Report): undefined {
  const { number, unit } = amount;
  if (unit === 'm' && numberOf(number) < METRES_FROM)
    return report.say('unit-m', amount, { write: `${number} min` });
  if (unit === 'm' || DISTANCES.has(unit)) return report.say('distance', amount);
  const near = UNIT_STARTS.find(([start]) => unit.startsWith(start))?.[1];
  if (near !== undefined) return report.say('unknown-unit', amount, { write: `${number} ${near}` });
  const place = { start: amount.start, end: amount.start + number.length };
  const rest = report.folded.text.slice(amount.end);
  if (unit === '' && /^[.)] /.test(rest) && report.startsLine(amount.start))
    return report.say('bullet', { ...place, end: place.end + 1 });
  if (unit === '' && /^ *\(/.test(rest))
    return report.say('missing-times', place, { write: number });
  const before = whole.kind === 'amounts' ? whole.amounts[whole.amounts.indexOf(amount) - 1] : null;
  const above = before ? unitOf(before.unit) : undefined;
  if (before && above && above !== 's') {
    const write = `${before.number} ${above} ${number} ${above === 'h' ? 'min' : 's'}`;
    return report.say('missing-unit', place, { write, other: '' });
  }
  return report.say('missing-unit', place, { write: `${number} min`, other: `${number} s` });
}

function secondsOfAmounts(
  raw: RawDuration & { kind: 'amounts' },
  report: Report,
): number | undefined {
  let seconds = 0;
  let finest = Number.POSITIVE_INFINITY;
  let over = false;
  let misplaced = false;
  for (const [n, amount] of raw.amounts.entries()) {
    const unit = unitOf(amount.unit);
    if (unit === undefined) return wrongUnit(amount, raw, report);
    const size = UNIT_SECONDS[unit];
    if (!/^\d+$/.test(amount.number)) {
      const write = sayDuration(msOfSeconds(numberOf(amount.number) * size));
      return report.say('decimal', amount, { write });
    }
    misplaced ||= size >= finest;
    finest = Math.min(finest, size);
    over ||= n > 0 && Number(amount.number) >= 60;
    seconds += Number(amount.number) * size;
  }
  const write = sayDuration(msOfSeconds(seconds));
  if (misplaced) return report.say('duration-order', raw, { write });
  if (over) return report.say('duration-over', raw, { write });
  return seconds;
}

function secondsOfClock(raw: RawDuration & { kind: 'clock' }, report: Report): number | undefined {
  const [first = '', ...rest] = raw.clock.split(':');
  const numbers = rest.map(Number);
  const seconds = numbers.reduce((sum, n) => sum * 60 + n, Number(first));
  const write = sayDuration(msOfSeconds(seconds));
  if (rest.some((digits) => digits.length !== 2)) return report.say('clock-digits', raw);
  if (numbers.some((n) => n >= 60)) return report.say('clock-seconds', raw, { write });
  return seconds;
}

/** A duration in whole milliseconds, within the bounds of a step; or a problem told to `report`. */
export function readDuration(raw: RawDuration, report: Report): Ms | undefined {
  if (raw.kind === 'range') return report.say('range', raw);
  const seconds =
    raw.kind === 'clock' ? secondsOfClock(raw, report) : secondsOfAmounts(raw, report);
  if (seconds === undefined) return undefined;
  const length = msOfSeconds(seconds);
  const place: Span = raw;
  if (length < STEP_MIN) return report.say('step-short', place, { limit: sayDuration(STEP_MIN) });
  if (length > SESSION_MAX)
    return report.say('step-long', place, { limit: sayDuration(SESSION_MAX) });
  return ms(length);
}
