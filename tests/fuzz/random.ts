/** Numbers that look random and are the same for the same seed: a case can be made again. */
export interface Random {
  /** A whole number from 0 to below `limit`. */
  below(limit: number): number;
  chance(share: number): boolean;
  pick<T>(list: readonly T[]): T;
  bytes(length: number): Uint8Array<ArrayBuffer>;
}

/** A 32-bit generator by Tommy Ettinger, known as mulberry32 (public domain, from memory). */
export function randomFrom(seed: number): Random {
  let state = seed >>> 0;
  const next = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
  const below = (limit: number): number => Math.floor(next() * limit);
  return {
    below,
    chance: (share) => next() < share,
    pick: (list) => {
      const picked = list[below(list.length)];
      if (picked === undefined) throw new Error('nothing to pick from');
      return picked;
    },
    bytes: (length) => Uint8Array.from({ length }, () => below(256)),
  };
}
