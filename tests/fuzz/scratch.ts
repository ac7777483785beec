import type { Random } from './random.ts';

const SPECIAL = ['.', '-', '_', '=', '%', '#/join/', '\n', '\u200b', '{', '"', 'é', '\ud83e'];

/** A text with letters taken out, put in, doubled and changed. */
export function scratchText(text: string, random: Random): string {
  let out = text;
  for (let n = random.below(4) + 1; n > 0; n--) {
    const at = random.below(out.length + 1);
    const more = random.below(40);
    const way = random.below(5);
    if (way === 0) out = out.slice(0, at);
    else if (way === 1) out = out.slice(0, at) + out.slice(at + more);
    else if (way === 2) out = out.slice(0, at) + out.slice(at, at + more).repeat(3) + out.slice(at);
    else if (way === 3) out = out.slice(0, at) + random.pick(SPECIAL) + out.slice(at);
    else out = out.slice(0, at) + String.fromCharCode(33 + random.below(94)) + out.slice(at + 1);
  }
  return out;
}

/** Why nothing may be gone on with, when a case has reached what all objects share. */
export const polluted = (): string | undefined =>
  Object.keys(Object.prototype).length > 0 || 'polluted' in {} ? 'prototype changed' : undefined;
