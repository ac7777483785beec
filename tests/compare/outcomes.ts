import type fc from 'fast-check';

/** What a folder of rules gives for an input made by chance, as far as anybody outside can tell. */
export interface Outcomes<Rules, Input> {
  readonly inputs: fc.Arbitrary<Input>;
  /** @param root of a copy of `src/domain` */
  load(root: string): Promise<Rules>;
  /** Something that JSON can write. */
  of(rules: Rules, input: Input): unknown;
}

/** Outcomes without its types: what is loaded is a copy, which no type knows. */
export const outcomes = <Rules, Input>(each: Outcomes<Rules, Input>): Outcomes<unknown, unknown> =>
  each as unknown as Outcomes<unknown, unknown>;
