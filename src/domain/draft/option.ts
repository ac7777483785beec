import type { Activity, Item, Plan, Step } from '../programme/plan.ts';
import { BOUNDS, type Half, msOfHalf } from './bounds.ts';
import type { Arrival } from './wish.ts';

/** A main set that can be said in a breath. */
export type Form =
  | { readonly kind: 'sets'; readonly sets: number; readonly hard: Half; readonly easy: Half }
  /** A long run, then one or two shorter ones, walks between: the bridge from sets to one run. */
  | {
      readonly kind: 'runs';
      readonly first: Half;
      readonly easy: Half;
      readonly others: 1 | 2;
      readonly other: Half;
    }
  | { readonly kind: 'on'; readonly hard: Half }
  /** As the leader wrote it. */
  | { readonly kind: 'pinned' };

/** A main set and what the rules look at. */
export interface Option {
  readonly form: Form;
  readonly main: Half;
  /** All running; for those who walk, all brisk walking. */
  readonly hard: Half;
  /** The longest of it without a break. */
  readonly stretch: Half;
}

function* inSets(main: Half): Generator<Option> {
  const { sets: counts, easy: walks } = BOUNDS;
  for (let sets = counts.min; sets <= counts.max; sets += 1) {
    if (main % sets !== 0) continue;
    for (let easy = walks.min; easy <= walks.max; easy += 1) {
      const hard = main / sets - easy;
      if (hard < 1) break;
      if (easy > BOUNDS.easyFine && easy % 2 !== 0) continue;
      yield { form: { kind: 'sets', sets, hard, easy }, main, hard: sets * hard, stretch: hard };
    }
  }
}

function* inRuns(main: Half, others: 1 | 2): Generator<Option> {
  for (let easy: Half = BOUNDS.between.min; easy <= BOUNDS.between.max; easy += 2) {
    const hard = main - others * easy;
    for (let other: Half = BOUNDS.other; other * (others + 1) <= hard; other += 2) {
      const first = hard - others * other;
      yield { form: { kind: 'runs', first, easy, others, other }, main, hard, stretch: first };
    }
  }
}

const on = (main: Half): Option => ({
  form: { kind: 'on', hard: main },
  main,
  hard: main,
  stretch: main,
});

function all(main: Half, arrive: Arrival): readonly Option[] {
  const sets = [...inSets(main)];
  if (arrive === 'mix') return sets.filter(({ hard }) => hard <= BOUNDS.mixShare * main);
  return arrive === 'walk'
    ? [...sets, on(main)]
    : [...sets, ...inRuns(main, 1), ...inRuns(main, 2), on(main)];
}

const known = new Map<string, readonly Option[]>();

/**
 * Every main set that ends with the others: of their length, or half a minute before it. Always in
 * the same order, by how much of it is hard.
 */
export function optionsOf(main: Half, arrive: Arrival): readonly Option[] {
  const key = `${arrive} ${main}`;
  // The same for every week, row and wish; a draft asks for each some hundred times.
  const found = known.get(key);
  if (found !== undefined) return found;
  const options = [...all(main, arrive), ...all(main - 1, arrive)].sort(
    (a, b) => a.hard - b.hard || b.main - a.main || a.stretch - b.stretch,
  );
  known.set(key, options);
  return options;
}

const step = (activity: Activity, halves: Half): Step => ({
  kind: 'step',
  duration: msOfHalf(halves),
  activity,
});

function mainOf(form: Form, hard: Activity): readonly Item[] {
  switch (form.kind) {
    case 'sets': {
      const items = [step(hard, form.hard), step('walk', form.easy)];
      return [{ kind: 'repeat', count: form.sets, items }];
    }
    case 'runs': {
      const other = [step('walk', form.easy), step(hard, form.other)];
      return [step(hard, form.first), ...Array.from({ length: form.others }, () => other).flat()];
    }
    case 'on':
      return [step(hard, form.hard)];
    case 'pinned':
      return [];
  }
}

/** The whole session: easy walk, main set, easy walk. */
export function planOf(option: Option, hard: Activity): Plan {
  const end = step('easy walk', BOUNDS.ends);
  return { 'warm-up': [end], main: mainOf(option.form, hard), 'cool-down': [end] };
}
