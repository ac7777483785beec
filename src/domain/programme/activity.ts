import type { Activity } from './plan.ts';
import { ACTIVITIES } from './plan.ts';

const KNOWN = new Set<string>(ACTIVITIES);

/** The activity that the words are, exactly. `fast walk` is taken as brisk walk. */
export function activityOf(words: string): Activity | undefined {
  const plain = words.replace(/\s+/g, ' ');
  if (plain === 'fast walk') return 'brisk walk';
  return KNOWN.has(plain) ? (plain as Activity) : undefined;
}

/** Words for what the body does, from their first letters. */
const NOUNS: readonly (readonly [RegExp, string])[] = [
  [/^(walk|wlak|stroll|hik|march|step|stride|amble|wander)/, 'walk'],
  [/^(jog|shuffl|trot)/, 'jog'],
  [/^(run|rnu|ran$|sprint|stride|race|tempo|interval)/, 'run'],
  [/^(stand|stood|rest|pause|break|stop|wait|still)/, 'stand'],
  [/^(stretch|mobil|flex|limber)/, 'stretch'],
];
const ADJECTIVES: readonly (readonly [RegExp, string])[] = [
  [/^(slow|stroll|amble|wander)/, 'slow'],
  [/^(easy|gentl|light|relax|soft|recover|comfort|eas|calm|shuffl)/, 'easy'],
  [/^(brisk|power|quick|purpose|march|hik|stride)/, 'brisk'],
  [/^(steady|moderat|medium|even|regular|constant|continuous)/, 'steady'],
  [/^(strong|hard|tempo|thresh|interval|vigorous)/, 'strong'],
  [/^(fast|sprint|max|all-out|race)/, 'fast'],
];
/** What each noun offers for each adjective. */
const PAIRS: Readonly<Record<string, Readonly<Record<string, Activity>>>> = {
  walk: {
    slow: 'slow walk',
    easy: 'easy walk',
    brisk: 'brisk walk',
    strong: 'brisk walk',
    fast: 'brisk walk',
  },
  jog: { slow: 'easy jog', easy: 'easy jog', brisk: 'run', strong: 'run', fast: 'run' },
  run: {
    slow: 'easy jog',
    easy: 'easy jog',
    brisk: 'strong run',
    steady: 'steady run',
    strong: 'strong run',
    fast: 'fast run',
  },
};

const meaning = (
  table: readonly (readonly [RegExp, string])[],
  words: readonly string[],
): string | undefined => {
  for (const word of words) {
    const found = table.find(([start]) => start.test(word));
    if (found) return found[1];
  }
  return undefined;
};

/** Edits (insert, delete, replace) between two words: Levenshtein 1966. */
export function editsBetween(a: string, b: string): number {
  let row = Array.from({ length: b.length + 1 }, (_, n) => n);
  for (let i = 1; i <= a.length; i += 1) {
    const next = [i];
    for (let j = 1; j <= b.length; j += 1) {
      const swap = (row[j - 1] ?? 0) + (a[i - 1] === b[j - 1] ? 0 : 1);
      next.push(Math.min(swap, (row[j] ?? 0) + 1, (next[j - 1] ?? 0) + 1));
    }
    row = next;
  }
  return row[b.length] ?? 0;
}

/** The known activity that is nearest in meaning or spelling, if any is near. */
export function nearestActivity(words: string): Activity | undefined {
  const plain = words.slice(0, 40).replace(/\s+/g, ' ');
  const spelt = [...ACTIVITIES]
    .map((activity) => ({ activity, edits: editsBetween(plain, activity) }))
    .sort((a, b) => a.edits - b.edits)[0];
  if (spelt && spelt.edits <= 1) return spelt.activity;
  const list = plain.split(/[ -]/);
  const noun = meaning(NOUNS, list);
  const adjective = meaning(ADJECTIVES, list);
  if (noun !== undefined) return PAIRS[noun]?.[adjective ?? ''] ?? (noun as Activity);
  if (/^(recover|easy|gentle)/.test(plain)) return 'easy walk';
  return spelt && spelt.edits <= 2 && plain.length > 4 ? spelt.activity : undefined;
}
