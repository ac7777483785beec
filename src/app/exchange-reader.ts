/** What programmes from outside are read and judged with, in a piece of its own. */
export { apartId, decide, type Kept, placeOf, type Sender } from '../domain/exchange/decide.ts';
export { findIn } from '../domain/exchange/find.ts';
export {
  type Incoming,
  incomingFromCode,
  incomingOf,
} from '../domain/exchange/incoming.ts';
export { collect, type Parts, partsThere } from '../domain/exchange/parts.ts';
export { successionClaims } from '../domain/exchange/succession.ts';
export { fromUtf8 } from '../domain/exchange/utf8.ts';
export { readProgramme } from '../domain/programme/read.ts';
