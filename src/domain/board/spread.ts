import type { Spread } from './board.ts';

/** In tenths: felt less target is a difference of tenths, and stays one. */
export const tenths = (value: number): number => Math.round(value * 10) / 10;

/**
 * A quantile of values in rising order, by linear interpolation between the two that it falls
 * between: definition 7 of Hyndman and Fan 1996, The American Statistician 50(4):361-5.
 *
 * @param ordered at least one
 * @param p 0 to 1
 */
export function quantile(ordered: readonly number[], p: number): number {
  const at = (ordered.length - 1) * p;
  const below = Math.floor(at);
  const [low = 0, high = low] = [ordered[below], ordered[below + 1]];
  return low + (high - low) * (at - below);
}

const inOrder = (values: readonly number[]): readonly number[] => [...values].sort((a, b) => a - b);

/** The middle of some values, in any order; nothing of none. */
export const medianOf = (values: readonly number[]): number | undefined =>
  values.length === 0 ? undefined : quantile(inOrder(values), 0.5);

/** How values lie, in any order; nothing of none. */
export function spreadOf(values: readonly number[]): Spread | undefined {
  if (values.length === 0) return undefined;
  const ordered = inOrder(values);
  return {
    count: ordered.length,
    least: quantile(ordered, 0),
    lower: quantile(ordered, 0.25),
    median: quantile(ordered, 0.5),
    upper: quantile(ordered, 0.75),
    most: quantile(ordered, 1),
  };
}
