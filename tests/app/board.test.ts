import { describe, expect, it } from 'vitest';
import { PROGRAMME, ROSA, response, SUNDAY, TAMSIN, told } from '../domain/board/records.ts';
import { openLeaderBoard } from '../drivers/board/leader-board.ts';

const SATURDAY = { date: '2027-03-06', week: 1, session: 1 };
const done = { ok: true, value: undefined };

describe('a leader’s board', () => {
  it('KEEP-1 what was heard is there at the next visit, with what the leader wrote', async () => {
    const one = await openLeaderBoard();
    await one.hear(response(), response({ secret: TAMSIN, name: 'Tamsin' }));
    expect(one.board.getState().intake).toMatchObject({ name: 'done', report: { found: 2 } });
    const { describe: say, mark, expect: count, addPerson } = one.board.getState();
    expect(await say(PROGRAMME, ROSA, { name: '  Rosa\nB. ' })).toEqual(done);
    expect(await mark(PROGRAMME, SATURDAY, TAMSIN, true)).toEqual(done);
    expect(await count(PROGRAMME, 'wren', 12)).toEqual(done);
    const added = await addPerson(PROGRAMME, { name: 'Perran', group: 'wren' });
    const again = await openLeaderBoard({ database: one.database, clock: one.clock });
    const { heard, days, setups, programmes, ready } = again.board.getState();
    expect(ready).toBe(true);
    expect(programmes.map(({ id }) => id)).toEqual([PROGRAMME]);
    expect(heard).toEqual(one.board.getState().heard);
    expect(heard[PROGRAMME]?.map(({ person, known }) => [person, known?.name]).sort()).toEqual(
      [
        [ROSA, 'Rosa B.'],
        [TAMSIN, undefined],
        [added.ok ? added.value : '', 'Perran'],
      ].sort(),
    );
    expect(days[PROGRAMME]).toMatchObject(
      [{ ...SATURDAY, which: { week: 1 }, marks: { [TAMSIN]: { present: true } } }].map(
        ({ date, which, marks }) => ({ date, which, marks }),
      ),
    );
    expect(setups[PROGRAMME]?.expected).toMatchObject({ wren: { count: 12 } });
  });

  it('KEEP-1 two tabs that write at once lose nothing of each other', async () => {
    const one = await openLeaderBoard();
    const two = await openLeaderBoard({ database: one.database, clock: one.clock });
    await Promise.all([
      one.hear(response()),
      two.hear(response({ entries: [told('two', 2)], sentAt: SUNDAY + 1 })),
      one.board.getState().mark(PROGRAMME, SATURDAY, ROSA, true),
      two.board.getState().mark(PROGRAMME, SATURDAY, TAMSIN, true),
    ]);
    await one.board.getState().load();
    const { heard, days } = one.board.getState();
    expect(heard[PROGRAMME]?.[0]?.entries.map(({ id }) => id)).toEqual(['one', 'two']);
    expect(Object.keys(days[PROGRAMME]?.[0]?.marks ?? {}).sort()).toEqual([ROSA, TAMSIN].sort());
  });
});
