import { createDecipheriv, createHash, pbkdf2Sync } from 'node:crypto';
import { inflateRawSync } from 'node:zlib';
import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { describe, expect, it, vi } from 'vitest';
import type { BoardState } from '../../src/app/board-contract.ts';
import { heardKey } from '../../src/domain/board/heard.ts';
import { BOARD_COLUMNS } from '../../src/domain/board/table.ts';
import { backedUp, writeBackup } from '../../src/domain/exchange/backup.ts';
import { createExchangePorts } from '../../src/platform/exchange.ts';
import { connect } from '../../src/platform/store/connection.ts';
import {
  PROGRAMME,
  ROSA,
  response,
  responses,
  SUNDAY,
  TAMSIN,
  told,
} from '../domain/board/records.ts';
import { type LeaderBoard, openLeaderBoard } from '../drivers/board/leader-board.ts';
import { HandClock } from '../drivers/clock.ts';
import { marshProgramme } from '../drivers/exchange/programmes.ts';
import { openTab } from '../drivers/phone.ts';

const PASSPHRASE = 'four herons by the gate';
const SATURDAY = { date: '2027-03-06', week: 1, session: 1 };
const DONE = { ok: true, value: undefined };
const DAY_S = 86_400;
const EVENT = {
  ...marshProgramme(4),
  goal: { name: 'Heron Loop', distanceM: 5000, date: '2027-04-11' },
};

const people = (state: BoardState): readonly string[] =>
  (state.heard[PROGRAMME] ?? []).map(({ person }) => person).sort();
const codeOf = (result: { ok: true } | { ok: false; error: { code: string } }): string =>
  result.ok ? 'ok' : result.error.code;

describe('what a leader wrote', () => {
  it('KEEP-4 the later holds, also where the clock was put back', async () => {
    const { board, clock, hear } = await openLeaderBoard();
    await hear(response());
    const { describe: say, mark, keep, expect: count } = board.getState();
    await say(PROGRAMME, ROSA, { name: 'Rose' });
    await mark(PROGRAMME, SATURDAY, ROSA, true);
    await keep(PROGRAMME, true);
    await count(PROGRAMME, 'wren', 9);
    clock.sleep(-DAY_S);
    await say(PROGRAMME, ROSA, { name: 'Rosa' });
    await mark(PROGRAMME, { ...SATURDAY, session: 2 }, ROSA, false);
    await keep(PROGRAMME, false);
    await count(PROGRAMME, 'wren', 8);
    const { heard, days, setups } = board.getState();
    expect(heard[PROGRAMME]?.[0]?.known?.name).toBe('Rosa');
    expect(heard[PROGRAMME]?.[0]?.known?.at).toBeGreaterThan(clock.now());
    expect(days[PROGRAMME]?.[0]).toMatchObject({
      which: { week: 1, session: 2 },
      marks: { [ROSA]: { present: false } },
    });
    expect(setups[PROGRAMME]).toMatchObject({
      keep: { on: false },
      expected: { wren: { count: 8 } },
    });
    await say(PROGRAMME, ROSA, { name: '' });
    expect(board.getState().heard[PROGRAMME]?.[0]?.known).not.toHaveProperty('name');
  });

  it('KEEP-5 two are one until that is taken back, and nobody is somebody who never told', async () => {
    const { board, hear } = await openLeaderBoard();
    await hear(response());
    const added = await board.getState().addPerson(PROGRAMME, { name: 'Rosa', group: 'wren' });
    const other = await board.getState().addPerson(PROGRAMME, { name: 'Rosie', group: 'wren' });
    if (!added.ok || !other.ok) throw new Error('not added');
    const knownOf = (id: string) =>
      board.getState().heard[PROGRAMME]?.find(({ person }) => person === id)?.known;
    const { isSame } = board.getState();
    expect(codeOf(await isSame(PROGRAMME, other.value, added.value))).toBe('not-ours');
    expect(await isSame(PROGRAMME, added.value, ROSA)).toEqual(DONE);
    // By way of somebody who was joined already it comes to the one who told.
    expect(await isSame(PROGRAMME, other.value, added.value)).toEqual(DONE);
    expect([knownOf(added.value)?.same, knownOf(other.value)?.same]).toEqual([ROSA, ROSA]);
    expect(await isSame(PROGRAMME, added.value, undefined)).toEqual(DONE);
    expect(knownOf(added.value)).toMatchObject({ name: 'Rosa', group: 'wren' });
    expect(knownOf(added.value)).not.toHaveProperty('same');
  });
});

describe('letting go', () => {
  // 11 April and 90 days is 10 July; the clock stands on 7 March, 125 days before.
  it('KEEP-3 on its day people, lists and what was said of them go, and nothing else', async () => {
    const other = { ...EVENT, id: 'tern-mile', goal: { ...EVENT.goal, date: '2027-06-01' } };
    const one = await openLeaderBoard({ programmes: [EVENT, other] });
    const { board, clock, settings } = one;
    await one.hear(response(), response({ programme: { id: 'tern-mile', revision: 1 } }));
    await board.getState().mark(PROGRAMME, SATURDAY, ROSA, true);
    await board.getState().expect(PROGRAMME, 'wren', 9);
    expect(board.getState().goesOn).toEqual({
      [PROGRAMME]: '2027-07-10',
      'tern-mile': '2027-08-30',
    });
    expect(settings.getState().settings.boardsGoOn).toBe('2027-07-10');
    clock.sleep(124 * DAY_S);
    await board.getState().load();
    expect(people(board.getState())).toEqual([ROSA]);
    clock.sleep(DAY_S);
    await board.getState().load();
    const { heard, days, setups, went, programmes } = board.getState();
    expect(went).toEqual([PROGRAMME]);
    expect([Object.keys(heard), days, setups]).toEqual([['tern-mile'], {}, {}]);
    expect(programmes.map(({ id }) => id).sort()).toEqual([PROGRAMME, 'tern-mile']);
    expect(settings.getState().settings.boardsGoOn).toBe('2027-08-30');
    expect(await one.dump()).not.toContain(`${PROGRAMME} ${ROSA}`);
  });

  it('KEEP-3 whoever is kept stays', async () => {
    const { board, clock, settings, hear } = await openLeaderBoard({ programmes: [EVENT] });
    await hear(response());
    await board.getState().keep(PROGRAMME, true);
    expect(board.getState().goesOn).toEqual({});
    expect(settings.getState().settings.boardsGoOn).toBe('');
    clock.sleep(1000 * DAY_S);
    await board.getState().load();
    expect(people(board.getState())).toEqual([ROSA]);
  });

  it('KEEP-3 it happens in an app in which nobody opens the board, some seconds after its start', async () => {
    const clock = new HandClock();
    const one = await openLeaderBoard({ programmes: [EVENT], clock });
    await one.hear(response());
    const first = await openTab({ database: one.database, clock });
    const { boardsGoOn = '' } = one.settings.getState().settings;
    await first.app.settings.getState().change({ boardsGoOn });
    await clock.pass(20);
    expect(await one.dump()).toContain(ROSA);
    first.kill();
    clock.sleep(125 * DAY_S);
    const second = await openTab({ database: one.database, clock });
    await vi.waitFor(
      async () => {
        await clock.pass(6);
        expect(await one.dump()).not.toContain(ROSA);
      },
      { timeout: 20_000, interval: 50 },
    );
    expect(second.app.settings.getState().settings.boardsGoOn).toBe('');
  });
});

/** What of a device could be read by anybody who ever gets at it or at what it gives out. */
async function everythingOf(one: LeaderBoard): Promise<string> {
  const { save, saveLocked } = one.board.getState();
  one.files.length = 0;
  for (const what of ['csv', 'json'] as const) expect(await save(PROGRAMME, what)).toEqual(DONE);
  expect(await saveLocked(PASSPHRASE)).toEqual(DONE);
  const locked = one.files.at(-1)?.[1] ?? '';
  const inside = await one.ports.vault.open(locked, PASSPHRASE);
  const kept = await one.ports.records.everything();
  if (!inside.ok || !kept.ok) throw new Error('not read');
  const backup = writeBackup(backedUp(kept.value), 'Backup.', one.clock.now());
  return [await one.dump(), ...one.files.map(([, text]) => text), inside.value, backup].join('\n');
}

describe('forgetting', () => {
  it('KEEP-6 nothing of a person is left anywhere, whoever they were said to be, and old answers stay out', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.array(responses, { minLength: 1, maxLength: 4 }),
        fc.constantFrom('told', 'by hand'),
        async (sent, by) => {
          const one = await openLeaderBoard();
          const secret = 'Zq'.repeat(16);
          const own = sent.map((each, n) => ({
            ...each,
            secret,
            name: 'Morwenna',
            entries: each.entries.map((entry) => ({
              ...entry,
              id: `z${n}${entry.id}`,
              note: 'Curlews',
            })),
          }));
          await one.hear(...own, response({ secret: TAMSIN, name: 'Tamsin' }));
          const { addPerson, isSame, mark, describe: say, forget } = one.board.getState();
          const added = await addPerson(PROGRAMME, { name: 'Wenna by hand', group: 'wren' });
          if (!added.ok) throw new Error('not added');
          await isSame(PROGRAMME, added.value, secret);
          await say(PROGRAMME, secret, { name: 'Wenna' });
          for (const id of [secret, added.value, TAMSIN]) await mark(PROGRAMME, SATURDAY, id, true);
          const words = [secret, added.value, 'Morwenna', 'Wenna', 'Curlews'];
          const hasNote = own.some(({ entries }) => entries.length > 0);
          const before = await everythingOf(one);
          for (const word of words.slice(0, hasNote ? 5 : 4)) expect(before).toContain(word);
          expect(await forget(PROGRAMME, by === 'told' ? secret : added.value)).toEqual(DONE);
          const after = await everythingOf(one);
          for (const word of words) expect(after).not.toContain(word);
          expect(after).toContain(TAMSIN);
          expect(JSON.stringify(one.board.getState().heard)).not.toContain(secret);
          // An old chat export, brought in again.
          await one.hear(...own);
          expect(one.board.getState().intake).toMatchObject({
            report: { taken: {}, left: [{ why: 'forgotten', count: own.length }] },
          });
          expect(await one.dump()).not.toContain(secret);
          // They send anew, and are there again.
          const anew = { ...response({ secret }), sentAt: SUNDAY + 20 * 3_600_000 };
          one.clock.sleep(2 * DAY_S);
          await one.hear(anew);
          expect(people(one.board.getState())).toContain(secret);
        },
      ),
      { numRuns: 6 },
    );
  });

  it('KEEP-6 what is left is SHA-256 of their key (FIPS 180-4, as Node makes it)', async () => {
    const { board, hear } = await openLeaderBoard();
    await hear(response());
    await board.getState().forget(PROGRAMME, ROSA);
    const digest = createHash('sha256').update(heardKey(PROGRAMME, ROSA)).digest('base64url');
    expect(board.getState().setups[PROGRAMME]?.forgotten.map((each) => each.digest)).toEqual([
      digest,
    ]);
  });
});

describe('files of a board', () => {
  it('KEEP-7 the table is read by csv-parse: a row for each session, no cell that runs, no secret', async () => {
    const { board, hear, files } = await openLeaderBoard();
    await hear(
      response({
        name: '=HYPERLINK("x")',
        entries: [
          told('one', 0, { effort: 7, niggle: { place: 'knee', side: 'left', severity: 2 } }),
          told('two', 2, { note: '+1, "windy"\nall the way', warningSign: true }),
        ],
      }),
      response({ secret: TAMSIN, entries: [] }),
    );
    await board.getState().mark(PROGRAMME, SATURDAY, TAMSIN, true);
    expect(await board.getState().save(PROGRAMME, 'csv')).toEqual(DONE);
    const [name = '', text = ''] = files.at(-1) ?? [];
    expect(name).toBe(`${PROGRAMME}-people-2027-03-07.csv`);
    const rows = parse(text, { bom: true, columns: true, record_delimiter: '\r\n' }) as Record<
      string,
      string
    >[];
    expect(Object.keys(rows[0] ?? {})).toEqual([...BOARD_COLUMNS]);
    expect(rows).toHaveLength(3);
    const one = rows.find(({ date }) => date === '2027-03-01');
    expect(one).toMatchObject({
      person: `'=HYPERLINK("x")`,
      week: '1',
      effort: '7',
      target_effort: '5',
      niggle: 'knee',
      niggle_side: 'left',
      told: 'yes',
      there: 'no',
      warning_sign: 'no',
    });
    const two = rows.find(({ date }) => date === '2027-03-03');
    expect(two).toMatchObject({ note: `'+1, "windy"\nall the way`, warning_sign: 'yes' });
    expect(rows.find(({ date }) => date === SATURDAY.date)).toMatchObject({
      person: expect.stringMatching(/^No\. \d{4}$/),
      there: 'yes',
      told: 'no',
      effort: '',
    });
    expect(text).not.toContain(ROSA);
    expect(text).not.toContain(TAMSIN);
  });

  it('KEEP-7 the JSON holds every record as it is kept', async () => {
    const { board, hear, files } = await openLeaderBoard();
    await hear(response());
    await board.getState().mark(PROGRAMME, SATURDAY, ROSA, true);
    await board.getState().expect(PROGRAMME, 'wren', 9);
    await board.getState().save(PROGRAMME, 'json');
    const { heard, days, setups } = board.getState();
    expect(JSON.parse(files.at(-1)?.[1] ?? '')).toMatchObject({
      format: 'towpath-board-export/1',
      programme: { id: PROGRAMME },
      people: heard[PROGRAMME],
      days: days[PROGRAMME],
      setup: setups[PROGRAMME],
    });
    expect(codeOf(await board.getState().save('never-sent', 'csv'))).toBe('not-ours');
  });

  it('KEEP-8 the locked file is PBKDF2, AES-256-GCM and deflate, as Node opens it', async () => {
    const { board, hear, files } = await openLeaderBoard();
    await hear(response({ name: 'Morwenna' }));
    expect(codeOf(await board.getState().saveLocked('too short'))).toBe('passphrase-short');
    expect(await board.getState().saveLocked(PASSPHRASE)).toEqual(DONE);
    const [name = '', text = ''] = files.at(-1) ?? [];
    expect(name).toBe('towpath-boards-2027-03-07.txt');
    expect(text).not.toContain('Morwenna');
    const file = JSON.parse(text);
    expect(file.format).toBe('towpath-boards/1');
    expect(file.rounds).toBeGreaterThanOrEqual(600_000);
    const bytes = (part: string): Buffer => Buffer.from(part, 'base64url');
    const key = pbkdf2Sync(PASSPHRASE, bytes(file.salt), file.rounds, 32, 'sha256');
    const open = createDecipheriv('aes-256-gcm', key, bytes(file.iv));
    const sealed = bytes(file.sealed);
    open.setAAD(Buffer.from(`${file.format} ${file.rounds} ${file.salt}`));
    open.setAuthTag(sealed.subarray(-16));
    const inside = Buffer.concat([open.update(sealed.subarray(0, -16)), open.final()]);
    const { heard } = JSON.parse(inflateRawSync(inside).toString());
    expect(heard).toEqual(board.getState().heard[PROGRAMME]);
  });

  it('KEEP-8 a wrong passphrase, damage, another kind of file and a later version are told apart', async () => {
    const { board, hear, files } = await openLeaderBoard();
    await hear(response());
    await board.getState().saveLocked(PASSPHRASE);
    const text = files.at(-1)?.[1] ?? '';
    const open = async (content: string, passphrase = PASSPHRASE): Promise<string> =>
      codeOf(await board.getState().openLocked(new Blob([content]), passphrase));
    expect(await open(text)).toBe('ok');
    expect(await open(text, 'four herons by the gap')).toBe('passphrase-wrong');
    expect(await open(text.replace('towpath-boards/1', 'towpath-boards/2'))).toBe('backup-newer');
    expect(await open(text.replace('towpath-boards/1', 'towpath-keys/1'))).toBe('backup-damaged');
    expect(await open(text.slice(0, -9))).toBe('backup-damaged');
    expect(await open('')).toBe('backup-damaged');
    const { vault } = createExchangePorts(connect('a-vault'));
    const locked = async (inside: string): Promise<string> => {
      const made = await vault.lock(inside, PASSPHRASE, '');
      return made.ok ? made.value : '';
    };
    expect(await open(await locked('{"format":"towpath-boards/9"}'))).toBe('backup-newer');
    expect(await open(await locked('anything'))).toBe('backup-damaged');
  });

  it('KEEP-8, KEEP-9 two who lead exchange their files, see first what comes, and end alike', async () => {
    const [one, two] = [await openLeaderBoard(), await openLeaderBoard()];
    await one.hear(response(), response({ secret: TAMSIN, name: 'Tamsin' }));
    await two.hear(response({ entries: [told('two', 2)], sentAt: SUNDAY + 1 }));
    await two.board.getState().mark(PROGRAMME, SATURDAY, ROSA, true);
    const third = 'ab'.repeat(16);
    await two.hear(response({ secret: third, name: 'Perran' }));
    await one.board.getState().forget(PROGRAMME, third);
    await one.board.getState().forget(PROGRAMME, TAMSIN);
    for (const { board } of [one, two]) await board.getState().saveLocked(PASSPHRASE);
    const fileOf = ({ files }: LeaderBoard) => new Blob([files.at(-1)?.[1] ?? '']);
    const preview = await one.board.getState().openLocked(fileOf(two), PASSPHRASE);
    expect(preview).toMatchObject({
      value: { people: 2, newPeople: 1, sessions: 2, newSessions: 2, forgotten: 0 },
    });
    expect(people(one.board.getState())).toEqual([ROSA]);
    expect(await one.board.getState().takeIn()).toEqual(DONE);
    await two.board.getState().openLocked(fileOf(one), PASSPHRASE);
    expect(await two.board.getState().takeIn()).toEqual(DONE);
    const kept = ({ board }: LeaderBoard) => {
      const { heard, days, setups } = board.getState();
      return { heard, days, setups };
    };
    expect(kept(two)).toEqual(kept(one));
    expect(people(one.board.getState())).not.toContain(TAMSIN);
    const again = await one.board.getState().openLocked(fileOf(two), PASSPHRASE);
    expect(again).toMatchObject({ value: { newPeople: 0, newSessions: 0 } });
  });
});
