/** What programmes are read with, in a piece of its own: the first page stands without it. */
import type { Programme } from '../domain/programme/programme.ts';
import { readProgramme } from '../domain/programme/read.ts';
import { DEMO_PROGRAMME_TEXT } from './demo/demo.ts';

export { DEMO_PROGRAMME_TEXT, readProgramme };

let demo: readonly Programme[] | undefined;

/** The programme that the app starts with. Read once, so that it can be read ahead of its use. */
export function demoProgramme(): readonly Programme[] {
  if (demo === undefined) {
    const read = readProgramme(DEMO_PROGRAMME_TEXT);
    demo = read.ok ? [read.value] : [];
  }
  return demo;
}
