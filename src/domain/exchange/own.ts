/** Reading of JSON from outside: only what is an object's own, whatever its keys are called. */
export const isPlainObject = (value: unknown): value is object =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** What lies under a key of an object itself, never of its prototype. */
export const ownValue = (value: object, key: string): unknown =>
  Object.hasOwn(value, key) ? Reflect.get(value, key) : undefined;

/** What a text says as JSON; nothing where it is none. */
export function jsonIn(text: string): unknown {
  try {
    return JSON.parse(text) as unknown;
  } catch {
    return undefined;
  }
}
