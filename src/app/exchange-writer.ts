/** What programmes are made ready to be sent with, in a piece of its own. */

export { backupWords, sendMessage, sendText } from '../copy/exchange.ts';
export { fromBase64Url } from '../domain/exchange/base64url.ts';
export { outgoingText, saysTheSame } from '../domain/exchange/compose.ts';
export { incomingFromCode, incomingOf } from '../domain/exchange/incoming.ts';
export { fewestLinks, isLocalAddress, joinLink } from '../domain/exchange/link.ts';
export { encodePacket } from '../domain/exchange/packet.ts';
export { toUtf8 } from '../domain/exchange/utf8.ts';
export { readProgramme } from '../domain/programme/read.ts';
