/** The short programme of the fixtures. */
import { read } from './tree.ts';

/** Its text, as a file holds it. */
export const MARSH_MILE = read('tests/fixtures/programmes/marsh-mile.json');

/** The same with a session of one's own: the first of Wren's first week, which is then its only one. */
export function marshMileWith(session: string): string {
  const whole = JSON.parse(MARSH_MILE);
  whole.weeks[0].sessions.wren = session;
  return JSON.stringify(whole);
}
