import { BARE, codeAt, LINK, tidy, withoutStops } from './code-text.ts';
import type { Part } from './link.ts';
import { CODE_MAX } from './packet.ts';
import { collect, type Parts, readPart } from './parts.ts';

/**
 * What stands in a text: the code of an answer, as it was made or so that what is wrong with it can
 * be told; parts that together are not the code that they say; or, when all is over, one for each
 * code of which parts are missing.
 */
export type FoundAnswer =
  | { readonly kind: 'code'; readonly code: string }
  | { readonly kind: 'damaged' }
  | { readonly kind: 'part' };

/** Letters that are looked at in one go. */
const STRIDE = 1024 * 1024;
/** Letters behind the beginning of a code that are there before it is read: itself, and its breaks. */
const AHEAD = 2 * CODE_MAX;
/** Letters that may be looked at for joining lines: at most so many, and this many more for each letter passed. */
const WORK_MAX = 4 * 1024 * 1024;
const WORK_PER_LETTER = 4;
/** Letters of parts that wait for others. The oldest are given up. */
const PARTS_WAIT_MAX = 4 * 1024 * 1024;

/** Both ways in which a code stands in a text, in the order in which they come. */
const START = new RegExp(`${LINK.source}|${BARE.source}`, 'gi');
/** Version 1 and what it holds, as a code's first letters say it. */
const ANSWER = /^AQ[I-L]/;
const PROGRAMME = /^A[QR][E-H]/;
/** Behind a door that says answer a short word is somebody's own address. */
const SHORTEST = 40;

/** Looks for answers in texts that come in pieces. Nothing of a text is kept but what waits. */
export interface AnswerFinder {
  /** The next piece of a text. */
  push(piece: string): Generator<FoundAnswer>;
  /** The text is over; another may begin. */
  end(): Generator<FoundAnswer>;
  /** No text follows: of these codes parts are missing. */
  finish(): Generator<FoundAnswer>;
}

/** Parts of codes from all texts, until the others come. */
function createWaiting() {
  const waiting = new Map<string, Parts>();
  const complete = new Set<string>();
  let letters = 0;
  let lost = 0;

  const size = ({ pieces }: Parts): number =>
    Object.values(pieces).reduce((sum, piece) => sum + piece.length, 0);

  function forget(name: string): void {
    const parts = waiting.get(name);
    if (parts === undefined) return;
    letters -= size(parts);
    waiting.delete(name);
  }

  return {
    /** @returns the code, `damaged`, or nothing where parts are missing or it was there before */
    add(part: Part): string | 'damaged' | undefined {
      const name = `${part.of}.${part.whole}`;
      if (complete.has(name)) return undefined;
      const collected = collect(waiting.get(name), part);
      forget(name);
      if (collected.kind === 'damaged') return 'damaged';
      if (collected.kind === 'complete') {
        complete.add(name);
        return collected.code;
      }
      waiting.set(name, collected.parts);
      letters += size(collected.parts);
      for (const [oldest] of waiting) {
        if (letters <= PARTS_WAIT_MAX) break;
        forget(oldest);
        lost += 1;
      }
      return undefined;
    },
    missing: (): number => waiting.size + lost,
  };
}

/**
 * Finds every answer in texts of any length, each code once in a text: time grows with the length,
 * and memory does not. Programmes are left alone.
 */
export function createAnswerFinder(): AnswerFinder {
  const waiting = createWaiting();
  let text = '';
  let at = 0;
  let seen = new Set<string>();
  const work = { left: WORK_MAX };

  function* told(code: string): Generator<FoundAnswer> {
    if (seen.has(code)) return;
    seen.add(code);
    yield { kind: 'code', code };
  }

  function* ofPart(part: Part): Generator<FoundAnswer> {
    const code = waiting.add(part);
    if (code === 'damaged') yield { kind: 'damaged' };
    else if (code !== undefined && isAnswer(code, true)) yield* told(code);
  }

  /** @returns where to go on */
  function* ofStart(match: RegExpExecArray): Generator<FoundAnswer, number> {
    const [all, door, linked] = match;
    const after = match.index + all.length;
    const isOurs = door?.toLowerCase() === 'answer';
    // Without a door the case of the first letters counts: they say what it is.
    if (door === undefined && !/^A[QR]/.test(all)) return after;
    const letters = linked ?? all;
    const part = readPart(withoutStops(letters));
    if (part !== undefined) {
      if (isOurs) yield* ofPart(part);
      return after;
    }
    // A code has no full stop in it: the next sentence may follow without a space.
    const [first = ''] = letters.split('.', 1);
    const whole = codeAt(text, first, after - letters.length + first.length, work);
    if (whole !== undefined) {
      if (isAnswer(whole.code, isOurs)) yield* told(whole.code);
      return whole.end;
    }
    const isLong = first.length >= SHORTEST;
    if (isAnswer(first, isOurs) && (isLong || ANSWER.test(first)))
      yield* told(first.slice(0, CODE_MAX + 1));
    return after;
  }

  /** @param until codes that begin from there on wait for what follows */
  function* scan(until: number): Generator<FoundAnswer> {
    for (;;) {
      START.lastIndex = at;
      const match = START.exec(text);
      const next = Math.min(match?.index ?? until, until);
      work.left = Math.min(WORK_MAX, work.left + WORK_PER_LETTER * Math.max(0, next - at));
      if (match === null || match.index >= until) break;
      at = yield* ofStart(match);
    }
    at = Math.max(at, until);
    // The letter before says whether a code begins.
    const kept = Math.max(0, at - 1);
    text = text.slice(kept);
    at -= kept;
  }

  return {
    *push(piece) {
      for (let from = 0; from < piece.length; from += STRIDE) {
        text += tidy(piece.slice(from, from + STRIDE));
        if (text.length - at >= AHEAD + STRIDE) yield* scan(text.length - AHEAD);
      }
    },
    *end() {
      yield* scan(text.length);
      text = '';
      at = 0;
      seen = new Set();
    },
    *finish() {
      for (let n = waiting.missing(); n > 0; n--) yield { kind: 'part' };
    },
  };
}

/** @param isOurs it stood behind the door of answers, where newer kinds may come in time */
const isAnswer = (code: string, isOurs: boolean): boolean =>
  ANSWER.test(code) || (isOurs && !PROGRAMME.test(code));
