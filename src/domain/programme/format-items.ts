import { sayDuration } from './duration.ts';
import type { Item, Plan, Step } from './plan.ts';

/** How a plan is laid out in text. */
export interface Style {
  readonly duration: (step: Step) => string;
  readonly between: string;
  readonly inside: string;
  readonly space: string;
  readonly labels: Readonly<Record<keyof Plan, string>>;
}

/** A note cannot hold the quote that ends it. */
const quoted = (note: string): string => `"${note.replaceAll('"', "'")}"`;

function stepText(step: Step, { duration, space }: Style): string {
  const effort = step.effort === undefined ? '' : `${space}@${space}${step.effort}%`;
  const note = step.note === undefined ? '' : `${space}${quoted(step.note)}`;
  return `${duration(step)}${step.activity}${effort}${note}`;
}

/** One item as it is written in a style. */
export function itemText(item: Item, style: Style): string {
  if (item.kind === 'step') return stepText(item, style);
  const { space } = style;
  const [only] = item.items;
  const bare = item.items.length === 1 && only?.kind === 'step';
  const body = item.items.map((inner) => itemText(inner, style)).join(style.inside);
  return `${item.count}${space}x${space}${bare ? body : `(${body})`}`;
}

/** As people like to read it, with spaces. */
export const ROOMY: Style = {
  duration: (step) => `${sayDuration(step.duration)} `,
  between: '; ',
  inside: ', ',
  space: ' ',
  labels: { 'warm-up': 'warm-up: ', main: 'main: ', 'cool-down': 'cool-down: ' },
};

/** Items in a row, for a sentence about them. */
export const formatItems = (items: readonly Item[], between: string): string =>
  items.map((item) => itemText(item, ROOMY)).join(between);
