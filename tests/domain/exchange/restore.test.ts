import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Row, Stores } from '../../../src/domain/exchange/backup.ts';
import { backedUp, writeBackup } from '../../../src/domain/exchange/backup.ts';
import { readBackup } from '../../../src/domain/exchange/backup-read.ts';
import { canonical } from '../../../src/domain/exchange/merge-fields.ts';
import { mergeEntries, mergePauses } from '../../../src/domain/exchange/merge-records.ts';
import { restore } from '../../../src/domain/exchange/restore.ts';
import type { Following } from '../../../src/domain/log/following.ts';
import { blankSheet } from '../../../src/domain/workshop/blank.ts';
import { programmeText } from '../../drivers/exchange/short-programme.ts';
import { entry, PROGRAMME_IDS, somePauses } from '../../drivers/records/entries.ts';
import { KEYS, phone } from '../../drivers/records/phones.ts';

const AT = Date.UTC(2027, 3, 12, 18);

/** What was done and written, whatever ids a phone gave to programmes kept apart. */
const done = ({ stores }: { stores: Stores }): string =>
  canonical(
    ['log', 'following', 'people', 'sheets'].map((name) =>
      [...(stores[name] ?? [])].map(([, value]) => value),
    ),
  );

const texts = ({ stores }: { stores: Stores }): readonly string[] =>
  (stores.programmes ?? []).map(([, value]) => (value as { text: string }).text).sort();

describe('laws of a restore', () => {
  it('REC-8 taken in twice it is as taken in once', () => {
    fc.assert(
      fc.property(phone, phone, (here, file) => {
        const once = restore(here, file);
        const twice = restore(once.stores, file);
        expect(twice.stores).toEqual(once.stores);
        expect(twice.changes).toEqual([]);
      }),
      { numRuns: 400 },
    );
  });

  it('REC-8 either phone’s backup on the other gives the same record and the same programmes', () => {
    // Programmes by one sender each, so that no phone has to give one an id of its own.
    const sides = fc.tuple(phone, phone).filter(([a, b]) => !apart(a, b));
    fc.assert(
      fc.property(sides, ([a, b]) => {
        expect(done(restore(a, b))).toBe(done(restore(b, a)));
        expect(restore(a, b).stores.programmes).toEqual(restore(b, a).stores.programmes);
      }),
      { numRuns: 400 },
    );
    fc.assert(
      fc.property(phone, phone, (a, b) => {
        expect(texts(restore(a, b))).toEqual(texts(restore(b, a)));
      }),
      { numRuns: 100 },
    );
  });

  it('REC-8 a backup on an empty phone is the phone it was made of, through its file', () => {
    fc.assert(
      fc.property(phone, (here) => {
        const read = readBackup(writeBackup(here, 'words', AT));
        if (!read.ok) throw new Error(read.error);
        expect(read.value).toMatchObject({ damage: 'none', newer: false, madeAt: AT });
        expect(read.value.stores).toEqual(backedUp(here));
        const kept = Object.entries(here).filter(([, rows]) => rows.length > 0);
        const { stores, notTaken } = restore({}, read.value.stores);
        expect(notTaken).toEqual([]);
        expect(stores).toEqual(Object.fromEntries(kept));
      }),
      { numRuns: 400 },
    );
  });

  it('REC-9 nothing that is here is lost: every record, every answer, every pause', () => {
    fc.assert(
      fc.property(phone, phone, (here, file) => {
        const { stores } = restore(here, file);
        for (const [name, rows] of Object.entries(here)) {
          const after = new Map(stores[name] ?? []);
          for (const [key, value] of rows) {
            expect(after.has(key)).toBe(true);
            if (name !== 'log') continue;
            const before = value as { feeling: object };
            const now = after.get(key) as { feeling: object };
            expect(Object.keys(now)).toEqual(expect.arrayContaining(Object.keys(before)));
            expect(Object.keys(now.feeling)).toEqual(
              expect.arrayContaining(Object.keys(before.feeling)),
            );
          }
        }
      }),
      { numRuns: 400 },
    );
  });
});

/** Whether a programme of one name is by different senders on the two. */
function apart(a: Stores, b: Stores): boolean {
  const signer = (stores: Stores, key: string): unknown => {
    const [, value] = stores.programmes?.find(([each]) => each === key) ?? [];
    return value === undefined ? undefined : ((value as { key?: string }).key ?? 'nobody');
  };
  return PROGRAMME_IDS.some((id) => {
    const [one, other] = [signer(a, id), signer(b, id)];
    return one !== undefined && other !== undefined && (one !== other || one === 'nobody');
  });
}

describe('one session from two phones', () => {
  it('REC-9 an answer given here and a distance mended there are both kept', () => {
    const rated = entry({ feeling: { effort: 4, note: 'wind' }, feltAt: 20 });
    const mended = entry({ feeling: { effort: 7 }, feltAt: 10, distanceM: 3100, editedAt: 30 });
    const both = mergeEntries(rated, mended);
    expect(both).toMatchObject({
      feeling: { effort: 4, note: 'wind' },
      feltAt: 20,
      distanceM: 3100,
      editedAt: 30,
    });
    expect(mergeEntries(mended, rated)).toEqual(both);
  });

  it('REC-9 what was put right last holds, when, and nothing is said of what never was', () => {
    const [once, again] = [
      entry({ distanceM: 3100, editedAt: 30 }),
      entry({ distanceM: 2900, editedAt: 40 }),
    ];
    const { feltAt: _, ...bare } = entry();
    for (const both of [mergeEntries(once, again), mergeEntries(again, once)])
      expect(both).toMatchObject({ distanceM: 2900, editedAt: 40 });
    expect(mergeEntries(once, entry())).toMatchObject({ distanceM: 3100, editedAt: 30 });
    expect(mergeEntries(bare, bare)).not.toHaveProperty('editedAt');
    expect(mergeEntries(bare, bare)).not.toHaveProperty('feltAt');
  });

  it('REC-9 what only the older one says is kept, a warning sign above all', () => {
    const older = entry({ feeling: { warningSign: true, niggle: { place: 'shin' } }, feltAt: 10 });
    const newer = entry({ feeling: { effort: 3 }, feltAt: 20 });
    expect(mergeEntries(newer, older).feeling).toEqual({
      effort: 3,
      warningSign: true,
      niggle: { place: 'shin' },
    });
  });

  it('REC-9 keys that this version does not know stay in their entries', () => {
    const strange = { ...entry({ id: 'x' }), weather: 'fog' };
    const [[, value] = []] = restore({}, { log: [['x', strange]] }).stores.log ?? [];
    expect(value).toEqual(strange);
    const { stores } = restore({ tides: [['today', 'high']], log: [] }, { log: [['x', strange]] });
    expect(stores.tides).toEqual([['today', 'high']]);
  });
});

describe('how somebody goes through a programme, from two phones', () => {
  it('REC-10 pauses of both stand in order and never overlap', () => {
    fc.assert(
      fc.property(somePauses, somePauses, (a, b) => {
        const merged = mergePauses(a, b);
        expect(mergePauses(b, a)).toEqual(merged);
        expect(mergePauses(merged, b)).toEqual(merged);
        merged.forEach((pause, n) => {
          expect(pause.to === undefined || pause.to >= pause.from).toBe(true);
          const next = merged[n + 1];
          if (next !== undefined) expect((pause.to ?? '9') < next.from).toBe(true);
        });
        const isOff = (list: typeof a, day: string) =>
          list.some(({ from, to }) => from <= day && (to === undefined || day <= to));
        for (const { from, to } of [...a, ...b]) {
          expect(isOff(merged, from)).toBe(true);
          if (to !== undefined) expect(isOff(merged, to)).toBe(true);
        }
      }),
    );
  });

  it('REC-10 a pause that one phone knows to be over is over', () => {
    const from = '2027-03-10';
    expect(
      mergePauses([{ from, why: 'holiday' }], [{ from, to: '2027-03-14', why: 'illness' }]),
    ).toEqual([{ from, to: '2027-03-14', why: 'illness' }]);
  });

  it('REC-10 the group is that of the phone on which more was done since, whichever is restored', () => {
    const following = (on: string, group: string): Following => ({
      format: 'towpath-following/1',
      programmeId: 'heron-loop-spring',
      pauses: [],
      decisions: [{ on, week: 2, group, why: 'chosen' }],
    });
    const old: Stores = {
      choices: [['heron-loop-spring', 'wren']],
      following: [['heron-loop-spring', following('2027-03-08', 'wren')]],
    };
    const recent: Stores = {
      choices: [['heron-loop-spring', 'dunlin']],
      following: [['heron-loop-spring', following('2027-03-22', 'dunlin')]],
    };
    for (const { stores } of [restore(old, recent), restore(recent, old)]) {
      expect(stores.choices).toEqual([['heron-loop-spring', 'dunlin']]);
      const [[, value] = []] = stores.following ?? [];
      expect((value as Following).decisions.map(({ group }) => group)).toEqual(['wren', 'dunlin']);
    }
  });

  it('REC-10 a group chosen here since is not put back by an older backup of this phone', () => {
    const log: readonly Row[] = [['heron-1', entry()]];
    const { stores } = restore(
      { log, choices: [['heron-loop-spring', 'dunlin']] },
      { log, choices: [['heron-loop-spring', 'wren']] },
    );
    expect(stores.choices).toEqual([['heron-loop-spring', 'dunlin']]);
  });
});

describe('what a leader wrote and sent, from two devices', () => {
  const sheet = (at: number, title: string): Row => [
    'x',
    {
      format: 'towpath-sheet/1',
      key: 'x',
      changedAt: at,
      tab: 't',
      mark: 'm',
      sheet: { ...blankSheet('marsh', 'en'), title },
    },
  ];
  const sent = (revision: number, at: number): Row => [
    'marsh',
    { id: 'marsh', revision, text: `revision ${revision}`, signature: 's', at },
  ];
  const both = (store: string, a: Row, b: Row) =>
    [restore({ [store]: [a] }, { [store]: [b] }), restore({ [store]: [b] }, { [store]: [a] })].map(
      ({ stores }) => stores[store],
    );

  it('REC-8 a programme in writing is the one that was changed last', () => {
    // By their texts 9 would come after 10.
    const [early, late] = [sheet(9, 'Wader'), sheet(10, 'Avocet')];
    expect(both('sheets', early, late)).toEqual([[late], [late]]);
  });

  it('REC-8 what was sent is the latest revision, and of one revision what went last', () => {
    expect(both('sent', sent(9, 5), sent(10, 3))).toEqual([[sent(10, 3)], [sent(10, 3)]]);
    expect(both('sent', sent(2, 9), sent(2, 10))).toEqual([[sent(2, 10)], [sent(2, 10)]]);
    expect(restore({}, { sent: [sent(1, 5)] }).stores.sent).toEqual([sent(1, 5)]);
    const [, value] = sent(1, 5);
    expect(restore({}, { sent: [['another', value]] }).notTaken).toEqual([
      { store: 'sent', key: 'another', why: 'shape' },
    ]);
  });
});

describe('settings and what belongs to one phone', () => {
  const settings = (value: object): Stores => ({ settings: [['settings', value]] });
  const settled = (here: object, file: object, defaults = {}) =>
    restore(settings(here), settings(file), { defaults }).stores.settings?.[0]?.[1];

  it('REC-11 the cautions were read on the later day, whichever side says so', () => {
    const read = (on: unknown) => ({ cautionsReadOn: on });
    const [early, late] = ['2027-03-01', '2027-04-01'];
    expect(settled(read(late), read(early))).toEqual(read(late));
    expect(settled(read(early), read(late))).toEqual(read(late));
    expect(settled({}, read(early))).toEqual(read(early));
    for (const odd of [99_999_999, null, true, ['2099-01-01']])
      expect(settled(read(early), read(odd))).toEqual(read(early));
  });

  it('REC-11 what was never chosen here is taken, whatever the app begins with', () => {
    expect(settled({}, { talk: 'few' }, { talk: 'usual' })).toEqual({ talk: 'few' });
    expect(settled({ talk: 'usual' }, { talk: 'few' }, { talk: 'usual' })).toEqual({ talk: 'few' });
    expect(settled({ talk: 'usual' }, { talk: 'few' })).toEqual({ talk: 'usual' });
  });

  it('REC-11 what was chosen here stays, what nobody chose is taken, and the later day of reading counts', () => {
    const { stores } = restore(
      settings({ talk: 'many', mode: 'hear', cautionsReadOn: '2027-03-01' }),
      settings({ talk: 'few', mode: 'watch', cautionsReadOn: '2027-04-01', askAgain: true }),
      { defaults: { talk: 'usual', mode: 'hear' } },
    );
    expect(stores.settings).toEqual([
      ['settings', { talk: 'many', mode: 'watch', cautionsReadOn: '2027-04-01', askAgain: true }],
    ]);
  });

  it('REC-7, REC-11 the pocket check, the session under way and the leader’s keys never leave the phone', () => {
    const kept = backedUp({
      settings: [['settings', { talk: 'few', pocketCheck: { at: 1 }, pocketCheckSkipped: true }]],
      keys: [['leader', { backup: 'secret' }]],
      journal: [['1', {}]],
      meta: [['lease', {}]],
    });
    expect(kept).toEqual({ settings: [['settings', { talk: 'few' }]] });
    const file: Stores = { keys: [['leader', {}]], meta: [['lease', {}]] };
    expect(restore({}, file)).toMatchObject({ stores: {}, changes: [] });
  });
});

describe('programmes of a backup', () => {
  const [KEY = '', OTHER = ''] = KEYS;
  const by = (key: string | undefined, revision: number, id = 'heron-loop-spring'): Row => {
    const leader = { name: 'Imogen', sign: key ?? null, seal: null };
    const text = programmeText('heron-loop-spring', revision, { leader });
    return [
      id,
      { id, text, cameAt: revision, ...(key === undefined ? {} : { key, signature: 's' }) },
    ];
  };
  const at = (id: string) => ({ ...entry().programme, id });
  const ids = (stores: Stores) => (stores.programmes ?? []).map(([key]) => key);

  it('REC-12 only the same leader’s later revision takes a programme’s place', () => {
    const later = restore({ programmes: [by(KEY, 1)] }, { programmes: [by(KEY, 2)] });
    expect(later.stores.programmes).toEqual([by(KEY, 2)]);
    expect(later.report.find(({ store }) => store === 'programmes')).toEqual({
      store: 'programmes',
      here: 1,
      inFile: 1,
      added: 0,
      changed: 1,
    });
    const earlier = restore({ programmes: [by(KEY, 2)] }, { programmes: [by(KEY, 1)] });
    expect(earlier.changes).toEqual([]);
  });

  it('REC-12 what nothing vouches for is kept apart, and log, group and place of that phone with it', () => {
    const follows = {
      format: 'towpath-following/1',
      programmeId: 'heron-loop-spring',
      pauses: [],
      decisions: [],
    };
    const person = {
      format: 'towpath-person/1',
      programmeId: 'heron-loop-spring',
      secret: 's',
      told: [],
    };
    const file: Stores = {
      programmes: [by(OTHER, 5)],
      choices: [['heron-loop-spring', 'swift']],
      log: [['theirs', entry({ id: 'theirs' })]],
      following: [['heron-loop-spring', follows]],
      people: [['heron-loop-spring', person]],
    };
    const here: Stores = {
      programmes: [by(KEY, 1)],
      choices: [['heron-loop-spring', 'wren']],
      log: [['ours', entry({ id: 'ours' })]],
    };
    const { stores } = restore(here, file);
    expect(ids(stores)).toEqual(['heron-loop-spring', 'heron-loop-spring.2']);
    expect(stores.programmes?.[0]).toEqual(by(KEY, 1));
    expect(stores.choices).toEqual([
      ['heron-loop-spring', 'wren'],
      ['heron-loop-spring.2', 'swift'],
    ]);
    expect(
      stores.log?.map(([key, value]) => [
        key,
        (value as { programme: { id: string } }).programme.id,
      ]),
    ).toEqual([
      ['ours', 'heron-loop-spring'],
      ['theirs', 'heron-loop-spring.2'],
    ]);
    const programmeId = 'heron-loop-spring.2';
    expect(stores.following).toEqual([[programmeId, { ...follows, programmeId }]]);
    expect(stores.people).toEqual([[programmeId, { ...person, programmeId }]]);
    expect(restore(stores, file).changes).toEqual([]);
  });

  it('REC-10 the group chosen since holds also where the programme has another id here', () => {
    const id = 'heron-loop-spring.2';
    const here: Stores = {
      programmes: [[id, { ...(by(KEY, 1)[1] as object), id }]],
      choices: [[id, 'wren']],
      log: [['ours', { ...entry({ id: 'ours', localDate: '2027-03-06' }), programme: at(id) }]],
    };
    const file: Stores = {
      programmes: [by(KEY, 1)],
      choices: [['heron-loop-spring', 'dunlin']],
      log: [['theirs', entry({ id: 'theirs', localDate: '2027-03-07' })]],
    };
    expect(restore(here, file).stores.choices).toEqual([[id, 'dunlin']]);
    const older = { ...file, log: [] };
    expect(restore(here, older).stores.choices).toEqual([[id, 'wren']]);
  });

  it('REC-12 a key that the old one signed takes the place, and a replaced one is refused', () => {
    const vouched = { 'heron-loop-spring': [KEY] };
    const { stores } = restore(
      { programmes: [by(KEY, 1)] },
      { programmes: [by(OTHER, 2)] },
      { vouched },
    );
    expect(ids(stores)).toEqual(['heron-loop-spring']);
    expect(stores.programmes?.[0]?.[1]).toMatchObject({ key: OTHER, retired: [KEY] });
    const back = restore(stores, { programmes: [by(KEY, 3)] });
    expect(back.changes).toEqual([]);
    expect(back.notTaken).toEqual([
      { store: 'programmes', key: 'heron-loop-spring', why: 'retired' },
    ]);
  });

  it('REC-12 a list of replaced keys that nobody signed locks no leader out', () => {
    const [id, value] = by(OTHER, 2);
    const { stores } = restore(
      {},
      { programmes: [[id, { ...(value as object), retired: [KEY] }]] },
    );
    expect(stores.programmes?.[0]?.[1]).not.toHaveProperty('retired');
  });

  it('REC-12 a key that the programme does not name is a wrong signature', () => {
    const [id, value] = by(KEY, 1);
    const { stores, notTaken } = restore(
      {},
      { programmes: [[id, { ...(value as object), key: OTHER }]] },
    );
    expect(stores).toEqual({});
    expect(notTaken).toEqual([{ store: 'programmes', key: id, why: 'signature' }]);
  });
});

describe('records that cannot be taken', () => {
  const taken = (log: readonly Row[], here: readonly Row[] = []) => restore({ log: here }, { log });

  it('REC-13 what has not the shape of a session is left, and the reason told', () => {
    const wrong: readonly Partial<Record<string, unknown>>[] = [
      { doneSeconds: 144_000 },
      { feeling: { effort: 11 } },
      { localDate: '2027-02-30' },
      { startedAt: 'noon' },
      { covered: [[0]] },
      { programme: null },
      { outcome: 'flown' },
    ];
    for (const part of wrong) {
      const { changes, notTaken } = taken([['x', { ...entry({ id: 'x' }), ...part }]]);
      expect([part, changes, notTaken]).toEqual([
        part,
        [],
        [{ store: 'log', key: 'x', why: 'shape' }],
      ]);
    }
    expect(taken([['y', entry({ id: 'x' })]]).notTaken).toHaveLength(1);
  });

  it('REC-13 what a later version wrote is told and left in the file', () => {
    const { changes, notTaken } = taken([
      ['x', { ...entry({ id: 'x' }), format: 'towpath-log/9' }],
    ]);
    expect(changes).toEqual([]);
    expect(notTaken).toEqual([{ store: 'log', key: 'x', why: 'newer' }]);
    expect(restore({}, { tides: [['today', 1]] }).notTaken).toEqual([
      { store: 'tides', key: 'today', why: 'unknown' },
    ]);
  });

  it('REC-13 what lies here and cannot be read is never written over', () => {
    const strange = { id: 'x', format: 'towpath-log/9' };
    const { stores, changes, notTaken } = taken([['x', entry({ id: 'x' })]], [['x', strange]]);
    expect(changes).toEqual([]);
    expect(stores.log).toEqual([['x', strange]]);
    expect(notTaken).toEqual([{ store: 'log', key: 'x', why: 'unreadable-here' }]);
  });

  it('REC-13 whatever a file holds, nothing is thrown and what is here stays', () => {
    const here: Stores = { log: [['heron-1', entry()]], choices: [['heron-loop-spring', 'wren']] };
    const anything = fc.dictionary(
      fc.constantFrom('log', 'programmes', 'choices', 'settings', 'sheets', 'people', '__proto__'),
      fc.array(fc.tuple(fc.constantFrom('heron-1', 'settings', '__proto__'), fc.anything())),
    );
    fc.assert(
      fc.property(anything, (file) => {
        const { stores } = restore(here, file as Stores);
        expect(stores.log).toEqual(here.log);
        expect(stores.choices).toContainEqual(['heron-loop-spring', 'wren']);
        expect(({} as Record<string, unknown>).polluted).toBeUndefined();
      }),
    );
  });
});
