import type { ExchangeProblem } from '../domain/exchange/problem.ts';
import { fail, ok, type Result } from '../domain/result.ts';
import type { Sending, Sent } from './exchange-contract.ts';
import type { ExchangePorts } from './exchange-ports.ts';
import {
  encodePacket,
  fewestLinks,
  fromBase64Url,
  incomingFromCode,
  isLocalAddress,
  joinLink,
  sendMessage,
  sendText,
  toUtf8,
} from './exchange-writer.ts';

/** Bytes in a symbol of version 25 with correction M, byte mode: ISO/IEC 18004, table 7. */
export const CODE_BYTES = 997;

/**
 * Everything that a programme can be sent as. Before it is handed out it is read back the way a
 * participant's phone reads it, signature included.
 */
export async function sendingOf(
  { text, signature }: Pick<Sent, 'text' | 'signature'>,
  { verifier, codes, address }: Pick<ExchangePorts, 'verifier' | 'codes' | 'address'>,
): Promise<Result<Sending, ExchangeProblem>> {
  const signed = signature === '' ? undefined : fromBase64Url(signature);
  if (signed?.ok === false) return fail({ code: 'signature' });
  const code = encodePacket({ bytes: toUtf8(text), ...(signed && { signature: signed.value }) });
  const read = incomingFromCode(code);
  if (!read.ok) return read;
  const { programme, claim } = read.value;
  const right = claim === undefined ? undefined : await verifier.verify(claim);
  if (right?.ok === false) return fail({ code: right.error });
  if (right?.value === false || programme.text !== text) return fail({ code: 'signature' });
  const base = address();
  const link = joinLink(base, code);
  const going = {
    title: programme.title,
    leader: programme.leader.name,
    revision: programme.revision,
    signed: signed !== undefined,
    link,
    ...(programme.change === undefined ? {} : { change: programme.change }),
  };
  const links = fewestLinks(base, code, CODE_BYTES) ?? [];
  const drawn = await Promise.all(links.map((each) => codes.draw(each)));
  return ok({
    programmeId: programme.id,
    title: going.title,
    revision: going.revision,
    signed: going.signed,
    link,
    linkIsLocal: isLocalAddress(base),
    text: sendText(going),
    fileName: `${programme.id}-${programme.revision}.txt`,
    codes: drawn.flatMap((each) => each ?? []),
    message: sendMessage(going),
  });
}
