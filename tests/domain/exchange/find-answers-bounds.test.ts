import { describe, expect, it } from 'vitest';
import { createAnswerFinder, type FoundAnswer } from '../../../src/domain/exchange/find-answers.ts';
import { createJoining } from '../../../src/domain/exchange/joining.ts';
import { ANSWER, joinLink, partLinks } from '../../../src/domain/exchange/link.ts';
import { CODE_MAX, encodeAnswer, encodePacket } from '../../../src/domain/exchange/packet.ts';
import { randomFrom } from '../../fuzz/random.ts';

const BASE = 'https://club.example/app/';
const random = randomFrom(20_270_309);
/** A code as sealed bytes make it: the first byte is that of a point in full (SEC 1, section 2.3.3). */
function sealed(length: number): string {
  const bytes = random.bytes(length);
  bytes[0] = 4;
  return encodeAnswer(bytes);
}

/** What is found in some texts, one after the other. */
function codesIn(texts: Iterable<string>): readonly string[] {
  const finder = createAnswerFinder();
  const found: FoundAnswer[] = [];
  for (const text of texts) found.push(...finder.push(text), ...finder.end());
  found.push(...finder.finish());
  return found.map((each) => (each.kind === 'code' ? each.code : each.kind));
}

describe('where a long text is cut into pieces', () => {
  const EVERY = 64 * 1024;
  const list = Array.from({ length: 46 }, () => sealed(300));
  /** Codes that begin at all multiples of 64 KiB, or so many letters off, each behind a letter. */
  const textWith = (before: string, off: number): string =>
    ' '.repeat(EVERY + off - 1) + list.map((code) => (before + code).padEnd(EVERY, ' ')).join('');
  const OFF = [-412, -300, -2, -1, 0, 1, 2];

  it.each(OFF)('IN-8 a code is found wherever it begins (%s)', (off) => {
    expect(codesIn([textWith('\n', off)])).toEqual(list);
  });

  it('IN-8 a line of a code that looks like a beginning is none, wherever the text is cut', () => {
    let code = '';
    let line = -1;
    while (line < 20 || code.length - line < 60) {
      code = sealed(300);
      line = code.indexOf('AQI', 20);
    }
    for (let begins = EVERY; begins < 40 * EVERY; begins += EVERY) {
      const before = ' '.repeat(begins - line - 1);
      const text = `${before}${code.slice(0, line)}\n${code.slice(line)}`.padEnd(46 * EVERY, ' ');
      expect([begins, codesIn([text])]).toEqual([begins, [code]]);
    }
  });

  it.each(OFF)('IN-8 and nowhere where a letter stands before it (%s)', (off) => {
    expect(codesIn([textWith('x', off)])).toEqual([]);
  });
});

describe('parts that wait', () => {
  /** Letters that begin as an answer does: whether they are one is asked when they are opened. */
  const big = (_: unknown, n = 0): string => `AQI${n}`.padEnd(200_000, 'A');
  const halves = (code: string) => partLinks(BASE, code, 2, ANSWER) as readonly [string, string];

  it('IN-11 beyond four million letters the oldest are given up, and counted as missing', () => {
    const codes = Array.from({ length: 45 }, big);
    const firsts = codes.map((code) => halves(code)[0]);
    const [oldest, newest] = [codes[0] as string, codes.at(-1) as string];
    const found = codesIn([...firsts, halves(newest)[1], halves(oldest)[1]]);
    // The newest is whole; of the oldest the second half waits now, and its first was lost.
    expect(found[0]).toBe(newest);
    expect(found.slice(1)).toEqual(Array.from({ length: codes.length }, () => 'part'));
  });

  it('IN-11 four million letters are kept to the letter', () => {
    const part = (name: string, which: number, length: number) =>
      joinLink(BASE, `${which}.2.whole${name}.${'A'.repeat(length)}`, ANSWER);
    // Sixteen times a quarter of 1,024 times 1,024 are just as many.
    const texts = (last: number) => [
      ...[...'abcdefghijklmno'].map((name) => part(name, 1, 262_144)),
      part('p', 1, last),
      part('a', 2, 9),
    ];
    // The oldest is still there, so that both halves meet, and are not what they say.
    expect(codesIn(texts(262_144))).toContain('damaged');
    expect(codesIn(texts(262_145))).not.toContain('damaged');
  });

  it('IN-11 what became whole takes no room any more', () => {
    const small = sealed(300);
    const [first, second] = halves(small);
    const between = Array.from({ length: 45 }, big);
    const texts = [first, ...between.flatMap(halves), second];
    expect(codesIn(texts)).toEqual([...between, small]);
  });

  it('IN-11 a part that comes again takes its room once', () => {
    const small = sealed(300);
    const [first, second] = halves(small);
    const [again] = halves(big(undefined));
    expect(codesIn([first, ...Array.from({ length: 45 }, () => again), second])).toEqual([
      small,
      'part',
    ]);
  });

  it('IN-10 parts behind the door of answers may be of a newer kind', () => {
    const newer = 'x'.repeat(200);
    expect(codesIn(partLinks(BASE, newer, 2, ANSWER))).toEqual([newer]);
  });
});

describe('how long a code may be', () => {
  it('IN-10 behind the door of answers it has 40 letters at least', () => {
    const link = (length: number) => joinLink(BASE, 'x'.repeat(length), ANSWER);
    expect(codesIn([link(39)])).toEqual([]);
    expect(codesIn([link(40)])).toEqual(['x'.repeat(40)]);
  });

  it('IN-10 one that is too long is told with one letter too many', () => {
    const long = 'x'.repeat(CODE_MAX + 100);
    expect(codesIn([joinLink(BASE, long, ANSWER)])).toEqual(['x'.repeat(CODE_MAX + 1)]);
  });

  it('IN-10 a programme is none, whatever its letters say further on', () => {
    let programme = '';
    while (!/.AQ[I-L]/.test(programme))
      programme = encodePacket({ bytes: random.bytes(3000), signature: random.bytes(64) });
    expect(codesIn([programme])).toEqual([]);
  });
});

describe('a code read line by line', () => {
  const joined = (...lines: readonly string[]) => {
    const joining = createJoining();
    const taken = lines.map((line) => joining.add(line));
    return { taken, isWhole: joining.isWhole(), code: joining.code() };
  };
  /** Of each number of letters behind the last four: none, two or three (RFC 4648, section 5). */
  const byRest = [0, 2, 3].map((rest) => {
    let code = sealed(60);
    while (code.length % 4 !== rest) code = sealed(60 + random.below(3));
    return code;
  });

  it('IN-8 is whole with its last letter, and not before', () => {
    for (const code of byRest) {
      expect(joined(code.slice(0, 30), code.slice(30))).toEqual({
        taken: [true, true],
        isWhole: true,
        code,
      });
      expect(joined(code.slice(0, -1)).isWhole).toBe(false);
    }
  });

  it('IN-8 is not whole with a letter that is none, nor with one too many', () => {
    for (const code of byRest) {
      expect(joined(code, '!')).toMatchObject({ taken: [true, false], isWhole: false });
      expect(joined(code, 'A').isWhole).toBe(false);
    }
  });

  it('IN-8 has no bits behind its last byte', () => {
    const LETTERS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_';
    for (const code of byRest.slice(1)) {
      const last = LETTERS.indexOf(code.at(-1) ?? '');
      const odd = `${code.slice(0, -1)}${LETTERS[last + 1]}`;
      // By Node's decoder it is the same bytes.
      expect(Buffer.from(odd, 'base64url')).toEqual(Buffer.from(code, 'base64url'));
      expect(joined(odd).isWhole).toBe(false);
    }
  });

  it('IN-11 is given up when it is longer than any code', () => {
    expect(joined('A'.repeat(CODE_MAX)).taken).toEqual([true]);
    expect(joined('A'.repeat(CODE_MAX), 'A').taken).toEqual([true, false]);
  });
});
