/** A member of the later list, and where it stood in the earlier one. */
export interface Pair {
  readonly was: number;
  readonly now: number;
}

/** Two lists side by side, by places from 0. */
export interface Alignment {
  /** The same in both. */
  readonly same: readonly Pair[];
  /** Between the same neighbours, but changed. */
  readonly changed: readonly Pair[];
  readonly added: readonly number[];
  readonly removed: readonly number[];
}

/** Lengths of the longest common subsequences of all ends of two lists. */
function commonOf(before: readonly string[], now: readonly string[]): readonly number[][] {
  const table = Array.from({ length: before.length + 1 }, () =>
    Array.from({ length: now.length + 1 }, () => 0),
  );
  const at = (i: number, j: number): number => table[i]?.[j] ?? 0;
  for (let i = before.length - 1; i >= 0; i -= 1) {
    for (let j = now.length - 1; j >= 0; j -= 1) {
      const row = table[i] ?? [];
      row[j] = before[i] === now[j] ? at(i + 1, j + 1) + 1 : Math.max(at(i + 1, j), at(i, j + 1));
    }
  }
  return table;
}

/**
 * Which members of a list stayed when it became another: the longest common subsequence (Wagner
 * and Fischer 1974). What lies between two that stayed is paired in order, as changed; what is
 * left over was added or removed.
 */
export function align(before: readonly string[], now: readonly string[]): Alignment {
  const table = commonOf(before, now);
  const at = (i: number, j: number): number => table[i]?.[j] ?? 0;
  const result = { same: [], changed: [], added: [], removed: [] } as {
    same: Pair[];
    changed: Pair[];
    added: number[];
    removed: number[];
  };
  let gone: number[] = [];
  let come: number[] = [];
  const close = (): void => {
    const pairs = Math.min(gone.length, come.length);
    for (let n = 0; n < pairs; n += 1)
      result.changed.push({ was: gone[n] as number, now: come[n] as number });
    result.removed.push(...gone.slice(pairs));
    result.added.push(...come.slice(pairs));
    gone = [];
    come = [];
  };
  let [i, j] = [0, 0];
  while (i < before.length || j < now.length) {
    if (i < before.length && j < now.length && before[i] === now[j]) {
      close();
      result.same.push({ was: i, now: j });
      i += 1;
      j += 1;
    } else if (j >= now.length || (i < before.length && at(i + 1, j) >= at(i, j + 1))) {
      gone.push(i);
      i += 1;
    } else {
      come.push(j);
      j += 1;
    }
  }
  close();
  return result;
}
