/** What programmes are read with, in a piece of its own: the first page stands without it. */
export { readProgramme } from '../domain/programme/read.ts';
export { DEMO_PROGRAMME_TEXT } from './demo/demo.ts';
