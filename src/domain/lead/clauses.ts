import { type Phrase, SAY, sayActivity, sayDuration, sayGroups } from '../cues/phrases.ts';
import { type Ms, ms } from '../units.ts';
import type { LeadGroup, LeadPlan } from './lead-plan.ts';
import type { LeadChange } from './moments.ts';
import { type Clause, type Sentence, sentenceOf } from './sentence.ts';

/** Groups that are told the same. */
interface Told {
  readonly what: Phrase;
  readonly changes: LeadChange[];
}

/** "All groups" where they are all there are and more than one; else by their numbers. */
export function sayWho(groups: readonly LeadGroup[], { groups: all }: LeadPlan): Phrase {
  if (all.length > 1 && groups.length === all.length) return SAY.allGroups;
  return sayGroups(groups.map(({ number }) => number));
}

/** Words around the clauses of a change, for everybody. */
interface Around {
  readonly first?: Phrase | undefined;
  readonly last?: Phrase | undefined;
}

/**
 * What is said of changes, from the fullest form to the barest: lengths go first, then the words
 * before.
 *
 * @param changes at most one of each group, in the order of the groups
 */
export function* changeForms(
  changes: readonly LeadChange[],
  plan: LeadPlan,
  { first = [], last = [] }: Around,
  withLengths: boolean,
): Generator<Sentence> {
  const told = together(changes);
  const around = (clauses: readonly Clause[], start: Phrase): Sentence =>
    sentenceOf([...forAll(start), ...clauses, ...forAll(last)]);
  if (withLengths) yield around(withTheirLengths(told, plan), first);
  const bare = told.map((one) => clauseOf(one, plan));
  yield around(bare, first);
  if (first.length > 0 && bare.length > 0) yield around(bare, []);
}

const forAll = (what: Phrase): Clause[] => (what.length === 0 ? [] : [{ who: [], what }]);

/** Groups of the same activity together, in the order of the first of each. */
function together(changes: readonly LeadChange[]): Told[] {
  const found = new Map<string, Told>();
  for (const change of changes) {
    const what = whatOf(change);
    const same = found.get(what.join());
    if (same === undefined) found.set(what.join(), { what, changes: [change] });
    else same.changes.push(change);
  }
  return [...found.values()];
}

function whatOf({ before, after }: LeadChange): Phrase {
  if (after === undefined) return SAY.finished;
  const isSame = after.activity === before?.activity && after.effort === before.effort;
  return isSame ? SAY.carryOn : sayActivity(after.activity);
}

const clauseOf = ({ what, changes }: Told, plan: LeadPlan, length?: Phrase): Clause => ({
  who: sayWho(
    changes.map(({ group }) => group),
    plan,
  ),
  what,
  length,
});

/** With more to tell, lengths would keep the last group waiting for its word. */
const MOST_WITH_LENGTHS = 2;

/** Lengths once at the end where all share one, else with each clause whose groups share one. */
function withTheirLengths(told: readonly Told[], plan: LeadPlan): Clause[] {
  const shared = told.length > 1 ? sharedLength(told.flatMap(({ changes }) => changes)) : undefined;
  if (shared !== undefined) {
    const clauses = told.map((one) => clauseOf(one, plan));
    return [...clauses, { who: [], what: sayDuration(shared) }];
  }
  if (told.length > MOST_WITH_LENGTHS) return told.map((one) => clauseOf(one, plan));
  return told.map((one) => {
    const length = sharedLength(one.changes);
    return clauseOf(one, plan, length === undefined ? undefined : sayDuration(length));
  });
}

function sharedLength(changes: readonly LeadChange[]): Ms | undefined {
  const lengths = changes.map(({ after }) =>
    after === undefined ? undefined : ms(after.end - after.start),
  );
  return lengths.every((length) => length === lengths[0]) ? lengths[0] : undefined;
}
