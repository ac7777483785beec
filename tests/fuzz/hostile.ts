import type { Random } from './random.ts';

/** Values that readers trip over. */
const VALUES: readonly ((random: Random) => unknown)[] = [
  () => null,
  () => '',
  () => [],
  () => ({}),
  () => true,
  () => -1,
  () => 0.1,
  () => 1e308,
  () => 2 ** 53,
  (random) => random.below(1000),
  () => '__proto__',
  () => '<img src=x onerror=alert(1)>',
  () => '\u202eevil\u0000',
  () => '\ud800',
  (random) => 'x'.repeat(random.below(5000)),
  (random) => '7 x ('.repeat(random.below(300)),
  () => '5 min easy walk; 50 x (50 x (2 h run)); 1 min walk',
  (random) => `${'9'.repeat(random.below(400))} min walk`,
  (random) => Array.from({ length: random.below(300) }, () => 'x'),
  (random) => `@deep ${random.below(20_000)}`,
];

/** Put in as text: what writes JSON runs out of room before what reads it does. */
const deepen = (text: string): string =>
  text.replace(/"@deep (\d+)"/g, (_, depth) => '['.repeat(depth) + ']'.repeat(depth));

type Json = unknown[] | Record<string, unknown>;

/** Every object and array in a value, itself included. */
function places(value: unknown, found: Json[] = []): Json[] {
  if (typeof value !== 'object' || value === null) return found;
  found.push(value as Json);
  for (const inner of Object.values(value)) places(inner, found);
  return found;
}

/** The JSON of an object with some of its values gone, doubled, swapped or made hostile. */
export function hostileJson(file: object, random: Random): string {
  const copy = structuredClone(file);
  for (let n = random.below(3) + 1; n > 0; n--) {
    const place = random.pick(places(copy)) as Record<string, unknown>;
    const keys = Object.keys(place);
    const key = keys.length > 0 ? random.pick(keys) : 'x';
    const way = random.below(5);
    if (way === 0) delete place[key];
    else if (way === 1) place[random.pick(['constructor', 'toString', 'x', '0'])] = place[key];
    else if (way === 2 && Array.isArray(place)) place.push(place[0]);
    else place[key] = random.pick(VALUES)(random);
  }
  const text = deepen(JSON.stringify(copy));
  const way = random.below(12);
  if (way === 0) return text.replace('{', '{"__proto__":{"polluted":true},');
  if (way === 1) return text.replace('"sessions":{', '"sessions":{"__proto__":"5 min walk",');
  if (way === 2) return text.replace('"revision":', '"revision":99,"revision":');
  if (way === 3) return '{"a":'.repeat(random.below(9000)) + text;
  return text;
}
