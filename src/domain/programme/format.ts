import { TEXT_MAX } from './bounds.ts';
import { itemText, ROOMY, type Style } from './format-items.ts';
import { partsOf } from './parts.ts';
import type { Item, Plan, Step } from './plan.ts';
import { PARTS } from './plan.ts';

/** The shortest that the shorthand can say of a length. */
function tightDuration({ duration }: Step): string {
  const seconds = Math.round(duration / 1000);
  const [h, m, s] = [Math.floor(seconds / 3600), Math.floor(seconds / 60), seconds % 60];
  const two = (n: number): string => String(n).padStart(2, '0');
  const forms = [`${seconds}"`, `${m}:${two(s)}`, `${m}'${s}"`];
  if (s === 0) forms.push(`${m}'`);
  if (seconds % 3600 === 0) forms.push(`${h}h `);
  if (h > 0) forms.push(`${h}h${seconds % 3600}"`);
  return forms.filter(isReadable).sort((a, b) => a.length - b.length)[0] ?? `${seconds}"`;
}

/** Behind an hour, seconds must stay under 60 and zero amounts are not written. */
const isReadable = (form: string): boolean => !/h([6-9]\d|\d{3,}|0)"/.test(form);

const TIGHT: Style = {
  duration: tightDuration,
  between: ',',
  inside: ',',
  space: '',
  labels: { 'warm-up': '', main: 'main:', 'cool-down': 'cooldown:' },
};

const isSame = (a: unknown, b: unknown): boolean => JSON.stringify(a) === JSON.stringify(b);

function planText(plan: Plan, style: Style): string {
  const all = PARTS.flatMap((part) => plan[part]);
  const list = (items: readonly Item[]): string =>
    items.map((item) => itemText(item, style)).join(style.between);
  if (isSame(partsOf(all), plan)) return list(all);
  return PARTS.filter((part) => plan[part].length > 0)
    .map((part) => `${style.labels[part]}${list(plan[part])}`)
    .join(style.between);
}

/**
 * A plan as shorthand. Labels are written only where the parts would be read differently without
 * them. Parsing it gives the same plan again; a plan too long to say with spaces is said without.
 */
export function formatPlan(plan: Plan): string {
  const roomy = planText(plan, ROOMY);
  return [...roomy].length <= TEXT_MAX ? roomy : planText(plan, TIGHT);
}
