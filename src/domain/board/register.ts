import { isSame, laterText } from '../exchange/merge-fields.ts';

/**
 * The later of two states of one thing; of the same moment the one with the greater canonical text,
 * so that every device chooses alike. Where both say the same the first, so that nothing changes.
 */
export function laterOf<T>(a: T, b: T, momentOf: (value: T) => number): T {
  const [one, other] = [momentOf(a), momentOf(b)];
  if (one !== other) return one > other ? a : b;
  return a === b || isSame(a, b) ? a : laterText(a, b);
}

interface Said {
  readonly at: number;
}

/** The same of what one side may not have said at all. */
export function laterSaid<T extends Said>(a: T | undefined, b: T | undefined): T | undefined {
  if (a === undefined || b === undefined) return a ?? b;
  return laterOf(a, b, ({ at }) => at);
}

/** Two records, name by name. The first itself where nothing changes. */
export function mergeByName<T extends Said>(
  a: Readonly<Record<string, T>>,
  b: Readonly<Record<string, T>>,
): Readonly<Record<string, T>> {
  const merged = new Map(Object.entries(a));
  let isChanged = false;
  for (const [name, value] of Object.entries(b)) {
    const there = merged.get(name);
    const next = laterSaid(there, value);
    if (next === undefined || next === there) continue;
    merged.set(name, next);
    isChanged = true;
  }
  return isChanged ? Object.fromEntries(merged) : a;
}
