import type { Programme } from '../programme/programme.ts';
import { readProgramme } from '../programme/read.ts';
import { fail, ok, type Result } from '../result.ts';
import { toBase64Url } from './base64url.ts';
import { isDeeper } from './depth.ts';
import { decodePacket } from './packet.ts';
import type { ExchangeProblem } from './problem.ts';
import { readSuccession, type Succession } from './succession.ts';
import { fromUtf8, toUtf8 } from './utf8.ts';

/** A signature that is there and has still to be verified, over exactly these bytes. */
export interface Claim {
  readonly key: string;
  readonly bytes: Uint8Array<ArrayBuffer>;
  /** base64url */
  readonly signature: string;
}

/** A programme that came in and can be read. What it claims of its sender is not yet verified. */
export interface Incoming {
  readonly programme: Programme;
  readonly claim?: Claim;
  readonly was: readonly Succession[];
}

const problem = (code: ExchangeProblem['code']): { readonly ok: false; error: ExchangeProblem } =>
  fail({ code });

/**
 * A programme from its text, with the signature that came with it. A signature beside a programme
 * that names no key is refused: nobody could have verified it.
 */
export function incomingOf(text: string, signature?: string): Result<Incoming, ExchangeProblem> {
  if (isDeeper(text)) return problem('programme');
  const read = readProgramme(text);
  if (!read.ok) {
    const [first] = read.error;
    if (first?.code === 'file-large') return problem('too-large');
    if (first?.code === 'file-version') return problem('newer');
    return fail({ code: 'programme', problems: read.error });
  }
  const programme = read.value;
  const key = programme.leader.sign;
  if (signature === undefined) return ok({ programme, was: [] });
  if (key === null) return problem('signature');
  const claim = { key, bytes: toUtf8(text), signature };
  return ok({ programme, claim, was: readSuccession(text) });
}

/** A programme from a code, through every bound. Never throws, whatever the code is. */
export function incomingFromCode(code: string): Result<Incoming, ExchangeProblem> {
  const packet = decodePacket(code);
  if (!packet.ok) return problem(packet.error);
  const { bytes, signature } = packet.value;
  const text = fromUtf8(bytes);
  if (!text.ok) return problem('damaged');
  return incomingOf(text.value, signature && toBase64Url(signature));
}
