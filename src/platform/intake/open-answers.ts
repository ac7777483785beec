import type { IntakeBatch, IntakeSource, Left, LeftWhy } from '../../app/intake-contract.ts';
import { createAnswerFinder, type FoundAnswer } from '../../domain/exchange/find-answers.ts';
import { decodeAnswer } from '../../domain/exchange/packet.ts';
import type { Response } from '../../domain/exchange/response.ts';
import { readResponse } from '../../domain/exchange/response-bytes.ts';
import { fail, type Result } from '../../domain/result.ts';
import { openerFor, type SealPair } from '../keys/seal.ts';
import { piecesOf, sizeOf } from './pieces.ts';

/** Codes that are opened together: as many responses are on their way to the page at most. */
const BATCH = 100;
/** Letters of codes that are opened together. An honest code has about a thousand. */
const BATCH_LETTERS = 1024 * 1024;
/** Gone through without an answer before it is said how far it is. */
const QUIET = 2 * 1024 * 1024;

interface Waiting {
  readonly code: string;
  readonly from: string;
}

type Opener = ReturnType<typeof openerFor>;

/** One response from its code, through every bound. */
async function responseOf(code: string, open: Opener): Promise<Result<Response, LeftWhy>> {
  const sealed = decodeAnswer(code);
  // Programmes are left alone when they are found; what says it is one here is none.
  if (!sealed.ok) return fail(sealed.error === 'not-an-answer' ? 'damaged' : sealed.error);
  const opened = await open(sealed.value);
  // Without cryptography nothing is opened at all: the page has asked before.
  if (!opened.ok) return fail('not-for-this-key');
  return readResponse(opened.value);
}

const oneLeft = (why: LeftWhy, from: string, count = 1): Left => ({ why, count, from: [from] });

/** What has come together since the last batch. */
function createGathering(open: Opener) {
  let waiting: Waiting[] = [];
  let left: Left[] = [];
  let letters = 0;
  let found = 0;
  let quiet = 0;
  return {
    see(answer: FoundAnswer, from: string): void {
      found += 1;
      if (answer.kind !== 'code') left.push(oneLeft(answer.kind, from));
      else {
        waiting.push({ code: answer.code, from });
        letters += answer.code.length;
      }
    },
    leave: (why: LeftWhy, from: string, count: number) => void left.push(oneLeft(why, from, count)),
    pass(amount: number): void {
      quiet += amount;
    },
    isFull: () =>
      waiting.length + left.length >= BATCH || letters >= BATCH_LETTERS || quiet >= QUIET,
    /** Opens what waits, all at once: most of the time is spent in the browser's own threads. */
    async batch(share: number): Promise<IntakeBatch> {
      const [now, leftNow, foundNow] = [waiting, left, found];
      [waiting, left, letters, found, quiet] = [[], [], 0, 0, 0];
      const opened = await Promise.all(now.map(({ code }) => responseOf(code, open)));
      const responses: Response[] = [];
      const names: string[] = [];
      for (const [n, each] of opened.entries()) {
        const from = now[n]?.from ?? '';
        if (!each.ok) leftNow.push(oneLeft(each.error, from));
        else {
          responses.push(each.value);
          names.push(from);
        }
      }
      return { share, responses, from: names, left: leftNow, found: foundNow };
    },
  };
}

/**
 * Every answer in some sources, opened and checked, at most 100 at a time. Needs neither page nor
 * worker; the next batch is made when it is asked for.
 */
export async function* openAnswers(
  sources: readonly IntakeSource[],
  pair: SealPair,
): AsyncGenerator<IntakeBatch> {
  const finder = createAnswerFinder();
  const gathering = createGathering(openerFor(pair));
  const total = Math.max(
    1,
    sources.reduce((sum, source) => sum + sizeOf(source), 0),
  );
  let before = 0;
  let read = 0;
  const share = (): number => Math.min(1, read / total);

  for (const source of sources) {
    const { name } = source;
    for await (const piece of piecesOf(source)) {
      if (piece.kind === 'left') gathering.leave(piece.why, name, piece.count);
      else if (piece.kind === 'read') {
        read += piece.amount;
        gathering.pass(piece.amount);
      } else
        for (const answer of piece.kind === 'text' ? finder.push(piece.text) : finder.end()) {
          gathering.see(answer, name);
          if (gathering.isFull()) yield await gathering.batch(share());
        }
      if (gathering.isFull()) yield await gathering.batch(share());
    }
    before += sizeOf(source);
    read = before;
  }
  for (const answer of finder.finish()) gathering.see(answer, '');
  yield await gathering.batch(1);
}
