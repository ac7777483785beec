type Json = Readonly<Record<string, unknown>>;

/** A value as text in which the order of keys does not matter: the same for the same. */
export function canonical(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(canonical).join(',')}]`;
  if (typeof value !== 'object' || value === null) return JSON.stringify(value) ?? 'null';
  const fields = Object.entries(value)
    .filter(([, each]) => each !== undefined)
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([name, each]) => `${JSON.stringify(name)}:${canonical(each)}`);
  return `{${fields.join(',')}}`;
}

/** Whether two records say the same, in whatever order their keys stand. */
export const isSame = (a: unknown, b: unknown): boolean => canonical(a) === canonical(b);

/** The later in an order that both sides agree on, whichever is asked first. */
export const laterText = <T>(a: T, b: T): T => (canonical(a) >= canonical(b) ? a : b);

/** Compares lists of one length, of numbers and texts, place by place. */
export function compareStamps(
  a: readonly (number | string)[],
  b: readonly (number | string)[],
): number {
  const at = a.findIndex((value, n) => value !== b[n]);
  if (at < 0) return 0;
  const [one = '', other = ''] = [a[at], b[at]];
  return one > other ? 1 : -1;
}

/**
 * Two states of one thing, field by field: the newer one's, what only one has in any case. Of the
 * same age the fields are chosen by their text, so that both sides choose alike.
 *
 * @param order above 0: `a` is newer; below 0: `b` is
 */
export function mergeFields<T extends object>(a: T, b: T, order: number): T {
  const [newer, older] = order >= 0 ? [a, b] : [b, a];
  const fields = [...new Set([...Object.keys(newer), ...Object.keys(older)])].map((name) => {
    const [one, other] = [(newer as Json)[name], (older as Json)[name]];
    if (one === undefined || other === undefined) return [name, one ?? other] as const;
    return [name, order === 0 ? laterText(one, other) : one] as const;
  });
  return Object.fromEntries(fields.filter(([, value]) => value !== undefined)) as unknown as T;
}
