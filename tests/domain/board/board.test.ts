import { describe, expect, it } from 'vitest';
import { cellSaid, cellText } from '../../../src/copy/board.ts';
import type { BoardCell, PersonRow } from '../../../src/domain/board/board.ts';
import { boardOf } from '../../../src/domain/board/board-of.ts';
import { boardInput, byHand, dayOf, HERON, member, on, UNDATED } from './members.ts';

function rowOf(rows: readonly PersonRow[], person: string): PersonRow {
  const row = rows.find((each) => each.person === person);
  if (row === undefined) throw new Error(`no row for ${person}`);
  return row;
}

const cell = (row: PersonRow, week: number): BoardCell => {
  const found = row.cells[week - 1];
  if (found === undefined) throw new Error(`no week ${week}`);
  return found;
};

const SECRET = 'aaaaaaaaaaaaaaaaaaaaaaaa';

describe('people by weeks', () => {
  it('BOARD-1 somebody written in by hand who has told since is one row, called as the leader calls them', () => {
    const told = member(SECRET, { name: 'M', sessions: [{ week: 1, effort: 5 }] });
    const hand = byHand('1', { name: 'Marit', group: 'wren', same: SECRET });
    for (const heard of [
      [told, hand],
      [hand, told],
    ]) {
      const { people } = boardOf(boardInput(heard));
      expect(
        people.map(({ person, name, group, byHand: hand }) => [person, name, group, hand]),
      ).toEqual([[SECRET, 'Marit', 'curlew', false]]);
      expect(people[0]?.cells[0]?.done).toBe(1);
    }
  });

  it('BOARD-1 the leader’s own name and group go before what was told', () => {
    const told = member(SECRET, {
      name: 'M',
      group: 'curlew',
      known: { at: 5, name: 'Marit', group: 'dunlin' },
      sessions: [{ week: 1 }],
    });
    const row = rowOf(boardOf(boardInput([told])).people, SECRET);
    expect([row.name, row.group]).toEqual(['Marit', 'dunlin']);
  });

  it('BOARD-1 a ring of people who are said to be the same loses nobody and counts nobody twice', () => {
    const one = member('one'.padEnd(24, 'x'), {
      known: { at: 1, same: 'two'.padEnd(24, 'x') },
      sessions: [{ week: 1 }],
    });
    const two = member('two'.padEnd(24, 'x'), {
      known: { at: 1, same: 'one'.padEnd(24, 'x') },
      sessions: [{ week: 1, weekday: 4 }],
    });
    const gone = member('three'.padEnd(24, 'x'), {
      known: { at: 1, same: 'nobody' },
      sessions: [{ week: 1 }],
    });
    const { people } = boardOf(boardInput([one, two, gone]));
    expect(people).toHaveLength(2);
    expect(people.reduce((sum, row) => sum + cell(row, 1).sessions.length, 0)).toBe(3);
  });

  it('BOARD-2 attendance and the own log of one day are one session', () => {
    const told = member(SECRET, { sessions: [{ week: 1, weekday: 6, effort: 6 }] });
    const days = [
      dayOf(on(1, 6), { week: 1 }, { [SECRET]: true }),
      dayOf(on(1, 3), { week: 1 }, { [SECRET]: true }),
      dayOf(on(1, 4), { week: 1 }, { [SECRET]: false }),
    ];
    const first = cell(rowOf(boardOf(boardInput([told], { days })).people, SECRET), 1);
    expect(
      first.sessions.map(({ localDate, there, felt, id }) => [
        localDate,
        there,
        felt,
        id !== undefined,
      ]),
    ).toEqual([
      [on(1, 3), true, undefined, false],
      [on(1, 6), true, 6, true],
    ]);
    expect(first.done).toBe(2);
  });

  it('BOARD-2 a day ticked under the id from before they told counts for them', () => {
    const hand = byHand('1', { name: 'Marit', same: SECRET });
    const told = member(SECRET, { sessions: [{ week: 1, weekday: 6 }] });
    const days = [dayOf(on(1, 6), { week: 1 }, { [hand.person]: true, [SECRET]: true })];
    const row = rowOf(boardOf(boardInput([told, hand], { days })).people, SECRET);
    expect(cell(row, 1).sessions).toHaveLength(1);
  });

  it('BOARD-3 no reply, nothing told of it and a week to come are three things, and none is nothing done', () => {
    const heard = [
      member('silent'.padEnd(24, 'x'), { toldOn: on(1, 3), sessions: [{ week: 1 }] }),
      member('told'.padEnd(24, 'x'), { toldOn: on(3, 1), sessions: [{ week: 1 }] }),
      member('kept'.padEnd(24, 'x'), { toldOn: on(3, 1), leftOut: 2, sessions: [{ week: 1 }] }),
      byHand('1', { name: 'Marit', group: 'curlew' }),
    ];
    const { people } = boardOf(boardInput(heard, { today: on(3, 2) }));
    const states = (person: string) => rowOf(people, person).cells.map(({ state }) => state);
    expect(states('silent'.padEnd(24, 'x')).slice(0, 4)).toEqual([
      'heard',
      'unknown',
      'unknown',
      'ahead',
    ]);
    expect(states('told'.padEnd(24, 'x')).slice(0, 4)).toEqual([
      'heard',
      'none-told',
      'unknown',
      'ahead',
    ]);
    expect(states('kept'.padEnd(24, 'x')).slice(0, 4)).toEqual([
      'heard',
      'unknown',
      'unknown',
      'ahead',
    ]);
    expect(states('hand.1').slice(0, 4)).toEqual(['unknown', 'unknown', 'unknown', 'ahead']);
    for (const row of people)
      for (const each of row.cells) {
        expect(cellText(each)).not.toMatch(/\b0 of|\b0 sessions?/);
        expect(cellSaid(each).sentence).not.toMatch(/\b0 sessions?/);
      }
  });

  it('BOARD-4 a session counts in the week that it says it is of, whatever the calendar says', () => {
    const late = member(SECRET, { sessions: [{ week: 1, date: on(3, 2), effort: 5 }] });
    const row = rowOf(boardOf(boardInput([late], { today: on(3, 7) })).people, SECRET);
    expect(row.cells.map(({ state }) => state).slice(0, 3)).toEqual([
      'heard',
      'none-told',
      'unknown',
    ]);
  });

  it('BOARD-4 the board’s week is the calendar’s, within the programme', () => {
    const at = (today: string) => boardOf(boardInput([], { today })).week;
    expect([on(0, 1), on(1, 1), on(2, 7), on(6, 7), on(9, 1)].map(at)).toEqual([1, 1, 2, 6, 6]);
  });

  it('BOARD-4 without dates it is the week that most have reached', () => {
    const reached = (...weeks: number[]) =>
      boardOf(
        boardInput(
          weeks.map((week, n) =>
            member(`p${n}`.padEnd(24, 'x'), { programme: UNDATED, sessions: [{ week }] }),
          ),
          { programme: UNDATED },
        ),
      );
    expect(reached().week).toBe(1);
    expect(reached(2, 2, 5).week).toBe(2);
    const board = reached(2, 2, 5);
    const ahead = rowOf(board.people, 'p2'.padEnd(24, 'x'));
    expect(ahead.cells.map(({ state }) => state)).toEqual([
      'none-told',
      'none-told',
      'none-told',
      'none-told',
      'heard',
      'ahead',
    ]);
  });

  it('BOARD-5 a session counts as for the person’s own week: from half of its plan', () => {
    const row = (done: number) =>
      cell(
        rowOf(
          boardOf(boardInput([member(SECRET, { sessions: [{ week: 1, done }] })])).people,
          SECRET,
        ),
        1,
      );
    expect([100, 99.9, 76, 74, 50, 49].map((done) => [row(done).done, row(done).cutShort])).toEqual(
      [
        [1, 0],
        [1, 0],
        [1, 0],
        [1, 1],
        [1, 1],
        [0, 1],
      ],
    );
    expect(cellText(row(49))).toBe('1 begun');
    expect(row(74).sessions[0]?.donePercent).toBe(74);
  });

  it('BOARD-6 the cell shows felt against what was meant, in shapes for classes two points wide', () => {
    const said = (...efforts: readonly number[]) =>
      cellSaid(
        cell(
          rowOf(
            boardOf(
              boardInput([
                member(SECRET, {
                  sessions: efforts.map((effort, n) => ({
                    week: 1,
                    weekday: n * 2 + 1,
                    session: n + 1,
                    effort,
                  })),
                }),
              ]),
            ).people,
            SECRET,
          ),
          1,
        ),
        'Marit',
      );
    expect(said(6)).toEqual({
      text: '1 of 2–3, +1',
      look: 'as-meant',
      marks: [],
      sentence: 'Marit, week 1: 1 session done, 2 to 3 asked for. Felt 1 point harder than meant.',
    });
    expect([said(7).look, said(8).look, said(3).look, said(5, 6, 9).look]).toEqual([
      'harder',
      'much-harder',
      'easier',
      'as-meant',
    ]);
    expect(said(5, 8).text).toBe('2 of 2–3, +1.5');
  });

  it('BOARD-7 people stand by group and name, and never by how hard it felt', () => {
    const names = ['Wim', 'Ada', 'Marit', 'Bo'];
    const orders = [
      [1, 9, 4, 6],
      [9, 1, 6, 4],
    ].map((efforts) =>
      boardOf(
        boardInput(
          names.map((name, n) =>
            member(`${name}x`.padEnd(24, 'x'), {
              name,
              group: n === 0 ? 'wren' : 'curlew',
              sessions: [{ week: 1, effort: efforts[n] ?? 0 }],
            }),
          ),
        ),
      ).people.map(({ name }) => name),
    );
    expect(orders[0]).toEqual(['Wim', 'Ada', 'Bo', 'Marit']);
    expect(orders[1]).toEqual(orders[0]);
  });

  it('BOARD-8 people of a group that the programme has no more stand last, under its id', () => {
    const stray = member(SECRET, { group: 'heron', sessions: [{ week: 1, group: 'heron' }] });
    const { groups } = boardOf(boardInput([stray]));
    expect(groups.map(({ id, number, people }) => [id, number, people])).toEqual([
      ['wren', 1, 0],
      ['dunlin', 2, 0],
      ['curlew', 3, 0],
      ['swift', 4, 0],
      ['heron', 5, 1],
    ]);
  });

  it('BOARD-8 sessions of weeks that the programme has no more are kept apart', () => {
    const short = { ...HERON, weeks: HERON.weeks.slice(0, 2) };
    const told = member(SECRET, { sessions: [{ week: 1 }, { week: 5 }] });
    const row = rowOf(boardOf(boardInput([told], { programme: short })).people, SECRET);
    expect(row.cells).toHaveLength(2);
    expect(row.elsewhere.map(({ week }) => week)).toEqual([5]);
  });

  it('BOARD-9 who did not change keeps the same row', () => {
    const [one, two] = ['one', 'two'].map((id) =>
      member(id.padEnd(24, 'x'), { sessions: [{ week: 1, effort: 5 }] }),
    );
    if (one === undefined || two === undefined) throw new Error('two members');
    const before = boardOf(boardInput([one, two]));
    const later = member(two.person, {
      sessions: [
        { week: 1, effort: 5 },
        { week: 2, effort: 6 },
      ],
    });
    const after = boardOf(boardInput([one, later]));
    expect(rowOf(after.people, one.person)).toBe(rowOf(before.people, one.person));
    expect(rowOf(after.people, two.person)).not.toBe(rowOf(before.people, two.person));
    const ticked = boardOf(
      boardInput([one, later], { days: [dayOf(on(1, 5), { week: 1 }, { [one.person]: true })] }),
    );
    expect(cell(rowOf(ticked.people, one.person), 1).sessions).toHaveLength(2);
    expect(rowOf(ticked.people, two.person)).toBe(rowOf(after.people, two.person));
  });
});
