/** What programmes from outside are read and judged with, in a piece of its own. */
export { decide, ownId, placeOf } from '../domain/exchange/decide.ts';
export { findIn } from '../domain/exchange/find.ts';
export { incomingFromCode, incomingOf } from '../domain/exchange/incoming.ts';
export { collect, partsThere } from '../domain/exchange/parts.ts';
export { successionClaims } from '../domain/exchange/succession.ts';
export { fromUtf8 } from '../domain/exchange/utf8.ts';
export { readProgramme } from '../domain/programme/read.ts';
