import type fc from 'fast-check';

/** What a folder of rules gives for an input made by chance, as far as anybody outside can tell. */
export interface Outcomes<Rules, Input> {
  /** Modules below `src/domain`, whose exports together are the rules. */
  readonly parts: readonly string[];
  readonly inputs: fc.Arbitrary<Input>;
  /** Something that JSON can write. */
  of(rules: Rules, input: Input): unknown;
}

/** Outcomes of any rules for any input, to be kept beside others. */
export type AnyOutcomes = Outcomes<unknown, unknown>;

/** Forgets the types: rules come from a copy, which no type knows. */
export const outcomes = <Rules, Input>(each: Outcomes<Rules, Input>): AnyOutcomes =>
  each as unknown as AnyOutcomes;
