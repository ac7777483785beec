import ICAL from 'ical.js';
import { describe, expect, it } from 'vitest';
import { DEMO_PROGRAMME_TEXT } from '../../src/app/demo/demo.ts';
import type { FileShare } from '../../src/app/ports.ts';
import { openRecords, type RecordsNeeds } from '../../src/app/records.ts';
import type { Records } from '../../src/app/records-contract.ts';
import { fail } from '../../src/domain/result.ts';
import { createExchangePorts } from '../../src/platform/exchange.ts';
import { connect } from '../../src/platform/store/connection.ts';
import { newLeader, signWith, textBy } from '../drivers/exchange/leader.ts';
import { openTab, type Tab } from '../drivers/phone.ts';
import { entry } from '../drivers/records/entries.ts';

const ID = 'heron-loop-spring';
const DEMO = JSON.parse(DEMO_PROGRAMME_TEXT) as object;

/** A phone with its records, and the files that were given out. */
async function phone(database?: string, more: Partial<RecordsNeeds> = {}) {
  const tab = await openTab(database === undefined ? {} : { database });
  const files = new Map<string, string>();
  const share: FileShare = {
    give: async (name, _, content) => void files.set(name, content as string),
  };
  let asked = 0;
  const connection = connect(tab.database);
  const records = await openRecords({
    exchange: async () => ({
      ...createExchangePorts(connection),
      address: () => 'https://club.example/app/',
    }),
    clock: tab.clock,
    share,
    device: { persist: async () => void asked++ },
    programmes: tab.app.programmes,
    settings: {
      store: tab.app.settings,
      show: (stored) =>
        tab.app.settings.setState({
          settings: { ...tab.app.settings.getState().settings, ...stored },
        }),
    },
    log: tab.app.log,
    following: tab.app.following,
    received: tab.app.received,
    ...more,
  });
  const backup = async (): Promise<Blob> => {
    await records.saveBackup();
    return new Blob([[...files].at(-1)?.[1] ?? '']);
  };
  return { tab, records, files, backup, persisted: () => asked };
}

async function opened(records: Records, file: Blob) {
  const preview = await records.open(file);
  if (!preview.ok) throw new Error(preview.error.code);
  return preview.value;
}

const live = async ({ app }: Pick<Tab, 'app'>, ids: readonly string[]): Promise<void> => {
  for (const id of ids) await app.log.getState().write(entry({ id, startedAt: Number(id) }));
};
const logged = ({ app }: Pick<Tab, 'app'>) => app.log.getState().entries.map(({ id }) => id);

describe('moving to another phone', () => {
  it('REC-19 a restore is done before the browser was allowed to keep it, which may be never', async () => {
    const old = await phone();
    await live(old.tab, ['1']);
    const fresh = await phone(undefined, {
      device: { persist: () => new Promise<void>(() => {}) },
    });
    await opened(fresh.records, await old.backup());
    expect((await fresh.records.restore()).ok).toBe(true);
    expect(logged(fresh.tab)).toEqual(['1']);
  });

  it('REC-19 a new phone set up from a backup shows at once what the old one had', async () => {
    const old = await phone();
    await live(old.tab, ['1', '2']);
    await old.tab.app.programmes.getState().chooseGroup(ID, 'curlew');
    await old.tab.app.settings.getState().change({ talk: 'few', cautionsReadOn: '2027-03-01' });
    await old.tab.app.following.getState().change({
      format: 'towpath-following/1',
      programmeId: ID,
      startedOn: '2027-03-08',
      pauses: [],
      decisions: [],
    });
    await old.tab.clock.pass(1);

    const fresh = await phone();
    const preview = await opened(fresh.records, await old.backup());
    expect(preview).toMatchObject({
      kind: 'backup',
      newer: false,
      damage: 'none',
      days: { first: '2027-03-07', last: '2027-03-07' },
      notTaken: [],
    });
    expect(preview.report.find(({ store }) => store === 'log')).toEqual({
      store: 'log',
      here: 0,
      inFile: 2,
      added: 2,
      changed: 0,
    });
    // Looking changes nothing.
    expect(logged(fresh.tab)).toEqual([]);
    expect((await fresh.tab.store.load()).ok && logged(fresh.tab)).toEqual([]);

    expect((await fresh.records.restore()).ok).toBe(true);
    expect(logged(fresh.tab)).toEqual(['2', '1']);
    expect(fresh.tab.app.programmes.getState().chosen[ID]).toBe('curlew');
    expect(fresh.tab.app.settings.getState().settings).toMatchObject({ talk: 'few' });
    expect(fresh.tab.app.following.getState().following[ID]?.startedOn).toBe('2027-03-08');
    expect(fresh.persisted()).toBe(1);

    const again = await openTab({ database: fresh.tab.database });
    expect(logged(again)).toEqual(['2', '1']);
    expect(again.app.programmes.getState().chosen[ID]).toBe('curlew');
  });

  it('REC-19 two halves of a person become one, and an answer given since is not taken back', async () => {
    const [one, other] = [await phone(), await phone()];
    await live(one.tab, ['1', '2']);
    await live(other.tab, ['3']);
    await one.tab.clock.pass(1);
    await other.tab.clock.pass(1);
    const [ofOne, ofOther] = [await one.backup(), await other.backup()];
    await opened(one.records, ofOther);
    await one.records.restore();
    await opened(other.records, ofOne);
    await other.records.restore();
    expect(logged(one.tab)).toEqual(['3', '2', '1']);
    expect(logged(other.tab)).toEqual(logged(one.tab));

    await one.tab.clock.pass(3600);
    await one.tab.app.log
      .getState()
      .write(entry({ id: '1', startedAt: 1, feeling: { effort: 9 }, feltAt: one.tab.clock.now() }));
    await one.tab.clock.pass(1);
    await opened(one.records, ofOne);
    await one.records.restore();
    expect(one.tab.app.log.getState().entries.find(({ id }) => id === '1')?.feeling.effort).toBe(9);
  });

  it('REC-20 all of it is written, or nothing', async () => {
    const old = await phone();
    await live(old.tab, ['1']);
    await old.tab.clock.pass(1);
    const file = await old.backup();
    const fresh = await phone();
    const whole = createExchangePorts(connect(fresh.tab.database));
    const broken = await phone(fresh.tab.database, {
      exchange: async () => ({
        ...whole,
        address: () => '',
        records: {
          ...whole.records,
          // The transaction gives up on its last record, as on a full phone.
          change: (job) =>
            whole.records.change((here) => {
              const made = job(here);
              return { ...made, changes: [...made.changes, { store: 'log', key: 'x', value: 5 }] };
            }),
        },
      }),
    });
    await opened(broken.records, file);
    expect(await broken.records.restore()).toEqual(fail({ code: 'lost' }));
    const after = await whole.records.everything();
    expect(after.ok && Object.values(after.value).flat()).toEqual([]);
    expect(logged(broken.tab)).toEqual([]);
  });

  it('REC-20 nothing is taken in while something here waits to be written', async () => {
    const old = await phone();
    await live(old.tab, ['1']);
    await old.tab.clock.pass(1);
    const fresh = await phone();
    await opened(fresh.records, await old.backup());
    fresh.tab.app.log.setState({ unsaved: true });
    expect(await fresh.records.restore()).toEqual(fail({ code: 'lost' }));
    expect(logged(fresh.tab)).toEqual([]);
  });

  it('REC-13 a file that is no backup is told, and what was opened before is forgotten', async () => {
    const old = await phone();
    await live(old.tab, ['1']);
    await old.tab.clock.pass(1);
    const fresh = await phone();
    await opened(fresh.records, await old.backup());
    expect(await fresh.records.open(new Blob([DEMO_PROGRAMME_TEXT]))).toEqual(
      fail({ code: 'programme' }),
    );
    expect(await fresh.records.restore()).toEqual(fail({ code: 'lost' }));
    expect(logged(fresh.tab)).toEqual([]);
  });
});

describe('signed programmes in a backup', () => {
  const signed = (leader = newLeader()) => {
    const text = textBy(leader, DEMO);
    return { leader, text, signature: signWith(leader, Buffer.from(text, 'utf8')) };
  };
  const backupOf = (programme: object): Blob =>
    new Blob([
      JSON.stringify({
        format: 'towpath-backup/1',
        stores: { programmes: [[ID, { id: ID, cameAt: 1, ...programme }]] },
      }),
    ]);

  it('REC-12 a signature is verified anew, and only a right one is taken', async () => {
    const { leader, text, signature } = signed();
    const right = { text, key: leader.sign, signature };
    const fresh = await phone();
    const preview = await opened(fresh.records, backupOf(right));
    expect(preview).toMatchObject({ notTaken: [], programmes: ['Six weeks to the Heron Loop'] });
    await fresh.records.restore();
    expect(fresh.tab.app.received.getState().came[ID]).toMatchObject({ signed: true });

    const wrong = [
      { ...right, text: text.replace('Six weeks', 'Ten weeks') },
      { ...right, signature: signed().signature },
      { text, key: leader.sign },
    ];
    for (const each of wrong) {
      const other = await phone();
      const { notTaken, report } = await opened(other.records, backupOf(each));
      expect(notTaken).toEqual([{ store: 'programmes', key: ID, why: 'signature' }]);
      expect(report.find(({ store }) => store === 'programmes')?.added).toBe(0);
    }
  });

  it('REC-12 a new key that the old one signed is known by its proofs, not by the file’s word', async () => {
    const { leader, text, signature } = signed();
    const next = newLeader(leader);
    const later = textBy(next, DEMO, { revision: 2 });
    const update = {
      text: later,
      key: next.sign,
      signature: signWith(next, Buffer.from(later, 'utf8')),
    };
    const fresh = await phone();
    await opened(fresh.records, backupOf({ text, key: leader.sign, signature }));
    await fresh.records.restore();
    await opened(fresh.records, backupOf(update));
    await fresh.records.restore();
    const { programmes } = fresh.tab.app.programmes.getState();
    expect(
      programmes.filter(({ id }) => id.startsWith(ID)).map(({ revision }) => revision),
    ).toEqual([2]);
  });
});

describe('what is given out', () => {
  it('REC-17, REC-18 the log goes out as a table and as JSON, entries of a newer version in the JSON', async () => {
    const { tab, records, files } = await phone();
    await live(tab, ['1']);
    await tab.clock.pass(1);
    const later = { id: 'later', format: 'towpath-log/9', startedAt: 0 };
    await tab.store.putEntry(later as never);
    await records.saveLog('csv');
    await records.saveLog('json');
    expect([...files.keys()]).toEqual([
      'towpath-sessions-2027-03-07.csv',
      'towpath-sessions-2027-03-07.json',
    ]);
    const [csv = '', json = ''] = [...files.values()];
    expect(csv.split('\r\n')).toHaveLength(3);
    expect((JSON.parse(json) as { entries: unknown[] }).entries).toEqual([
      entry({ id: '1', startedAt: 1 }),
      later,
    ]);
  });

  it('REC-1, REC-4 the calendar goes on from the week that is theirs, and leaves out what is done', async () => {
    // Sunday, 7 March 2027: the last day of week 1.
    const { tab, records, files } = await phone();
    const wish = { programmeId: ID, groupId: 'wren', days: [2, 7], minutes: 600, alarmMinutes: 30 };
    await tab.app.log
      .getState()
      .write(entry({ id: 'a', week: 1, session: 1, localDate: '2027-03-02' }));
    const preview = records.calendar(wish);
    expect(preview).toMatchObject({ first: '2027-03-07', last: '2027-04-06' });
    await records.saveCalendar(wish);
    const [[name, text] = ['', '']] = files;
    expect(name).toBe('heron-loop-spring-wren.ics');
    const events = new ICAL.Component(ICAL.parse(text)).getAllSubcomponents('vevent');
    expect(events).toHaveLength((preview?.sessions ?? 0) + 1);
    const first = new ICAL.Event(events[0]);
    expect(first.uid).toBe('heron-loop-spring.w1.s2@towpath.invalid');
    expect(first.summary).toBe('Week 1, session 2: Wren, 31 min');
    expect(first.description).toContain('https://club.example/app/#/p/heron-loop-spring/1/2');
    expect(new ICAL.Event(events.at(-1)).summary).toBe('Heron Loop');

    expect(records.calendar({ ...wish, days: [] })).toBeUndefined();
  });

  it('REC-1 somebody who has paused has nothing planned in the pause', async () => {
    const { tab, records } = await phone();
    await tab.app.following.getState().change({
      format: 'towpath-following/1',
      programmeId: ID,
      startedOn: '2027-03-08',
      pauses: [{ from: '2027-03-08', to: '2027-03-21', why: 'holiday' }],
      decisions: [],
    });
    const wish = { programmeId: ID, groupId: 'wren', days: [2], minutes: 600 };
    expect(records.calendar(wish)?.first).toBe('2027-03-23');
  });
});
