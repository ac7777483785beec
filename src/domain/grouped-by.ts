/** Values by a key of theirs: keys in the order of their first value, values in their own. */
export function groupedBy<K, T>(all: Iterable<T>, keyOf: (value: T) => K): Map<K, T[]> {
  const groups = new Map<K, T[]>();
  for (const each of all) {
    const key = keyOf(each);
    const list = groups.get(key);
    if (list === undefined) groups.set(key, [each]);
    else list.push(each);
  }
  return groups;
}
