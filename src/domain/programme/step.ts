import { activityOf, nearestActivity } from './activity.ts';
import { NOTE_MAX } from './bounds.ts';
import { readDuration } from './duration.ts';
import { labelOf } from './label.ts';
import type { Activity, Step } from './plan.ts';
import type { RawExtra, RawStep, RawWords } from './raw.ts';
import type { Report } from './report.ts';

const EFFORT_WORDS: Readonly<Record<string, number>> = { easy: 30, moderate: 50, hard: 70 };
const NUMBER_WORDS: readonly string[] =
  'zero one two three four five six seven eight nine ten eleven twelve'.split(' ');

function sayNumberWord(word: string, start: number, report: Report): undefined {
  const span = { start, end: start + word.length };
  return report.say('number-word', span, { write: NUMBER_WORDS.indexOf(word) });
}

/** `half an hour`, `a minute`: how the shorthand writes it. */
function sayArticle(words: RawWords, report: Report): boolean {
  const [phrase, half, unit] = /^(half )?an? (hour|min(?:ute)?)(?![a-z])/.exec(words.words) ?? [];
  if (phrase === undefined) return false;
  const write = unit === 'hour' ? (half ? '30 min' : '1 h') : half ? '30 s' : '1 min';
  report.say('number-word', { start: words.start, end: words.start + phrase.length }, { write });
  return true;
}

/** An activity without a time: the time may stand there in words. */
function sayMissingDuration(words: RawWords, report: Report): void {
  const rest = report.folded.text.slice(words.end);
  const [, gap = '', word = ''] = /^( *(?:for )? *)([a-z]+)/.exec(rest) ?? [];
  if (NUMBER_WORDS.includes(word)) sayNumberWord(word, words.end + gap.length, report);
  else report.say('missing-duration', words);
}

/** Words that are no activity: say what they look like. */
function wrongWords(words: RawWords, raw: RawStep, report: Report): undefined {
  if (raw.first === 'duration' && labelOf(words.words))
    return report.say('part-as-activity', words, { part: labelOf(words.words) ?? '' });
  const last = /(warm[- ]?up|main( set)?|cool[- ]?down)$/.exec(words.words);
  if (raw.first === 'words' && labelOf(words.words)) return report.say('label-colon', words);
  if (last && last.index > 0 && activityOf(words.words.slice(0, last.index).trim()))
    return report.say('missing-separator', {
      start: words.start + last.index,
      end: words.end,
    });
  if (sayArticle(words, report)) return undefined;
  const [first = ''] = words.words.split(' ');
  if (raw.first === 'words' && NUMBER_WORDS.includes(first))
    return sayNumberWord(first, words.start, report);
  const near = nearestActivity(words.words);
  if (raw.duration === null && near === undefined) return report.say('not-a-step', words);
  return report.say('unknown-activity', words, near === undefined ? {} : { near });
}

function readEffort(raw: RawExtra & { kind: 'effort' }, report: Report): number | undefined {
  const text = raw.effort ?? '';
  if (text === '') return report.say('effort-missing', raw);
  const word = EFFORT_WORDS[text];
  if (word !== undefined) return word;
  const [, digits, unit] = /^(\d+)\s*(%|\/\s*10)?$/.exec(text) ?? [];
  if (digits === undefined) return wrongEffort(text, raw, report);
  const number = Number(digits);
  if (unit === undefined) {
    const write = number <= 10 ? `${number}/10` : `${number}%`;
    return report.say(number > 100 ? 'effort-over' : 'effort-unit', raw, { write });
  }
  const percent = unit === '%' ? number : number * 10;
  return percent > 100 ? report.say('effort-over', raw) : percent;
}

function wrongEffort(text: string, raw: RawExtra, report: Report): undefined {
  if (/:|\/\s*(k|m)/.test(text)) return report.say('effort-pace', raw);
  const [, from, to, unit = '%'] = /^(\d+)-(\d+)\s*(%|\/\s*10)?$/.exec(text) ?? [];
  if (from !== undefined && to !== undefined) {
    const middle = Math.round((Number(from) + Number(to)) / 2);
    return report.say('effort-range', raw, { write: `${middle}${unit.replace(/\s/g, '')}` });
  }
  const [, number = '', part] = /^(\d+[.,]\d+)\s*(%|\/\s*10)$/.exec(text) ?? [];
  if (part === undefined) return report.say('effort-unknown', raw);
  const percent = Number(number.replace(',', '.')) * (part === '%' ? 1 : 10);
  return report.say('decimal', raw, { write: `${Math.round(percent)}%` });
}

function readNote(raw: RawExtra & { kind: 'note' }, report: Report): string | undefined {
  if (!raw.closed) return report.say('note-open', raw);
  const note = report.typed(raw.body).trim();
  if (note === '') return report.say('note-empty', raw);
  const length = [...note].length;
  return length > NOTE_MAX ? report.say('note-long', raw, { limit: NOTE_MAX, length }) : note;
}

function readExtras(raw: RawStep, report: Report): { effort?: number; note?: string } {
  const extras: { effort?: number; note?: string } = {};
  for (const extra of raw.extras) {
    if (extra.kind === 'effort') {
      const effort = readEffort(extra, report);
      if (extras.effort !== undefined) report.say('effort-twice', extra);
      if (effort !== undefined) extras.effort = effort;
    } else {
      const note = readNote(extra, report);
      if (extras.note !== undefined) report.say('note-twice', extra);
      if (note !== undefined) extras.note = note;
    }
  }
  return extras;
}

function readActivity(raw: RawStep, report: Report): Activity | undefined {
  if (raw.words === null) {
    report.say('missing-activity', raw.duration ?? raw);
    return undefined;
  }
  return activityOf(raw.words.words) ?? wrongWords(raw.words, raw, report);
}

/** A step, or a problem told to `report` in the order of the text. */
export function readStep(raw: RawStep, report: Report): Step | undefined {
  const durationFirst = raw.first === 'duration' && raw.duration !== null;
  const early = durationFirst ? readDuration(raw.duration, report) : undefined;
  const activity = readActivity(raw, report);
  if (activity !== undefined && raw.duration === null && raw.words !== null)
    sayMissingDuration(raw.words, report);
  const duration =
    !durationFirst && raw.duration !== null ? readDuration(raw.duration, report) : early;
  const extras = readExtras(raw, report);
  if (activity === undefined || duration === undefined) return undefined;
  return { kind: 'step', duration, activity, ...extras };
}
