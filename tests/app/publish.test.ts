import { describe, expect, it } from 'vitest';
import type { Sending } from '../../src/app/exchange-contract.ts';
import { everythingIn } from '../drivers/database.ts';
import { nodeVerifies } from '../drivers/exchange/leader.ts';
import { marshProgramme } from '../drivers/exchange/programmes.ts';
import { openTab, type Tab } from '../drivers/phone.ts';

const PASSPHRASE = 'four herons by the gate';
const programme = (more: object = {}): string =>
  JSON.stringify({ ...marshProgramme(4), ...more }, null, 2);
const ID = 'heron-loop-spring';

const publishing = (tab: Tab) => tab.app.publishing.getState();

async function leaderPhone(): Promise<Tab> {
  const tab = await openTab();
  await publishing(tab).load();
  expect(await publishing(tab).makeKeys(PASSPHRASE)).toEqual({ ok: true, value: undefined });
  return tab;
}

async function publish(tab: Tab, text: string, change?: string): Promise<Sending> {
  const done = await publishing(tab).publish(text, change);
  if (!done.ok) throw new Error(done.error.code);
  return done.value;
}

async function verdictOn(tab: Tab, text: string): Promise<string> {
  const { open } = tab.app.received.getState();
  await open(text);
  const state = tab.app.received.getState().received;
  if (state.name !== 'preview') throw new Error(JSON.stringify(state));
  if (state.preview.choices[0]) await tab.app.received.getState().accept(state.preview.choices[0]);
  return state.preview.verdict.kind;
}

describe('publishing', () => {
  it('XCHG-20 waits for the keys and for their backup', async () => {
    const tab = await openTab();
    await publishing(tab).load();
    expect(publishing(tab).keys).toEqual({ name: 'none' });
    expect(await publishing(tab).publish(programme())).toMatchObject({
      error: { code: 'no-keys' },
    });
    expect(await publishing(tab).makeKeys('too short')).toMatchObject({
      error: { code: 'passphrase-short' },
    });
    await publishing(tab).makeKeys(PASSPHRASE);
    expect(tab.seen.files).toMatchObject([{ name: 'towpath-keys-backup.txt', type: 'text/plain' }]);
    expect(publishing(tab).keys).toMatchObject({ name: 'there', savedAt: tab.clock.now() });
    expect(await publishing(tab).publish(programme())).toMatchObject({ ok: true });
  });

  it('XCHG-20 the same content is the same revision again, other content the next', async () => {
    const tab = await leaderPhone();
    const first = await publish(tab, programme());
    const again = await publish(tab, programme());
    expect([first.revision, again.revision]).toEqual([1, 1]);
    expect(again.link).toBe(first.link);
    const second = await publish(tab, programme({ title: 'Changed' }), 'A new title.');
    expect(second).toMatchObject({ revision: 2, signed: true, title: 'Changed' });
    expect(second.message).toContain('A new title.');
    const reopened = await openTab({ database: tab.database });
    await publishing(reopened).load();
    expect(publishing(reopened).sent[ID]).toMatchObject({ revision: 2 });
    expect((await publish(reopened, programme({ title: 'Third' }))).revision).toBe(3);
  });

  it('XCHG-20 what cannot be read is not published', async () => {
    const tab = await leaderPhone();
    const wrong = await publishing(tab).publish(programme({ weeks: [] }));
    expect(wrong).toMatchObject({ error: { code: 'programme' } });
    expect(publishing(tab).sent).toEqual({});
  });

  it('XCHG-21 a participant’s phone takes the text, and Node’s cryptography the signature', async () => {
    const leader = await leaderPhone();
    const participant = await openTab();
    const going = await publish(leader, programme());
    expect(await verdictOn(participant, going.text)).toBe('new');
    expect(await verdictOn(participant, going.message)).toBe('same');
    const changed = await publish(leader, programme({ title: 'Changed' }), 'Week 2 is easier.');
    expect(await verdictOn(participant, changed.text)).toBe('update');
    const [stored] = await kept(participant);
    if (stored?.key === undefined || stored.signature === undefined) throw new Error('unsigned');
    const bytes = new Uint8Array(Buffer.from(stored.text, 'utf8'));
    expect(nodeVerifies(stored.key, bytes, stored.signature)).toBe(true);
  });

  it('XCHG-21 the text says in its first line, in words, what it is', async () => {
    const tab = await leaderPhone();
    const going = await publish(tab, programme(), 'Less\nin week 2');
    const [first, second] = going.text.split('\n');
    expect(first).toBe(
      'A walking and running programme for the Towpath app: “Four weeks to the Heron Loop”, revision 1, from Imogen.',
    );
    expect(second).toBe('What changed: Less in week 2');
    expect(going.fileName).toBe(`${ID}-1.txt`);
    await publishing(tab).give(going);
    expect(tab.seen.files.at(-1)).toMatchObject({ name: going.fileName, type: 'text/plain' });
  });

  it('XCHG-20 new keys: the same programme goes out anew, and is taken over by who has the old', async () => {
    const leader = await leaderPhone();
    const participant = await openTab();
    await verdictOn(participant, (await publish(leader, programme())).link);
    await publishing(leader).replaceKeys(PASSPHRASE);
    const next = await publish(leader, programme());
    expect(next.revision).toBe(2);
    expect(await verdictOn(participant, next.link)).toBe('rotated');
  });

  it('XCHG-17 a new phone leads on from the backup file, with revisions that go on', async () => {
    const old = await leaderPhone();
    const first = await publish(old, programme());
    const second = await publish(old, programme({ title: 'Changed' }));
    const { keys } = await exchangeKeys(old);
    const fresh = await openTab();
    await publishing(fresh).load();
    expect(await publishing(fresh).restore(keys, PASSPHRASE)).toEqual({
      ok: true,
      value: undefined,
    });
    await verdictOn(fresh, second.link);
    const third = await publish(fresh, programme({ title: 'Third' }));
    expect(third.revision).toBe(3);
    const participant = await openTab();
    await verdictOn(participant, first.link);
    expect(await verdictOn(participant, third.link)).toBe('update');
  });

  it('XCHG-13 the digits that the leader reads out are those that a participant is shown', async () => {
    const participant = await openTab();
    await verdictOn(participant, (await publish(await leaderPhone(), programme())).link);
    const anew = await leaderPhone();
    const going = await publish(anew, programme({ title: 'Changed' }));
    await participant.app.received.getState().open(going.link);
    const state = participant.app.received.getState().received;
    const { keys } = publishing(anew);
    if (state.name !== 'preview' || keys.name !== 'there') throw new Error(state.name);
    expect(state.preview.digits).toBe(await keys.digits(ID));
  });

  it('XCHG-12 a copy without keys can be sent by anyone, and says so', async () => {
    const tab = await openTab();
    const going = await publishing(tab).unsigned(programme());
    if (!going.ok) throw new Error(going.error.code);
    expect(going.value.signed).toBe(false);
    expect(going.value.text).toContain('not signed');
    const participant = await openTab();
    expect(await verdictOn(participant, going.value.link)).toBe('new');
    expect((await kept(participant))[0]).not.toHaveProperty('key');
  });

  it('XCHG-9 it goes out as the symbols that hold it', async () => {
    const tab = await leaderPhone();
    const going = await publish(tab, JSON.stringify(marshProgramme(12)));
    expect(going.codes).toHaveLength(2);
    for (const { version, size } of going.codes) {
      expect(version).toBeLessThanOrEqual(25);
      expect(size).toBe(17 + 4 * version + 8);
    }
  });
});

const kept = async (tab: Tab) => {
  const all = await tab.store.load();
  if (!all.ok) throw new Error(all.error.detail);
  return all.value.programmes;
};

/** The backup as it lies on the phone, and as the share sheet was given it. */
async function exchangeKeys(tab: Tab): Promise<{ readonly keys: string }> {
  const { keys } = await everythingIn(tab.database);
  const [record] = keys as readonly { readonly backup: string }[];
  return { keys: record?.backup ?? '' };
}
