import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { crc32, crcBytes } from '../../../src/domain/exchange/crc32.ts';
import { findIn } from '../../../src/domain/exchange/find.ts';
import { ANSWER, fewestLinks, joinLink } from '../../../src/domain/exchange/link.ts';
import {
  ANSWER_HEAD,
  ANSWER_INFO,
  CODE_MAX,
  decodeAnswer,
  decodePacket,
  encodeAnswer,
  encodePacket,
} from '../../../src/domain/exchange/packet.ts';

const BASE = 'https://club.example/app/';
const latin = (bytes: Uint8Array): string => Buffer.from(bytes).toString('latin1');
const sealed = fc.uint8Array({ minLength: 100, maxLength: 1500 });

/** A code with these bytes in it, its checksum right. */
function codeOfBytes(...bytes: readonly number[]): string {
  const packet = Uint8Array.from(bytes);
  return Buffer.concat([packet, crcBytes(crc32(packet))]).toString('base64url');
}

describe('the code of an answer', () => {
  it('TELL-13 gives back the sealed bytes', () => {
    fc.assert(
      fc.property(sealed, (bytes) => {
        const read = decodeAnswer(encodeAnswer(bytes));
        expect(read.ok && latin(read.value)).toBe(latin(bytes));
      }),
    );
  });

  it('TELL-13 its seal is bound to what it always was, or none that is on its way would open', () => {
    expect(latin(ANSWER_INFO)).toBe('towpath-response/1');
    expect([...ANSWER_HEAD]).toEqual([1, 2]);
  });

  it('TELL-13 with any one bit flipped is told as damage', () => {
    const bytes = Buffer.from(encodeAnswer(new Uint8Array(120).fill(9)), 'base64url');
    for (let bit = 0; bit < bytes.length * 8; bit++) {
      const changed = Uint8Array.from(bytes);
      changed[bit >> 3] = (changed[bit >> 3] ?? 0) ^ (1 << (bit & 7));
      const code = Buffer.from(changed).toString('base64url');
      expect(decodeAnswer(code), `${bit}`).toEqual({ ok: false, error: 'damaged' });
    }
  });

  it('TELL-13 a programme is no answer and an answer is no programme, and newer kinds are told as that', () => {
    const programme = encodePacket({ bytes: Uint8Array.of(1) });
    const signed = encodePacket({ bytes: Uint8Array.of(1), signature: new Uint8Array(64) });
    const answer = encodeAnswer(Uint8Array.of(1));
    expect(decodeAnswer(programme)).toEqual({ ok: false, error: 'not-an-answer' });
    expect(decodeAnswer(signed)).toEqual({ ok: false, error: 'not-an-answer' });
    expect(decodePacket(answer)).toEqual({ ok: false, error: 'answer' });
    expect(decodeAnswer(codeOfBytes(1, 3, 9))).toEqual({ ok: false, error: 'newer' });
    expect(decodeAnswer(codeOfBytes(2, 2, 9))).toEqual({ ok: false, error: 'newer' });
    expect(decodeAnswer(codeOfBytes(1, 2))).toEqual({ ok: false, error: 'damaged' });
  });

  it('TELL-13 one that is empty, short or longer than an honest one is refused unread', () => {
    expect(decodeAnswer('')).toEqual({ ok: false, error: 'cut-short' });
    expect(decodeAnswer('AQI')).toEqual({ ok: false, error: 'cut-short' });
    expect(decodeAnswer('A'.repeat(CODE_MAX + 1))).toEqual({ ok: false, error: 'too-large' });
  });

  it('TELL-14 is found again in a message, whole or in parts, with words and quotes around it', () => {
    fc.assert(
      fc.property(sealed, (bytes) => {
        const code = encodeAnswer(bytes);
        const link = joinLink(BASE, code, ANSWER);
        expect(link).toBe(`${BASE}#/answer/${code}`);
        expect(findIn(`> Here it is:\n> ${link}.\n> Rosa`)).toEqual({ kind: 'code', code });
        const links = fewestLinks(BASE, code, 700, ANSWER) ?? [];
        expect(links.length).toBeGreaterThan(0);
        expect(links.every((each) => each.startsWith(`${BASE}#/answer/`))).toBe(true);
        const found = findIn(links.join('\n'));
        if (links.length === 1) expect(found).toEqual({ kind: 'code', code });
        else
          expect(found.kind === 'parts' && found.parts.map((part) => part.piece).join('')).toBe(
            code,
          );
      }),
    );
  });
});
