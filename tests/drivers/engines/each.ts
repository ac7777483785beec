import { it } from 'vitest';
import type { Engine } from './tab.ts';
import { ENGINES, type Visit, visiting } from './visit.ts';

/** One test for each engine. */
export function eachEngine(
  title: string,
  job: (visit: Visit) => Promise<void>,
  engines: readonly Engine[] = ENGINES,
): void {
  for (const engine of engines) it(`${title}: ${engine.name}`, () => visiting(engine, title, job));
}
