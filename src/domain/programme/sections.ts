import { activityOf } from './activity.ts';
import { readItems } from './build.ts';
import { labelOf, nearestLabel } from './label.ts';
import { partsOf } from './parts.ts';
import type { Part, Plan } from './plan.ts';
import { PARTS } from './plan.ts';
import type { RawEntry } from './raw.ts';
import type { Report } from './report.ts';

type RawLabel = RawEntry & { readonly kind: 'label' };

/** A run of entries under one label, or under none. */
interface Section {
  readonly label: RawLabel | undefined;
  readonly entries: RawEntry[];
}

function split(entries: readonly RawEntry[]): readonly Section[] {
  const sections: Section[] = [{ label: undefined, entries: [] }];
  for (const entry of entries) {
    if (entry.kind === 'label') sections.push({ label: entry, entries: [] });
    else sections.at(-1)?.entries.push(entry);
  }
  return sections;
}

/** The part that a label opens, given the parts opened before it. */
function openedBy(label: RawLabel, seen: readonly Part[], report: Report): Part | undefined {
  const words = label.words.words;
  const part = labelOf(words);
  if (part === undefined && activityOf(words)) return report.say('colon', label.words);
  if (part === undefined) {
    const near = nearestLabel(words);
    return report.say('label-unknown', label.words, near === undefined ? {} : { near });
  }
  if (seen.includes(part)) return report.say('label-twice', label.words, { part });
  const later = seen.find((other) => PARTS.indexOf(other) > PARTS.indexOf(part));
  if (later !== undefined) return report.say('label-order', label.words, { part, later });
  return part;
}

/**
 * The three parts of a session. Each label once and in order; any label needs main. Steps before
 * `main:` without a label of their own are the warm-up, since that is where they stand.
 */
export function readSections(entries: readonly RawEntry[], report: Report): Plan | undefined {
  const [unlabelled, ...labelled] = split(entries);
  const before = readItems(unlabelled?.entries ?? [], 0, report);
  if (labelled.length === 0) return before.length === 0 ? undefined : partsOf(before);
  const plan: Record<Part, Plan[Part]> = { 'warm-up': before, main: [], 'cool-down': [] };
  const seen: Part[] = [];
  for (const { label, entries: inside } of labelled) {
    if (label === undefined) continue;
    const part = openedBy(label, seen, report);
    if (part === 'warm-up' && before.length > 0) report.say('before-label', label.words);
    if (part === 'cool-down' && !seen.includes('main')) report.say('label-needs-main', label.words);
    const items = readItems(inside, 0, report);
    if (inside.length === 0) report.say('label-empty', label.words);
    if (part !== undefined) {
      seen.push(part);
      plan[part] = items;
    }
  }
  const first = labelled[0]?.label;
  if (first && !seen.includes('main')) report.say('label-needs-main', first.words);
  return plan;
}
