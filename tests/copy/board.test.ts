import { describe, expect, it } from 'vitest';
import {
  calledOf,
  cellSaid,
  gapText,
  gapWords,
  LOOK,
  numberOf,
  tellingSentence,
} from '../../src/copy/board.ts';
import { DUE_TITLE, firstName, reasonSentence, wordDraft } from '../../src/copy/board-due.ts';
import {
  clubMessage,
  groupMessage,
  lastWeek,
  type MessageAbout,
} from '../../src/copy/board-message.ts';
import { suggestionSaid } from '../../src/copy/board-next.ts';
import { boardOf } from '../../src/domain/board/board-of.ts';
import { LOOKS } from '../../src/domain/board/cells.ts';
import { DUE_CODES, type DueReason } from '../../src/domain/board/due.ts';
import type { Heard } from '../../src/domain/board/heard.ts';
import { WAYS, type WayReason } from '../../src/domain/board/next-week.ts';
import { boardInput, HERON, member, on, type Told } from '../domain/board/members.ts';

const DETAIL: Readonly<Record<(typeof DUE_CODES)[number], DueReason['detail']>> = {
  sign: { date: on(2, 2), times: 1, since: 2 },
  'niggle-again': { place: 'knee', side: 'left', times: 2, days: 14, date: on(2, 2) },
  niggle: { place: 'shin', severity: 3, date: on(2, 2) },
  harder: { times: 2, of: 3, points: 2, date: on(2, 2) },
  'cut-short': { times: 2, of: 2, date: on(2, 2) },
  silent: { days: 15, date: on(1, 2) },
  easy: { times: 3, of: 3, points: 2, date: on(2, 2), against: 'hardest' },
  ready: { times: 3, of: 3, points: 2, date: on(2, 2), group: 'swift', week: 1 },
};

const draft = (reason: DueReason, name?: string): string =>
  wordDraft(reason, {
    ...(name !== undefined && { name }),
    leader: 'Imogen',
    groups: HERON.groups,
  });

const isWhole = (text: string): void => {
  expect(text).not.toMatch(/undefined|NaN|\[object|\b(\w+) \1\b/);
  expect(text).not.toContain('!');
};

describe('the word to one person', () => {
  it('BOARD-27 every reason has a sentence and a draft in whole words', () => {
    for (const code of DUE_CODES) {
      const reason = { code, detail: DETAIL[code] };
      const said = reasonSentence(reason, HERON.groups);
      const word = draft(reason, 'Marit Holm');
      for (const text of [said, word]) isWhole(text);
      expect(said).toMatch(/^[A-Z].*\.$/);
      expect(DUE_TITLE[code]).toMatch(/^[A-Z]/);
      expect(word.split('\n\n')[0]).toBe('Hello Marit,');
      expect(word.endsWith('\n\nImogen')).toBe(true);
    }
  });

  it('BOARD-27 after a warning sign: stop, get help, a doctor first, and no diagnosis', () => {
    const word = draft({ code: 'sign', detail: DETAIL.sign }, 'Marit');
    for (const part of [
      /stop/,
      /local emergency number/,
      /\b112\b/,
      /doctor/,
      /no more sessions until/,
    ])
      expect(word).toMatch(part);
    expect(word).not.toMatch(/heart|stroke|attack|asthma|probably|push|keep going/i);
    expect(reasonSentence({ code: 'sign', detail: DETAIL.sign }, [])).toBe(
      'Told of a warning sign on Tue, 9 March 2027. They have been out twice since.',
    );
  });

  it('BOARD-27 a niggle is never answered with going on', () => {
    for (const code of ['niggle-again', 'niggle'] as const) {
      const word = draft({ code, detail: DETAIL[code] });
      expect(word).toMatch(/leave running/);
      expect(word).toMatch(/doctor or physiotherapist/);
    }
    expect(
      draft({ code: 'niggle', detail: { ...DETAIL.niggle, place: 'other', severity: 2 } }),
    ).toContain('a niggle, in one spot, changed how you moved');
  });

  it('BOARD-27 two of three, both, all', () => {
    const said = (times: number, of: number) =>
      reasonSentence({ code: 'cut-short', detail: { times, of } }, []);
    expect([said(2, 3), said(2, 2), said(3, 3)]).toEqual([
      'Two of the last three sessions ended early.',
      'Both of the last two sessions ended early.',
      'All of the last three sessions ended early.',
    ]);
  });

  it('BOARD-27 somebody without a name is greeted all the same', () => {
    expect(draft({ code: 'silent', detail: DETAIL.silent }).startsWith('Hello,\n')).toBe(true);
    expect([firstName('  Marit  Holm '), firstName('')]).toEqual(['Marit', '']);
  });
});

describe('cells in words', () => {
  it('BOARD-6 gaps are written with their sign, and in words', () => {
    expect([1, -1.5, 0, 0.04].map(gapText)).toEqual(['+1', '−1.5', '±0', '±0']);
    expect([1, -1.5, 0].map(gapWords)).toEqual([
      '1 point harder than meant',
      '1.5 points easier than meant',
      'as meant',
    ]);
  });

  it('BOARD-6 every shape has a word of its own', () => {
    expect(new Set(LOOKS.map((look) => LOOK[look])).size).toBe(LOOKS.length);
  });

  it('BOARD-6 a cell with everything in it is one whole sentence after another', () => {
    const heard = member('a'.padEnd(24, 'x'), {
      sessions: [
        { week: 1, weekday: 1, effort: 7, niggle: { place: 'knee' } },
        { week: 1, weekday: 3, effort: 8, sign: true, done: 20, session: 2 },
      ],
    });
    const cell = boardOf(boardInput([heard])).people[0]?.cells[0];
    if (cell === undefined) throw new Error('no cell');
    expect(cellSaid(cell, 'No. 1')).toEqual({
      text: '1 of 2–3, +2.5',
      look: 'harder',
      marks: ['sign', 'niggle', 'cut-short'],
      sentence:
        'No. 1, week 1: 1 session done, 2 to 3 asked for. 1 more begun. Felt 2.5 points harder than meant. 1 warning sign. 1 niggle. 1 cut short.',
    });
  });

  it('BOARD-1 who sent no name has a number, the same each time', () => {
    const person = 'aaaaaaaaaaaaaaaaaaaaaaaa';
    expect(calledOf({ person })).toBe(`No. ${numberOf(person)}`);
    expect(calledOf({ person, name: ' ' })).toBe(calledOf({ person }));
    expect(numberOf(person)).toMatch(/^\d{4}$/);
    expect(numberOf(person)).not.toBe(numberOf(`${person}b`));
    expect(calledOf({ person, name: 'Marit' })).toBe('Marit');
  });

  it('BOARD-3 when somebody told, and what they kept, is said without reproach', () => {
    expect(tellingSentence({ leftOut: 0, byHand: true }, '')).toBe(
      'Written in by you; nothing was told yet.',
    );
    expect(tellingSentence({ heardAt: 1, leftOut: 1, byHand: false }, 'Sunday')).toBe(
      'Told last on Sunday. 1 session is not told of.',
    );
  });
});

describe('suggestions in words', () => {
  const grounds = {
    heard: 6,
    of: 9,
    rated: 4,
    harder: 2,
    muchHarder: 1,
    easier: 1,
    cutShort: 0,
    enough: 4,
    niggles: 1,
    signs: 0,
    hurt: 1,
    gap: 1,
  };
  const whys: readonly WayReason[] = [
    'too-few',
    'harder',
    'much-harder',
    'niggles',
    'cut-short',
    'thin',
    'easier',
    'lighter',
    'event-near',
    'sign',
    'limits',
    'as-meant',
  ];

  it('BOARD-28 every way and every reason is told in whole sentences, with the numbers', () => {
    for (const way of WAYS)
      for (const why of whys) {
        const said = suggestionSaid({ way, why, grounds, looked: 2, next: 3 });
        for (const text of [said.title, said.why, said.does, ...said.numbers]) isWhole(text);
        for (const text of [said.why, said.does, ...said.numbers])
          expect(text).toMatch(/^[A-Z0-9].*\.$/);
      }
  });

  it('BOARD-28 the numbers by hand', () => {
    expect(suggestionSaid({ way: 'repeat', why: 'harder', grounds, looked: 2, next: 3 })).toEqual({
      title: 'Repeat the week',
      why: '2 of 4 who rated found it 2 points or more harder than meant.',
      does: 'The sessions of week 2 take the place of those in week 3.',
      numbers: [
        'Heard from 6 of 9.',
        '4 of 6 had as many sessions as the week asks for.',
        '4 rated: 2 clearly harder, 1 clearly easier, 1 about as meant.',
        'In the middle it felt 1 point harder than meant.',
        'Nobody cut a session short.',
        'One person told of a niggle, nobody of a warning sign.',
      ],
    });
    const none = { ...grounds, heard: 0, of: 25, rated: 0 };
    expect(
      suggestionSaid({ way: 'go-on', why: 'too-few', grounds: none, looked: 2, next: 3 }),
    ).toMatchObject({
      why: 'Heard from 0 of 25: too few to change the plan of a whole group. It takes 3 people, and a third of the group.',
      numbers: [],
    });
  });
});

describe('messages to a group', () => {
  const people = (
    group: string,
    efforts: readonly (number | undefined)[],
    more: Partial<Told> = {},
  ): readonly Heard[] =>
    efforts.map((effort, n) =>
      member(`${group}${n}`.padEnd(24, 'x'), {
        name: `Name${n}`,
        group,
        sessions: [1, 2].map((session) => ({
          week: 2,
          weekday: 2 * session,
          session,
          group,
          ...(effort !== undefined && { effort }),
          ...more,
          note: 'Secret words',
        })),
      }),
    );
  const week = HERON.weeks[2];
  const about = (heard: readonly Heard[]): MessageAbout => ({
    title: HERON.title,
    leader: 'Imogen',
    board: boardOf(boardInput(heard)),
    looked: 2,
    ...(week && { next: { number: 3, week } }),
  });

  it('BOARD-29 last week is three sentences, and next week every session of the group in words', () => {
    const message = groupMessage(about(people('curlew', [5, 6, 5])), 'curlew');
    expect(message).toBe(
      [
        'Hello Curlew,',
        'Of week 2 I have heard from 3 of 3. It felt about as it was meant to, and that is right. Most of you had all the sessions that the week asks for.',
        [
          'Week 3: Two kinds of day: a steady one, and one with more changes.',
          '2 to 3 sessions, and the whole should feel like 6 of 10: whole sentences, breath deeper.',
          'Curlew, session 1: 35 min in all. Warm-up: easy walk 5 min. Main set: 5 times: run 4 min, walk 1 min. Cool-down: easy walk 5 min.',
          'Curlew, session 2: 35 min in all. Warm-up: easy walk 5 min. Main set: 10 times: run 1 min 30 s, walk 1 min. Cool-down: easy walk 5 min.',
        ].join('\n'),
        'Easing off is always allowed. If something feels wrong: stop, and get help; your local emergency number comes first.',
        'Imogen',
      ].join('\n\n'),
    );
  });

  it('BOARD-29 with fewer than three who rated nothing is said of how it felt', () => {
    for (const efforts of [
      [9, 9],
      [9, 9, undefined],
      [undefined, undefined, undefined],
    ]) {
      const said = lastWeek(about(people('curlew', efforts)), ['curlew']).join(' ');
      expect(said).toContain('too few to say how it felt');
      expect(said).not.toMatch(/harder|easier|points|meant/);
    }
    expect(lastWeek(about([]), ['curlew'])[0]).toBe('Of week 2 I have not heard yet.');
  });

  it('BOARD-29 nobody’s name, note, niggle or sign is in it', () => {
    const hurt = { niggle: { place: 'knee' as const, severity: 3 as const }, sign: true as const };
    const heard = [
      ...people('curlew', [5, 5, 5, 9]),
      ...people('swift', [8], hurt),
      ...people('dunlin', [5], hurt),
    ];
    const messages = [
      ...HERON.groups.map(({ id }) => groupMessage(about(heard), id)),
      clubMessage(about(heard)),
    ];
    for (const message of messages) {
      expect(message).not.toMatch(/Name\d|Secret|niggle|knee|sign|No\. \d/);
      isWhole(message);
    }
    // Several of a group may hear of it together.
    const many = people('curlew', [5, 5, 5, 5], { niggle: { place: 'knee' } });
    expect(groupMessage(about(many), 'curlew')).toContain('Some of you felt a niggle');
    expect(groupMessage(about(many), 'curlew')).not.toContain('knee');
  });

  it('BOARD-29 one person more or less harder never shows in a group of a few', () => {
    const with9 = lastWeek(about(people('curlew', [5, 5, 9])), ['curlew']);
    const with5 = lastWeek(about(people('curlew', [5, 5, 5])), ['curlew']);
    expect(with9).toEqual(with5);
  });

  it('BOARD-29 the whole club’s tells how each group found it, those with too few left out', () => {
    const heard = [
      ...people('wren', [5, 5, 5]),
      ...people('dunlin', [2, 2, 2]),
      ...people('curlew', [9, 8, 9]),
      ...people('swift', [9, 9]),
    ];
    const message = clubMessage(about(heard));
    expect(message).toContain(
      'Of week 2 I have heard from 11 of 11. To Curlew it felt harder than it was meant to, to Dunlin easier.',
    );
    expect(
      message.split('\n').filter((line) => /^(Wren|Dunlin|Curlew|Swift)/.test(line)),
    ).toHaveLength(8);
    const said = (list: readonly Heard[]) =>
      lastWeek(
        about(list),
        HERON.groups.map(({ id }) => id),
      )[1];
    expect(said(people('wren', [5, 5, 5]))).toBe(
      'It felt about as it was meant to, and that is right.',
    );
    expect(said(people('curlew', [8, 8, 8]))).toMatch(/^To Curlew it felt harder/);
    expect(said(people('dunlin', [2, 2, 2]))).toMatch(/^To Dunlin it felt easier/);
    expect(said(people('swift', [9, 9]))).toContain('too few');
  });

  it('BOARD-29 a week that is not there, a text that cannot be read and a group without a session', () => {
    const { next: _, ...none } = about(people('curlew', [5, 5, 5]));
    expect(groupMessage(none, 'curlew')).not.toContain('Week 3');
    const odd = {
      focus: '',
      effort: 50,
      timesPerWeek: { min: 2, max: 2 },
      sessions: { curlew: [{ text: 'round\nthe marsh' }] },
    };
    const message = clubMessage({ ...none, next: { number: 3, week: odd } });
    expect(message).toContain('Curlew: round the marsh');
    expect(message).toContain('Wren: no session this week.');
    expect(message).toContain('Week 3\n2 sessions, and');
  });
});
