import type { Part } from './plan.ts';

/** The part that a label names: hyphens, spaces and letter case do not matter. */
export function labelOf(words: string): Part | undefined {
  const plain = words.replace(/[\s-]+/g, '');
  if (plain === 'warmup') return 'warm-up';
  if (plain === 'main' || plain === 'mainset') return 'main';
  return plain === 'cooldown' ? 'cool-down' : undefined;
}

/** The label that other words for a part were meant as. */
export function nearestLabel(words: string): Part | undefined {
  if (/^warm-?\s?down/.test(words)) return 'cool-down';
  if (/^(wu$|w-u|warm|prep|begin|start|intro)/.test(words)) return 'warm-up';
  if (/^(cd$|c-d|cool|end|finish)/.test(words)) return 'cool-down';
  return /^(main|ms$|set|work|core|session)/.test(words) ? 'main' : undefined;
}
