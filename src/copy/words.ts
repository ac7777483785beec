/** The words of the trade as a person reads them. */
import type { NigglePlace } from '../domain/log/entry.ts';
import { type Item, PARTS, type Part, type Plan } from '../domain/programme/plan.ts';
import type { Turn } from '../domain/timeline/timeline.ts';
import { inWords, length } from './times.ts';

export const PART: Readonly<Record<Part, string>> = {
  'warm-up': 'Warm-up',
  main: 'Main set',
  'cool-down': 'Cool-down',
};

/** With a capital, as at the start of a sentence. */
export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** "Set 3 of 7", "Round 2 of 3, set 1 of 4", or nothing. */
export function turns(set: Turn | undefined, round: Turn | undefined): string {
  const said = [
    round === undefined ? '' : `round ${round.n} of ${round.of}`,
    set === undefined ? '' : `set ${set.n} of ${set.of}`,
  ].filter((part) => part !== '');
  return capital(said.join(', '));
}

const itemInWords = (item: Item, say: typeof length): string => {
  if (item.kind === 'step') {
    const note = item.note === undefined ? '' : ` (${item.note})`;
    return `${item.activity} ${say(item.duration)}${note}`;
  }
  const inner = item.items.map((each) => itemInWords(each, say)).join(', ');
  return item.count === 1 ? inner : `${item.count} times: ${inner}`;
};

/** One part of a plan as lines: "Easy walk 5 min", "7 times: walk 1 min, run 2 min". */
export const partLines = (items: readonly Item[]): readonly string[] =>
  items.map((item) => capital(itemInWords(item, length)));

/** The text alternative of a strip: what it shows, in one sentence. */
export function stripInWords(plan: Plan): string {
  const parts = PARTS.filter((part) => plan[part].length > 0).map((part) => {
    const items = plan[part].map((item) => itemInWords(item, inWords)).join(', then ');
    return `${PART[part]}: ${items}`;
  });
  return `${parts.join('. ')}.`;
}

export const PLACE: Readonly<Record<NigglePlace, string>> = {
  foot: 'Foot',
  ankle: 'Ankle',
  shin: 'Shin',
  calf: 'Calf',
  knee: 'Knee',
  thigh: 'Thigh',
  hip: 'Hip',
  back: 'Back',
  other: 'Somewhere else',
};

export const SEVERITY = {
  1: 'noticed',
  2: 'changed how I moved',
  3: 'made me stop',
} as const;

export const SIDE = { left: 'Left', right: 'Right', both: 'Both sides' } as const;
