import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  answerProblem,
  answerWords,
  plainText,
  sealedMessage,
  sealedText,
} from '../../src/copy/tell.ts';
import { ANSWER_CODES } from '../../src/domain/exchange/problem.ts';
import { responseOf } from '../../src/domain/exchange/tell.ts';
import { ALL, entry, logs, teller, tellings } from '../drivers/exchange/answers.ts';
import { DEMO } from '../drivers/fake-app.ts';

describe('what is said of an answer', () => {
  it('TELL-18 every reason has a sentence of its own', () => {
    const all = ANSWER_CODES.map((code) => answerProblem({ code }));
    for (const sentence of all) expect(sentence).toMatch(/^[A-Z][^<>]{20,200}\.$/);
    expect(new Set(all).size).toBe(all.length);
  });

  it('TELL-22 a session in plain words is all that is in it', () => {
    const log = [
      {
        ...entry({
          id: 'one',
          group: 'teal',
          feeling: {
            effort: 7,
            effortLater: 6,
            warningSign: true,
            niggle: { place: 'knee', side: 'left', severity: 2 },
            note: 'Wind\non the sea wall',
          },
        }),
        activeSeconds: 1920,
      },
    ];
    const response = responseOf(teller(log), { ids: ['one'], ...ALL, name: 'Rosa' });
    expect(answerWords(response, DEMO)).toMatchObject({
      who: ['Name: Rosa.', 'Group: Wren.'],
      leftOut: 'No session is left out.',
      sessions: [
        {
          title: 'Mon, 1 March 2027, 17:30',
          lines: [
            'Week 1, session 1. 31 min done, 32 min moving.',
            'With group teal.',
            'Felt 7 of 10: a few words at a time.',
            'Later it felt 6 of 10: whole sentences, breath deeper.',
            'Meant to be 5.',
            'Warning sign: felt a sign to stop.',
            'Niggle: Knee, left, changed how I moved.',
            'Note: “Wind\non the sea wall”',
          ],
        },
      ],
    });
  });

  it('TELL-22 nothing that is in an answer is missing from its words', () => {
    const told = logs.chain((log) => tellings(log).map((telling) => ({ log, telling })));
    fc.assert(
      fc.property(told, ({ log, telling }) => {
        const response = responseOf(teller(log), telling);
        const words = answerWords(response, DEMO);
        const all = [words.who, words.behind, ...words.sessions.map(({ lines }) => lines)]
          .flat()
          .join('\n');
        if (response.name !== undefined) expect(all).toContain(response.name);
        response.entries.forEach((each, n) => {
          const said = words.sessions[n]?.lines.join('\n') ?? '';
          expect(said.includes('Note:')).toBe(each.note !== undefined);
          if (each.note !== undefined) expect(said).toContain(each.note);
          expect(said.includes('Niggle:')).toBe(each.niggle !== undefined);
          expect(said.includes('Warning sign:')).toBe(each.warningSign === true);
          expect(said.includes('Felt ')).toBe(each.effort !== undefined);
          expect(said.includes('Later it felt')).toBe(each.effortLater !== undefined);
          expect(said.includes('With group')).toBe(each.group !== undefined);
          expect(all).toContain(each.zone);
        });
      }),
    );
  });

  it('TELL-15, TELL-19 names, titles and notes cannot add lines of their own', () => {
    const log = [entry({ id: 'one', feeling: { note: 'one\ntwo\u2028three' } })];
    const response = responseOf(teller(log), { ids: ['one'], ...ALL, name: 'Rosa\nx' });
    const about = { ...DEMO, title: 'Six\nweeks', leader: { name: 'Imo\r\ngen' } };
    const lines = plainText(response, about).split(/[\n\r\u2028]/);
    expect(lines).toHaveLength(7);
    expect(lines[0]).toContain('To Imo gen, about “Six weeks”');
    const going = {
      title: about.title,
      leader: about.leader.name,
      link: 'https://club.example/#/answer/AQI',
    };
    expect(sealedMessage(going).split('\n')).toHaveLength(2);
    expect(sealedText(going).split(/[\n\r]/)).toHaveLength(5);
  });
});
