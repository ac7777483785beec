import type { LeaderKeysPort } from '../../../src/app/exchange-ports.ts';
import { ownId } from '../../../src/domain/exchange/decide.ts';
import { decodeAnswer } from '../../../src/domain/exchange/packet.ts';
import type { AnswerProblem } from '../../../src/domain/exchange/problem.ts';
import type { Response } from '../../../src/domain/exchange/response.ts';
import { readResponse } from '../../../src/domain/exchange/response-bytes.ts';
import { fail, type Result } from '../../../src/domain/result.ts';

/**
 * What a participant told, from the code of a link, a symbol or a file. Nothing is stored and
 * nothing is thrown, whatever the code is.
 *
 * @param keys the leader's own; the private half does not leave it
 * @param programmeId where only the answers of one programme are wanted: its id on this phone
 */
export async function openResponse(
  code: string,
  keys: Pick<LeaderKeysPort, 'open'>,
  programmeId?: string,
): Promise<Result<Response, AnswerProblem>> {
  const sealed = decodeAnswer(code);
  if (!sealed.ok) return fail({ code: sealed.error });
  const opened = await keys.open(sealed.value);
  if (!opened.ok) return opened;
  const read = readResponse(opened.value);
  if (!read.ok) return fail({ code: read.error });
  const isOther = programmeId !== undefined && ownId(programmeId) !== read.value.programme.id;
  return isOther ? fail({ code: 'other-programme' }) : read;
}
