import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { findIn } from '../../../src/domain/exchange/find.ts';
import { joinLink, partLinks } from '../../../src/domain/exchange/link.ts';
import { CODE_MAX } from '../../../src/domain/exchange/packet.ts';
import { codeOf, newLeader } from '../../drivers/exchange/leader.ts';
import { marshProgramme } from '../../drivers/exchange/programmes.ts';

const BASE = 'https://club.example/app/';
const leader = newLeader();
const code = codeOf(leader, marshProgramme(6));
const link = joinLink(BASE, code);

/** The code broken into lines of some length, as mail programs do. */
const broken = (text: string, length: number, before = ''): string =>
  (text.match(new RegExp(`.{1,${length}}`, 'g')) ?? []).join(`\r\n${before}`);

const WAYS: Readonly<Record<string, string>> = {
  'the link alone': link,
  'the code alone': code,
  'in a message': `Hello all,\nweek one starts Monday! ${link}\nSee you at the hide, Imogen`,
  'at the end of a sentence': `Here it is: ${link}. Bring water.`,
  'in brackets': `(${link})`,
  'between angles': `<${link}>`,
  'quoted in an answer': `> Here it is:\n> ${broken(link, 70, '> ')}\n>\n> Imogen\nThanks!`,
  'in lines of 76': `${broken(link, 76)}\n\n-- \nImogen`,
  'in lines of 76 with a greeting behind': `${broken(link, 76)}\nThanks`,
  'with its # and / escaped': link.replace('#', '%23').replaceAll('/', '%2F'),
  'with hyphens made dashes': link.replaceAll('--', '\u2014'),
  'with marks where lines may break': broken(link, 20).replaceAll('\r\n', '\u200b'),
  'with something put behind it': `${link}?from=chat&x=1`,
  'after another link': `https://club.example/rota#/join/us and ${link}`,
  'after a damaged one': `${link.slice(0, -9)}\n\nsorry, again:\n\n${link}`,
};

describe('finding a programme in what was pasted', () => {
  it.each(Object.entries(WAYS))('XCHG-7 %s', (_, text) => {
    expect(findIn(text)).toEqual({ kind: 'code', code });
  });

  it('XCHG-7 whatever stands around it', () => {
    const words = fc.string({ unit: 'grapheme', maxLength: 200 });
    fc.assert(
      fc.property(words, words, (before, after) => {
        fc.pre(!before.trimStart().startsWith('{'));
        const found = findIn(`${before}\n${link}\n${after}`);
        expect(found).toEqual({ kind: 'code', code });
      }),
    );
  });

  it('XCHG-7 the parts of a code, however many are there', () => {
    const links = partLinks(BASE, code, 3);
    const found = findIn(`Two of them:\n${links[2]}\n${links[0]}.`);
    if (found.kind !== 'parts') throw new Error(found.kind);
    expect(found.parts.map(({ n, of }) => [n, of])).toEqual([
      [3, 3],
      [1, 3],
    ]);
  });

  it('XCHG-7 a programme file, with words around it or none', () => {
    const file = JSON.stringify(marshProgramme(4), null, 2);
    expect(findIn(file)).toEqual({ kind: 'file', text: file });
    expect(findIn(`Our programme:\n${file}\nImogen`)).toEqual({ kind: 'file', text: file });
  });

  it('XCHG-7 whatever begins as an object is a file, so that what is wrong with it can be told', () => {
    for (const text of ['{"title":"A mile"}', '{ not even JSON', ' \n{"a":1}\n'])
      expect(findIn(text)).toEqual({ kind: 'file', text });
  });

  it('XCHG-7 braces in a message are a file only where they say that they hold a programme', () => {
    const format = '"towpath-programme/1"';
    expect(findIn('see {this} at the hide')).toEqual({ kind: 'nothing' });
    expect(findIn(`see {"format":${format}} at the hide`)).toEqual({
      kind: 'file',
      text: `{"format":${format}}`,
    });
    for (const text of [`see ${format}`, `see } ${format} {`, `${format}}`, `see {${format}`])
      expect([text, findIn(text)]).toEqual([text, { kind: 'nothing' }]);
  });

  it('XCHG-4 a text may be as long as a code with 64 KiB of words around it', () => {
    expect(findIn(' '.repeat(CODE_MAX + 65_536))).toEqual({ kind: 'empty' });
    expect(findIn(' '.repeat(CODE_MAX + 65_537))).toEqual({ kind: 'too-large' });
  });

  it('XCHG-7 a link that was cut short is told as a code, so that its damage can be said', () => {
    expect(findIn(link.slice(0, -20))).toEqual({ kind: 'code', code: code.slice(0, -20) });
  });

  it('XCHG-7 nothing where there is nothing', () => {
    expect(findIn('See you on Sunday at the hide')).toEqual({ kind: 'nothing' });
    expect(findIn(' \n\t')).toEqual({ kind: 'empty' });
    expect(findIn('x'.repeat(400_000))).toEqual({ kind: 'too-large' });
  });

  it('XCHG-4 a text of nothing but beginnings of links is given up, not worked through', () => {
    const hostile = `/join/${'A'.repeat(60)} `.repeat(4500);
    expect(findIn(hostile)).toEqual({ kind: 'code', code: 'A'.repeat(60) });
    const lines = `/join/AR\n${'A\n'.repeat(150_000)}`;
    expect(findIn(lines)).toEqual({ kind: 'code', code: 'AR' });
  });
});
