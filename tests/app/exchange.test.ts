import { describe, expect, it } from 'vitest';
import type { Acceptance, Verdict } from '../../src/app/exchange-contract.ts';
import { joinLink, partLinks } from '../../src/domain/exchange/link.ts';
import type { LogEntry } from '../../src/domain/log/entry.ts';
import { codeBy, codeOf, type Leader, newLeader, textBy } from '../drivers/exchange/leader.ts';
import { marshProgramme } from '../drivers/exchange/programmes.ts';
import { openTab, type Tab } from '../drivers/phone.ts';

const BASE = 'https://club.example/app/';
const imogen = newLeader();
const programme = marshProgramme(4);
const ID = 'heron-loop-spring';
const later = { ...programme, title: 'Four weeks, changed' };

const linkOf = (leader: Leader | undefined, revision: number, content: object = programme) =>
  joinLink(BASE, codeOf(leader, content, { revision }));

const received = (tab: Tab) => tab.app.received.getState();
const seen = (tab: Tab) => received(tab).received;

async function preview(tab: Tab, text: string) {
  await received(tab).open(text);
  const state = seen(tab);
  if (state.name !== 'preview') throw new Error(JSON.stringify(state));
  return state.preview;
}

async function take(tab: Tab, text: string, choice: Acceptance = 'keep'): Promise<Verdict['kind']> {
  const { verdict } = await preview(tab, text);
  expect(await received(tab).accept(choice)).toEqual({ ok: true, value: undefined });
  expect(seen(tab).name).toBe('kept');
  return verdict.kind;
}

const stored = async (tab: Tab) => {
  const all = await tab.store.load();
  if (!all.ok) throw new Error(all.error.detail);
  return all.value.programmes;
};

const logEntry = (part: Pick<LogEntry, 'id' | 'programme'>): LogEntry => ({
  format: 'towpath-log/2',
  group: { id: 'curlew', name: 'Curlew' },
  week: 1,
  session: 1,
  plan: '5 min easy walk; 7 x (1 min walk, 2 min run); 5 min easy walk',
  target: 50,
  startedAt: 1_804_410_000_000,
  offsetMinutes: 0,
  zone: 'UTC',
  localDate: '2027-03-08',
  outcome: 'finished',
  doneSeconds: 1860,
  activeSeconds: 1860,
  covered: [[0, 1860]],
  feeling: { effort: 5 },
  how: 'app',
  ...part,
});

const titles = (tab: Tab) =>
  Object.fromEntries(tab.app.programmes.getState().programmes.map(({ id, title }) => [id, title]));

describe('receiving', () => {
  it('XCHG-18 shows what came before anything is stored, and stores it when asked', async () => {
    const tab = await openTab();
    const shown = await preview(tab, `Hello!\n${linkOf(imogen, 1)}\nImogen`);
    expect(shown).toMatchObject({ verdict: { kind: 'new' }, signed: true, choices: ['keep'] });
    expect(shown.programme).toMatchObject({ title: 'Four weeks to the Heron Loop', revision: 1 });
    expect(shown.programme.groups).toHaveLength(4);
    expect(await stored(tab)).toEqual([]);
    await received(tab).accept('keep');
    expect(await stored(tab)).toMatchObject([
      { id: ID, key: imogen.sign, text: shown.programme.text },
    ]);
    expect(received(tab).came[ID]).toMatchObject({ revision: 1, leader: 'Imogen', signed: true });
    expect(titles(tab)[ID]).toBe('Four weeks to the Heron Loop');
  });

  it('XCHG-18 what is put away is not stored, and nothing but what was offered is', async () => {
    const tab = await openTab();
    await preview(tab, linkOf(imogen, 1));
    await received(tab).accept('take-over');
    expect(seen(tab).name).toBe('preview');
    received(tab).dismiss();
    await received(tab).accept('keep');
    expect(seen(tab)).toEqual({ name: 'nothing' });
    expect(await stored(tab)).toEqual([]);
  });

  it('XCHG-18 what another tab stored meanwhile is looked at again before storing', async () => {
    const tab = await openTab();
    const other = await openTab({ database: tab.database });
    await preview(tab, linkOf(imogen, 1));
    await take(other, linkOf(imogen, 2, later));
    await received(tab).accept('keep');
    expect(seen(tab)).toMatchObject({ preview: { verdict: { kind: 'older', stored: 2 } } });
    expect(await stored(tab)).toHaveLength(1);
  });

  it('XCHG-19 an update comes in the place of what is here, group and log untouched', async () => {
    const tab = await openTab();
    await take(tab, linkOf(imogen, 1));
    await tab.app.programmes.getState().chooseGroup(ID, 'curlew');
    expect(await take(tab, linkOf(imogen, 2, later))).toBe('update');
    expect(titles(tab)[ID]).toBe('Four weeks, changed');
    expect(tab.app.programmes.getState().chosen[ID]).toBe('curlew');
    const again = await openTab({ database: tab.database });
    expect(titles(again)[ID]).toBe('Four weeks, changed');
    expect(again.app.programmes.getState().chosen[ID]).toBe('curlew');
    expect(received(again).came[ID]).toMatchObject({ revision: 2, apart: false });
  });

  it('XCHG-19 the log keeps every entry as it was, whatever comes after it', async () => {
    const tab = await openTab();
    await take(tab, linkOf(imogen, 1));
    const entry = logEntry({
      id: 'monday',
      programme: { id: ID, revision: 1, title: 'Four weeks' },
    });
    await tab.store.putEntry(entry);
    await take(tab, linkOf(imogen, 2, later));
    await take(tab, linkOf(newLeader(imogen), 3));
    await take(tab, linkOf(newLeader(), 4, later), 'take-over');
    await take(tab, linkOf(undefined, 5), 'keep-apart');
    const again = await openTab({ database: tab.database });
    expect(again.app.log.getState().entries).toEqual([entry]);
    expect(Object.keys(received(again).came)).toEqual([ID, `${ID}.2`]);
  });

  it('XCHG-19 a group that is no longer in it is told by its name', async () => {
    const tab = await openTab();
    await take(tab, linkOf(imogen, 1));
    await tab.app.programmes.getState().chooseGroup(ID, 'swift');
    const text = textBy(imogen, programme, { revision: 2 });
    const without = JSON.parse(text);
    without.groups = without.groups.filter((group: { id: string }) => group.id !== 'swift');
    for (const week of without.weeks) delete week.sessions.swift;
    const shown = await preview(tab, joinLink(BASE, codeBy(imogen, JSON.stringify(without))));
    expect(shown).toMatchObject({ verdict: { kind: 'update' }, groupGone: 'Swift' });
  });

  it('XCHG-18 the same again, an older one and a conflict are told, and change nothing', async () => {
    const tab = await openTab();
    await take(tab, linkOf(imogen, 2));
    const kinds = [
      await preview(tab, linkOf(imogen, 2)),
      await preview(tab, linkOf(imogen, 1)),
      await preview(tab, linkOf(imogen, 2, later)),
    ];
    expect(kinds.map(({ verdict }) => verdict.kind)).toEqual(['same', 'older', 'conflict']);
    expect(kinds.map(({ choices }) => choices)).toEqual([[], [], ['take-over']]);
    expect(kinds[2]?.stored).toMatchObject({ revision: 2, leader: 'Imogen' });
    expect(titles(tab)[ID]).toBe('Four weeks to the Heron Loop');
  });

  it('XCHG-12 an unsigned copy is kept beside, and both are followed and kept apart', async () => {
    const tab = await openTab();
    await take(tab, linkOf(imogen, 1));
    await tab.app.programmes.getState().chooseGroup(ID, 'wren');
    expect(await take(tab, JSON.stringify(later), 'keep-apart')).toBe('copy');
    await tab.app.programmes.getState().chooseGroup(`${ID}.2`, 'swift');
    const again = await openTab({ database: tab.database });
    expect(titles(again)).toMatchObject({
      [ID]: 'Four weeks to the Heron Loop',
      [`${ID}.2`]: 'Four weeks, changed',
    });
    expect(again.app.programmes.getState().chosen).toEqual({ [ID]: 'wren', [`${ID}.2`]: 'swift' });
    expect(received(again).came[`${ID}.2`]).toMatchObject({ apart: true, signed: false });
  });

  it('XCHG-13 a key that the old one signed is taken over, and the old one is then refused', async () => {
    const tab = await openTab();
    await take(tab, linkOf(imogen, 1));
    const renewed = newLeader(imogen);
    expect(await take(tab, linkOf(renewed, 2, later))).toBe('rotated');
    expect((await stored(tab))[0]).toMatchObject({ key: renewed.sign, retired: [imogen.sign] });
    const old = await preview(tab, linkOf(imogen, 3));
    expect(old).toMatchObject({ verdict: { kind: 'retired' }, choices: [] });
  });

  it('XCHG-13 a change of keys that the old key did not sign counts for nothing', async () => {
    const tab = await openTab();
    await take(tab, linkOf(imogen, 1));
    const stranger = newLeader(newLeader());
    const forged = {
      ...stranger,
      was: [{ sign: imogen.sign, proof: stranger.was[0]?.proof ?? '' }],
    };
    const shown = await preview(tab, linkOf(forged, 2));
    expect(shown.verdict).toEqual({ kind: 'key-changed', from: 1 });
    expect(shown.digits).toMatch(/^\d{3} \d{3}$/);
  });

  it('XCHG-13 a lost key is replaced after six digits were compared; group and place stay', async () => {
    const tab = await openTab();
    await take(tab, linkOf(imogen, 1));
    await tab.app.programmes.getState().chooseGroup(ID, 'dunlin');
    const again = newLeader();
    expect(await take(tab, linkOf(again, 2, later), 'take-over')).toBe('key-changed');
    expect(titles(tab)[ID]).toBe('Four weeks, changed');
    expect(tab.app.programmes.getState().chosen[ID]).toBe('dunlin');
    expect(await take(tab, linkOf(again, 3))).toBe('update');
  });

  it('XCHG-16 what is damaged or forged is one sentence, and nothing is stored', async () => {
    const tab = await openTab();
    const good = codeOf(imogen, programme);
    const forged = codeBy(newLeader(), textBy(imogen, programme));
    const cases: readonly (readonly [string, string])[] = [
      [joinLink(BASE, good.slice(0, -7)), 'damaged'],
      [joinLink(BASE, forged), 'signature'],
      ['See you on Sunday', 'nothing-found'],
      ['', 'empty'],
      ['{"format":"towpath-programme/9"}', 'newer'],
      ['{"format":"towpath-programme/1"}', 'programme'],
      ['x'.repeat(1_000_000), 'too-large'],
    ];
    for (const [text, code] of cases) {
      await received(tab).open(text);
      expect(seen(tab), code).toMatchObject({ name: 'refused', problem: { code } });
    }
    expect(await stored(tab)).toEqual([]);
  });

  it('XCHG-9 parts come in any order, one by one or together, and say which are there', async () => {
    const tab = await openTab();
    const [one = '', two = '', three = ''] = partLinks(BASE, codeOf(imogen, programme), 3);
    await received(tab).open(three);
    expect(seen(tab)).toEqual({ name: 'parts', have: [3], of: 3 });
    await received(tab).open(one);
    await received(tab).open(one);
    expect(seen(tab)).toEqual({ name: 'parts', have: [1, 3], of: 3 });
    expect((await preview(tab, two)).verdict.kind).toBe('new');
    received(tab).dismiss();
    expect((await preview(tab, `${two}\n${three}\n${one}`)).signed).toBe(true);
  });

  it('XCHG-22 a text file leads to the same preview, and what is no text is refused', async () => {
    const tab = await openTab();
    await received(tab).openFile(new Blob([`Programme:\n${linkOf(imogen, 1)}`]));
    expect(seen(tab)).toMatchObject({ name: 'preview', preview: { signed: true } });
    await received(tab).openFile(new Blob([JSON.stringify(programme)]));
    expect(seen(tab)).toMatchObject({ name: 'preview', preview: { signed: false } });
    const wrong: readonly (readonly [Blob, string])[] = [
      [new Blob([Uint8Array.of(1, 255, 254)]), 'file-kind'],
      [new Blob([]), 'empty'],
      [new Blob(['x'.repeat(400_000)]), 'too-large'],
      [new Blob(['minutes of the last meeting']), 'nothing-found'],
    ];
    for (const [file, code] of wrong) {
      await received(tab).openFile(file);
      expect(seen(tab), code).toMatchObject({ name: 'refused', problem: { code } });
    }
  });
});
