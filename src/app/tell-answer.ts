import { plainText, sealedMessage, sealedText } from '../copy/tell.ts';
import { ANSWER, fewestLinks, isLocalAddress, joinLink } from '../domain/exchange/link.ts';
import { decodeAnswer, encodeAnswer } from '../domain/exchange/packet.ts';
import type { Response } from '../domain/exchange/response.ts';
import { readResponse, responseBytes } from '../domain/exchange/response-bytes.ts';
import type { Programme } from '../domain/programme/programme.ts';
import { fail, ok, type Result } from '../domain/result.ts';
import type { ExchangePorts } from './exchange-ports.ts';
import { CODE_BYTES } from './exchange-sending.ts';
import type { Answer, AnswerProblem, PlainReason } from './tell-contract.ts';

type Ports = Pick<ExchangePorts, 'seal' | 'codes' | 'address' | 'store'>;

/**
 * Whether an answer can be sealed. The key of a programme that nobody signed may be anybody's: a
 * seal to it would promise what it does not keep.
 */
async function plainBecause(
  { id, leader }: Programme,
  store: Ports['store'],
): Promise<Result<PlainReason | undefined, AnswerProblem>> {
  if (leader.seal === null) return ok('no-key');
  const stored = await store.programmes();
  if (!stored.ok) return fail({ code: 'not-kept' });
  const isSigned = stored.value.some((each) => each.id === id && each.key !== undefined);
  return ok(isSigned ? undefined : 'unsigned');
}

/** Everything that a response can be sent as, sealed where there is a key that is vouched for. */
export async function answerOf(
  programme: Programme,
  response: Response,
  ports: Ports,
): Promise<Result<Answer, AnswerProblem>> {
  const bytes = responseBytes(response);
  if (!bytes.ok) return fail({ code: bytes.error });
  // Read back before it is handed out: what the leader's phone would refuse is never sent.
  if (!readResponse(bytes.value).ok) return fail({ code: 'content' });
  const plain = await plainBecause(programme, ports.store);
  if (!plain.ok) return plain;
  const base = {
    programmeId: programme.id,
    ids: response.entries.map(({ id }) => id),
    response,
    fileName: `${response.programme.id}-answer.txt`,
  };
  if (plain.value !== undefined) {
    const text = plainText(response, programme);
    return ok({ ...base, plain: plain.value, message: text, text, linkIsLocal: false, codes: [] });
  }
  const sealed = await sealedWays(programme, bytes.value, ports);
  return sealed.ok ? ok({ ...base, ...sealed.value }) : sealed;
}

type Ways = Pick<Answer, 'message' | 'text' | 'link' | 'linkIsLocal' | 'codes'>;

async function sealedWays(
  { title, leader }: Programme,
  bytes: Uint8Array<ArrayBuffer>,
  { seal, codes, address }: Ports,
): Promise<Result<Ways, AnswerProblem>> {
  const sealed = await seal(leader.seal ?? '', bytes);
  if (!sealed.ok) return fail({ code: sealed.error });
  const code = encodeAnswer(sealed.value);
  const whole = decodeAnswer(code);
  if (!whole.ok) return fail({ code: whole.error });
  const page = address();
  const link = joinLink(page, code, ANSWER);
  const links = fewestLinks(page, code, CODE_BYTES, ANSWER) ?? [];
  const drawn = await Promise.all(links.map((each) => codes.draw(each)));
  const going = { title, leader: leader.name, link };
  return ok({
    link,
    linkIsLocal: isLocalAddress(page),
    message: sealedMessage(going),
    text: sealedText(going),
    codes: drawn.flatMap((each) => each ?? []),
  });
}
