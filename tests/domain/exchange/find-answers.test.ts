import { crc32 as crcOf } from 'node:zlib';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createAnswerFinder, type FoundAnswer } from '../../../src/domain/exchange/find-answers.ts';
import { ANSWER, joinLink, partLinks } from '../../../src/domain/exchange/link.ts';
import { encodeAnswer, encodePacket } from '../../../src/domain/exchange/packet.ts';
import { randomFrom } from '../../fuzz/random.ts';

const BASE = 'https://club.example/app/';
const random = randomFrom(20_270_307);
/** Every answer in one text, with anything around it, each once. */
function* answersIn(text: string): Generator<FoundAnswer> {
  const finder = createAnswerFinder();
  yield* finder.push(text);
  yield* finder.end();
  yield* finder.finish();
}

/** A code as sealed bytes make it: the first byte is that of a point in full (SEC 1, section 2.3.3). */
const sealed = (length = 300): string => encodeAnswer(Uint8Array.of(4, ...random.bytes(length)));
const link = (code: string): string => joinLink(BASE, code, ANSWER);
const programme = encodePacket({ bytes: random.bytes(400), signature: random.bytes(64) });

const codes = (text: string): readonly string[] =>
  [...answersIn(text)].map((found) => (found.kind === 'code' ? found.code : found.kind));

const broken = (text: string, length: number, before = ''): string =>
  (text.match(new RegExp(`.{1,${length}}`, 'g')) ?? []).join(`\r\n${before}`);

const [one, two, three] = [sealed(), sealed(), sealed(700)] as [string, string, string];

/** A group's chat as it is exported, with a date and a name before each message. */
const CHAT = `06/03/2027, 18:02 - Imogen: Week one is here! ${joinLink(BASE, programme)}
06/03/2027, 18:10 - Rosa: Done, windy out there ${link(one)}
06/03/2027, 18:11 - Tamsin: same here:
${link(two)}
06/03/2027, 18:40 - Imogen: > ${link(two)}
well done both, see https://club.example/faq/answer/12 for parking
07/03/2027, 09:00 - Perran: ${link(three)}
`;

const WAYS: Readonly<Record<string, string>> = {
  'a link': link(one),
  'the code alone': one,
  'at the end of a sentence': `Here: ${link(one)}. See you.`,
  'with the next sentence right behind it': `${link(one)}.See you.`,
  'between angles': `<${link(one)}>`,
  'in lines of 76': `${broken(link(one), 76)}\n\n-- \nRosa`,
  'quoted in an answer': `> Done:\n> ${broken(link(one), 70, '> ')}\n>\n> Rosa\nWell done!`,
  'quoted twice': `> > ${broken(link(one), 66, '> > ')}`,
  'quoted with bars': `| Done:\n| ${broken(link(one), 70, '| ')}\n|\n| Rosa`,
  'in lines of 76, and in brackets': `(${broken(link(one), 76)})`,
  'in lines with an empty one between them': broken(link(one), 80, '\r\n'),
  'in a mail’s soft line breaks': link(one).replace(/.{60}/g, '$&=\r\n'),
  'with its # and / escaped': link(one).replace('#', '%23').replaceAll('/', '%2F'),
  'in JSON with its slashes escaped': JSON.stringify({ text: link(one) }).replaceAll('/', '\\/'),
  'in JSON with words behind a line end': JSON.stringify({ text: `${link(one)}\nThanks` }),
  'with soft hyphens': broken(link(one), 20).replaceAll('\r\n', '\u00ad'),
  'with marks without width': broken(link(one), 20).replaceAll('\r\n', '\u200b'),
  'behind the door of programmes': joinLink(BASE, one),
  'with something put behind it': `${link(one)}?from=chat&x=1`,
};

describe('answers in a text', () => {
  it.each(Object.entries(WAYS))('IN-8 %s', (_, text) => {
    expect(codes(text)).toEqual([one]);
    expect(codes(`Hello all\n${text}\nbye`)).toEqual([one]);
  });

  it('IN-8 every one of a whole chat, in order and each once; programmes are left alone', () => {
    expect(codes(CHAT)).toEqual([one, two, three]);
    expect(
      codes(`${joinLink(BASE, programme)} ${programme} ${joinLink(BASE, programme, ANSWER)}`),
    ).toEqual([]);
  });

  it('IN-8 whatever stands around them, and wherever a piece of the text ends', () => {
    const words = fc.string({ unit: 'grapheme', maxLength: 60 });
    fc.assert(
      fc.property(fc.array(words, { minLength: 4, maxLength: 4 }), fc.nat(900), (around, cut) => {
        const [a = '', b = '', c = '', d = ''] = around;
        const text = `${a}\n${link(one)}\n${b}\n${broken(link(two), 76)}\n\n.${c}\n${link(three)}\n${d}`;
        expect(codes(text)).toEqual([one, two, three]);
        const finder = createAnswerFinder();
        const found: FoundAnswer[] = [];
        for (const piece of [text.slice(0, cut), text.slice(cut)])
          found.push(...finder.push(piece));
        found.push(...finder.end(), ...finder.finish());
        expect(found.map((each) => each.kind === 'code' && each.code)).toEqual([one, two, three]);
      }),
    );
  });

  it('IN-8 in megabytes of talk, across the places at which they are cut', () => {
    const line = '07/03/2027, 09:00 - Perran: Ich bin an der Schleuse 🦆, see you there\n';
    const list = Array.from({ length: 60 }, () => sealed(120 + random.below(1200)));
    const talk = list
      .map((code) => line.repeat(random.below(2500)) + broken(link(code), 76))
      .join('\n\n');
    expect(talk.length).toBeGreaterThan(3_000_000);
    expect(codes(talk)).toEqual(list);
  });

  it('IN-8 two hyphens that a keyboard made one dash of are two hyphens again', () => {
    let hyphens = sealed();
    while (!hyphens.includes('--')) hyphens = sealed();
    for (const dash of ['\u2013', '\u2014']) {
      const text = hyphens.replaceAll('--', dash);
      expect(text).not.toBe(hyphens);
      expect(codes(text)).toEqual([hyphens]);
      expect(codes(link(text))).toEqual([hyphens]);
    }
  });

  it('IN-8 lines are joined only where nothing else stands on them', () => {
    const [head, rest] = [one.slice(0, 60), one.slice(60)] as [string, string];
    const torn: Readonly<Record<string, string>> = {
      'a sign before the line’s end': `${head}!\n${rest}`,
      'an equals sign that breaks no line': `${head}=${rest}`,
      'no line’s end at all': `${head}>${rest}`,
      'words behind it': `${head}\n${rest}+more`,
      'words before it': `${head}\nso: ${rest}`,
    };
    for (const [what, text] of Object.entries(torn))
      expect([what, codes(text)[0]]).toEqual([what, head]);
    expect(codes(`${head}\n${rest}`)).toEqual([one]);
    for (const behind of ['.', ',', ';', ':', '!', ')', '>', ']', '"', "'", '=', ' ', '\n'])
      expect([behind, codes(`${head}\n${rest}${behind}`)]).toEqual([behind, [one]]);
  });

  it('IN-9 the parts of a code in any order, with anything between them, are one answer', () => {
    const [a, b, c] = partLinks(BASE, three, 3, ANSWER);
    expect(codes(`${c} and ${a}.\n${link(one)}\n${b} ${a}`)).toEqual([one, three]);
  });

  it('IN-9 also where they stand in several texts', () => {
    const finder = createAnswerFinder();
    const found = partLinks(BASE, three, 4, ANSWER).flatMap((part) => [
      ...finder.push(part),
      ...finder.end(),
    ]);
    expect([...found, ...finder.finish()]).toEqual([{ kind: 'code', code: three }]);
  });

  it('IN-9 missing parts count once for each code, parts of programmes not at all', () => {
    const [a, b] = partLinks(BASE, three, 3, ANSWER);
    const [c] = partLinks(BASE, two, 2, ANSWER);
    const [other] = partLinks(BASE, programme, 2);
    expect(codes(`${a} ${b} ${c} ${other}`)).toEqual(['part', 'part']);
  });

  it('IN-9 parts that together are not their code are told as damaged', () => {
    const [a = '', b = ''] = partLinks(BASE, two, 2, ANSWER);
    expect([...answersIn(`${a} ${b.slice(0, -3)}`)]).toEqual([{ kind: 'damaged' }]);
  });

  it('IN-10 what is cut short is found as it stands, so that its damage can be said', () => {
    expect(codes(link(one).slice(0, -20))).toEqual([one.slice(0, -20)]);
    expect(codes(one.slice(0, 60))).toEqual([one.slice(0, 60)]);
    expect(codes(link(`${one.slice(0, 40)}.${one.slice(40)}`))[0]).toBe(one.slice(0, 40));
  });

  it('IN-10 behind the door of programmes only what begins as an answer is one, however long', () => {
    const long = 'x'.repeat(60);
    expect(codes(joinLink(BASE, long))).toEqual([]);
    expect(codes(link(long))).toEqual([long]);
    expect(codes(link('x'.repeat(20)))).toEqual([]);
    // A programme's first letters further on say nothing.
    expect(codes(link(`${'x'.repeat(40)}AQE${long}`))).toEqual([`${'x'.repeat(40)}AQE${long}`]);
  });

  it('IN-10 an address that only looks like a door is nobody’s answer', () => {
    expect(codes('https://club.example/help/answer/1234 and /answer/yes/answer/no')).toEqual([]);
  });

  it('IN-10 one that is whole and of a newer version is found', () => {
    const bytes = Buffer.from(one, 'base64url');
    expect(bytes[0]).toBe(1);
    const newer = encodeAnswer(random.bytes(80));
    const packet = Buffer.from(newer, 'base64url');
    packet[0] = 2;
    const sum = Buffer.alloc(4);
    // Of the IEEE 802.3 polynomial, by Node's zlib.
    sum.writeUInt32BE(crcOf(packet.subarray(0, -4)));
    const code = Buffer.concat([packet.subarray(0, -4), sum]).toString('base64url');
    expect(codes(link(code))).toEqual([code]);
  });
});
