import { describe, expect, it } from 'vitest';
import { exchangeProblem, keyProblem, sendMessage, sendText } from '../../src/copy/exchange.ts';
import { EXCHANGE_CODES, KEY_CODES } from '../../src/domain/exchange/problem.ts';

describe('what is said', () => {
  it('XCHG-16 every reason has a sentence of its own', () => {
    const all = [
      ...EXCHANGE_CODES.map((code) => exchangeProblem({ code })),
      ...KEY_CODES.map((code) => keyProblem({ code })),
    ];
    for (const sentence of all) expect(sentence).toMatch(/^[A-Z][^<>]{20,200}\.$/);
    expect(new Set(all).size).toBe(all.length);
  });

  it('XCHG-16 the first mistake in a programme is said with its place', () => {
    const problems = [{ code: 'monday', path: 'startDate' }] as const;
    expect(exchangeProblem({ code: 'programme', problems })).toContain(
      'startDate: The start is not a Monday.',
    );
  });

  it('XCHG-21 names and changes cannot add lines of their own', () => {
    const going = {
      title: 'Six weeks\nhttps://elsewhere.example',
      leader: 'Imogen\u2028x',
      revision: 2,
      signed: true,
      change: 'Less\r\nof it',
      link: 'https://club.example/#/join/AR',
    };
    expect(sendText(going).split(/[\n\r\u2028]/)).toEqual([
      'A walking and running programme for the Towpath app: “Six weeks https://elsewhere.example”, revision 2, from Imogen x.',
      'What changed: Less of it',
      expect.stringContaining('open the link on your phone'),
      '',
      going.link,
      '',
    ]);
    expect(sendMessage(going).split('\n')).toEqual([
      'Six weeks https://elsewhere.example, revision 2. Less of it',
      going.link,
    ]);
  });
});
