import { describe, expect, it } from 'vitest';
import { DEMO_PROGRAMME_TEXT } from '../../src/app/demo/demo.ts';
import { editRefusal } from '../../src/copy/refusals.ts';
import { fail } from '../../src/domain/result.ts';
import { blankSheet } from '../../src/domain/workshop/blank.ts';
import type { Edit } from '../../src/domain/workshop/edit.ts';
import { REFUSALS } from '../../src/domain/workshop/refusal.ts';
import type { Sheet } from '../../src/domain/workshop/sheet.ts';
import { HandClock, settle } from '../drivers/clock.ts';
import { everythingIn } from '../drivers/database.ts';
import { openTab } from '../drivers/phone.ts';
import { MemorySheets } from '../drivers/workshop/memory-sheets.ts';
import { workshopOver } from '../drivers/workshop/workshop.ts';

const WALK = '5 min easy walk; 20 min walk; 5 min easy walk';
const BLANK = blankSheet('marsh-a', 'en');
const cell = (text: string, week = 0): Edit => ({
  kind: 'cell',
  at: { week, group: 'a', session: 0 },
  text,
});
const title = (text: string): Edit => ({ kind: 'title', title: text });

/** A workshop that has read what is there, in a tab of its own. */
async function tab(store = new MemorySheets(), clock = new HandClock()) {
  const shop = workshopOver(store, clock);
  await shop.getState().load();
  return { shop, store, clock, ask: shop.getState(), now: () => shop.getState().open };
}

/** With a blank sheet open. */
async function writing() {
  const all = await tab();
  const key = await all.ask.create(BLANK);
  return { ...all, key };
}

const titles = ({ there }: MemorySheets): readonly string[] =>
  [...there.values()].map(({ sheet }) => sheet.title).sort();

describe('a sheet that is open', () => {
  it('SHOP-17 tells how each session was understood, and the last good of one that is wrong', async () => {
    const { ask, now } = await writing();
    ask.edit(cell(WALK));
    expect(now()?.readings[0]?.a?.[0]).toMatchObject({
      problems: [],
      timeline: { total: 1_800_000 },
    });
    ask.edit(cell(`${WALK}; 5 m walk`));
    const wrong = now()?.readings[0]?.a?.[0];
    expect(wrong?.timeline?.total).toBe(1_800_000);
    expect(wrong?.problems.map(({ code }) => code)).toEqual(['unit-m']);
    expect(now()?.outline.weeks[0]?.sessions).toMatchObject({ a: [{ text: WALK }], b: [] });
  });

  it('SHOP-17 keeps readings and outline of what did not change as the same objects', async () => {
    const { ask, now } = await writing();
    ask.edit(cell(WALK, 1));
    const before = now();
    ask.edit(cell(WALK, 0));
    const after = now();
    for (const week of [1, 2, 3]) {
      expect(after?.readings[week]).toBe(before?.readings[week]);
      expect(after?.outline.weeks[week]).toBe(before?.outline.weeks[week]);
    }
    expect(after?.readings[0]?.b?.[0]).toBe(before?.readings[0]?.b?.[0]);
    expect(after?.readings[0]?.a?.[0]?.timeline).toBe(before?.readings[1]?.a?.[0]?.timeline);
  });

  it('SHOP-2 says why an edit was not made, and stays as it was', async () => {
    const { ask, now } = await writing();
    const before = now()?.sheet;
    expect(ask.edit({ kind: 'effort', week: 0, effort: 101 })).toEqual({
      code: 'number',
      detail: { min: 0, max: 100 },
    });
    expect(now()?.sheet).toBe(before);
    const sentences = REFUSALS.map((code) =>
      editRefusal({ code, detail: { min: 1, max: 2, limit: 3 } }),
    );
    expect(new Set(sentences).size).toBe(REFUSALS.length);
    for (const sentence of sentences) expect(sentence).toMatch(/^[A-Z].*\.$/);
  });

  it('SHOP-10 goes back and forward again, and each is kept as well', async () => {
    const { ask, now, store, key } = await writing();
    expect(now()).toMatchObject({ canUndo: false, canRedo: false });
    ask.edit(title('One'));
    ask.undo();
    expect(now()).toMatchObject({ canUndo: false, canRedo: true, sheet: { title: '' } });
    await settle();
    expect(store.there.get(key)?.sheet.title).toBe('');
    ask.redo();
    await settle();
    expect(store.there.get(key)?.sheet.title).toBe('One');
    ask.undo();
    ask.undo();
    expect(now()?.sheet).toBe(BLANK);
  });

  it('SHOP-11 typing that rests for three seconds is a step of its own', async () => {
    const { ask, now, clock } = await writing();
    ask.edit(title('O'));
    await clock.pass(2);
    ask.edit(title('On'));
    await clock.pass(3);
    ask.edit(title('One'));
    ask.undo();
    expect(now()?.sheet.title).toBe('On');
    ask.undo();
    expect(now()?.sheet.title).toBe('');
  });

  it('SHOP-13 is read back as a file, or what stands in the way is named', async () => {
    const { ask } = await writing();
    expect(ask.file()).toMatchObject({ ok: false, error: [{ path: 'title' }, {}, {}] });
    await ask.createFromFile(DEMO_PROGRAMME_TEXT);
    expect(ask.file()).toMatchObject({ ok: true, value: { id: 'heron-loop-spring', revision: 1 } });
  });

  it('SHOP-1 nothing that is asked while none is open is an error', async () => {
    const { ask, now } = await tab();
    expect(ask.edit(title('x'))).toBeUndefined();
    ask.undo();
    ask.redo();
    expect(now()).toBeUndefined();
    expect(ask.file().ok).toBe(false);
    expect(ask.openSheet('nowhere')).toBe(false);
  });
});

describe('keeping', () => {
  it('SHOP-18 each change is written at once, and a new tab finds the last', async () => {
    const { ask, now, store, key } = await writing();
    ask.edit(title('Marsh'));
    expect(now()?.saved).toBe(false);
    await settle();
    expect(now()?.saved).toBe(true);
    ask.edit(cell(WALK));
    await settle();
    expect(store.written.map(({ sheet }) => sheet.title)).toEqual(['', 'Marsh', 'Marsh']);
    const again = await tab(store);
    expect(again.shop.getState().shelf).toHaveLength(1);
    expect(again.ask.openSheet(key)).toBe(true);
    expect(again.now()).toMatchObject({ saved: true, canUndo: false, sheet: { title: 'Marsh' } });
  });

  it('SHOP-18 of changes that come while one is written only the last is, after it', async () => {
    const { ask, now, store } = await writing();
    for (const text of ['M', 'Ma', 'Mar', 'Mars', 'Marsh']) ask.edit(title(text));
    await settle();
    const written = store.written.map(({ sheet }) => sheet.title);
    expect(written.at(-1)).toBe('Marsh');
    expect(written.length).toBeLessThan(5);
    expect(now()?.saved).toBe(true);
  });

  it('SHOP-18 a change that comes while another is being written is written after it', async () => {
    const { ask, now, store, key } = await writing();
    const real = store.putSheet;
    const gates: (() => void)[] = [];
    store.putSheet = async (...given) => {
      await new Promise<void>((resolve) => gates.push(resolve));
      return real(...given);
    };
    ask.edit(title('Ma'));
    await settle();
    ask.edit(title('Mar'));
    ask.edit(title('Marsh'));
    gates.shift()?.();
    await settle();
    expect(store.there.get(key)?.sheet.title).toBe('Ma');
    expect(now()?.saved).toBe(false);
    gates.shift()?.();
    await settle();
    expect(store.there.get(key)?.sheet.title).toBe('Marsh');
    expect(now()?.saved).toBe(true);
    expect(store.written).toHaveLength(3);
  });

  it('SHOP-19 what could not be written is told, stays, and is tried again after a while', async () => {
    const { ask, now, store, clock, key } = await writing();
    store.broken = { code: 'full', detail: '' };
    ask.edit(title('Marsh'));
    await settle();
    expect(now()).toMatchObject({
      saved: false,
      problem: { code: 'full' },
      sheet: { title: 'Marsh' },
    });
    await clock.pass(20);
    expect(now()?.problem?.code).toBe('full');
    store.broken = undefined;
    await clock.pass(5);
    expect(now()?.saved).toBe(true);
    expect(now()).not.toHaveProperty('problem');
    expect(store.there.get(key)?.sheet.title).toBe('Marsh');
  });

  it('SHOP-19 and with the next change, the last state of it', async () => {
    const { ask, now, store, key } = await writing();
    store.broken = { code: 'lost', detail: '' };
    ask.edit(title('Mar'));
    await settle();
    store.broken = undefined;
    ask.edit(title('Marsh'));
    await settle();
    expect(now()).toMatchObject({ saved: true });
    expect(store.there.get(key)?.sheet.title).toBe('Marsh');
    expect(store.written.map(({ sheet }) => sheet.title)).toEqual(['', 'Marsh']);
  });

  it('SHOP-19 a sheet that was left while it could not be written is written all the same', async () => {
    const { ask, shop, store, clock, key } = await writing();
    store.broken = { code: 'lost', detail: '' };
    ask.edit(title('Marsh'));
    const other = await ask.create({ ...BLANK, id: 'marsh-b', title: 'Other' });
    expect(store.there.has(other)).toBe(false);
    const told = shop.getState().shelf.map((item) => [item.key, item.problem?.code]);
    expect(new Map(told as [string, string][])).toEqual(
      new Map([
        [key, 'lost'],
        [other, 'lost'],
      ]),
    );
    store.broken = undefined;
    await clock.pass(5);
    expect(store.there.get(key)?.sheet.title).toBe('Marsh');
    expect(store.there.get(other)?.sheet.title).toBe('Other');
  });

  it('SHOP-19 a store that throws is one that failed', async () => {
    const { ask, now, store, clock } = await writing();
    const real = store.putSheet;
    store.putSheet = async () => {
      throw new Error('gone');
    };
    ask.edit(title('Marsh'));
    await settle();
    expect(now()?.problem).toEqual({ code: 'lost', detail: 'Error: gone' });
    store.putSheet = real;
    await clock.pass(5);
    expect(now()?.saved).toBe(true);
  });

  it('SHOP-19 what is there and cannot be read is told, and read when it can be', async () => {
    const store = new MemorySheets();
    const first = await tab(store);
    await first.ask.create({ ...BLANK, title: 'Kept' });
    store.broken = { code: 'lost', detail: '' };
    const { shop, clock } = await tab(store);
    expect(shop.getState()).toMatchObject({ ready: false, problem: { code: 'lost' }, shelf: [] });
    store.broken = undefined;
    await clock.pass(5);
    expect(shop.getState()).toMatchObject({ ready: true, shelf: [{ sheet: { title: 'Kept' } }] });
    expect(shop.getState()).not.toHaveProperty('problem');
  });

  it('SHOP-19 is asked for once every five seconds, however often a screen asks', async () => {
    const store = new MemorySheets();
    store.broken = { code: 'lost', detail: '' };
    const { ask, clock } = await tab(store);
    for (let n = 0; n < 5; n += 1) await ask.load();
    let reads = 0;
    store.sheets = async () => {
      reads += 1;
      return fail({ code: 'lost', detail: '' });
    };
    await clock.pass(20);
    expect(reads).toBe(4);
  });
});

describe('two tabs', () => {
  /** Both have the same sheet open. */
  async function both() {
    const one = await writing();
    one.ask.edit(title('Marsh'));
    await settle();
    const two = await tab(one.store);
    two.ask.openSheet(one.key);
    await settle();
    return { one, two, store: one.store, key: one.key };
  }

  it('SHOP-20 that write one sheet keep both, the later one under a key and title of its own', async () => {
    const { one, two, store, key } = await both();
    one.ask.edit(cell(WALK));
    await settle();
    two.ask.edit(cell('30 min walk'));
    await settle();
    expect(titles(store)).toEqual(['Marsh', 'Marsh (other window)']);
    expect(store.there.get(key)?.sheet.weeks[0]?.sessions.a?.[0]?.text).toBe(WALK);
    const apart = two.now();
    expect(apart).toMatchObject({ wasKey: key, saved: true, sheet: { id: 'marsh-a' } });
    expect(apart?.key).not.toBe(key);
    expect(apart?.sheet.weeks[0]?.sessions.a?.[0]?.text).toBe('30 min walk');
    expect(two.shop.getState().shelf).toHaveLength(2);
  });

  it('SHOP-20 go on apart: neither stands in the way of the other any more', async () => {
    const { one, two, store, key } = await both();
    one.ask.edit(cell(WALK));
    await settle();
    two.ask.edit(title('Marsh two'));
    await settle();
    two.ask.edit(title('Second marsh'));
    one.ask.edit(title('First marsh'));
    await settle();
    expect(titles(store)).toEqual(['First marsh', 'Second marsh']);
    two.ask.undo();
    two.ask.undo();
    expect(two.now()?.sheet.title).toBe('Marsh');
    expect(one.now()).toMatchObject({ key, saved: true });
    expect(one.now()).not.toHaveProperty('wasKey');
  });

  it('SHOP-20 what came meanwhile is taken in where nothing was written here', async () => {
    const { one, two, store } = await both();
    one.ask.edit(title('Newer'));
    await settle();
    await two.ask.load();
    expect(two.now()?.sheet.title).toBe('Newer');
    two.ask.edit(cell(WALK));
    await settle();
    expect(titles(store)).toEqual(['Newer']);
  });

  it('SHOP-20 opening a sheet takes in what another tab wrote since the list was read', async () => {
    const one = await writing();
    const two = await tab(one.store);
    one.ask.edit(title('Newer'));
    await settle();
    two.ask.openSheet(one.key);
    await settle();
    expect(two.now()?.sheet.title).toBe('Newer');
  });

  it('SHOP-20 a sheet removed elsewhere while it is open here comes back with the next change', async () => {
    const { one, two, store, key } = await both();
    await one.ask.remove(key);
    await two.ask.load();
    expect(two.now()?.sheet.title).toBe('Marsh');
    expect(two.shop.getState().shelf.map((item) => item.key)).toEqual([key]);
    two.ask.edit(title('Marsh again'));
    await settle();
    expect(titles(store)).toEqual(['Marsh again']);
  });

  it('SHOP-20 reading again never puts an older state over a newer one', async () => {
    const { ask, now, store } = await writing();
    let go = (): void => {};
    const slow = store.sheets;
    store.sheets = async () => {
      const found = await slow();
      await new Promise<void>((resolve) => {
        go = resolve;
      });
      return found;
    };
    const reading = ask.load();
    await settle();
    ask.edit(title('Marsh'));
    await settle();
    go();
    await reading;
    expect(now()).toMatchObject({ sheet: { title: 'Marsh' }, canUndo: true });
  });
});

describe('my programmes', () => {
  it('SHOP-18 are listed with the one that changed last in front', async () => {
    const { ask, shop, clock, key } = await writing();
    await clock.pass(60);
    const other = await ask.create({ ...BLANK, id: 'marsh-b' });
    expect(shop.getState().shelf.map((item) => item.key)).toEqual([other, key]);
    await clock.pass(60);
    ask.openSheet(key);
    ask.edit(title('Marsh'));
    expect(shop.getState().shelf.map((item) => item.sheet.title)).toEqual(['Marsh', '']);
  });

  it('SHOP-21 a programme file is opened once, and known again after it was read', async () => {
    const { ask, shop, now } = await tab();
    const first = await ask.createFromFile(DEMO_PROGRAMME_TEXT);
    ask.edit(title('Changed'));
    ask.undo();
    const compact = JSON.stringify(JSON.parse(DEMO_PROGRAMME_TEXT));
    expect(await ask.createFromFile(compact)).toEqual(first);
    expect(shop.getState().shelf).toHaveLength(1);
    expect(now()?.canRedo).toBe(true);
    ask.edit(title('Changed'));
    const second = await ask.createFromFile(DEMO_PROGRAMME_TEXT);
    expect(second).not.toEqual(first);
    expect(now()?.sheet.title).toBe('Six weeks to the Heron Loop');
  });

  it('SHOP-21 a file that is wrong is refused with every reason, and nothing is kept', async () => {
    const { ask, shop, store } = await tab();
    const wrong = DEMO_PROGRAMME_TEXT.replaceAll('2 min brisk walk', '2 m brisk walk');
    const result = await ask.createFromFile(wrong);
    expect(result.ok).toBe(false);
    expect(!result.ok && result.error.length).toBeGreaterThan(1);
    expect([shop.getState().shelf, store.written]).toEqual([[], []]);
  });

  it('SHOP-22 a copy has an id and a title of its own, and its changes are its own', async () => {
    const { ask, now, store, key } = await writing();
    const copy = (await ask.copy(key, 'Six weeks more')) ?? '';
    expect(now()?.key).toBe(key);
    const made = store.there.get(copy)?.sheet as Sheet;
    expect(made.title).toBe('Six weeks more');
    expect(made.id).toMatch(/^six-weeks-more-[a-z0-9]{6}$/);
    expect(made.weeks).toEqual(BLANK.weeks);
    ask.openSheet(copy);
    ask.edit(cell(WALK));
    await settle();
    expect(store.there.get(key)?.sheet).toEqual(BLANK);
    expect(await ask.copy('nowhere', 'x')).toBeUndefined();
    const long = (await ask.copy(key, `A\nB${'🐦'.repeat(200)}`)) ?? '';
    expect([...(store.there.get(long)?.sheet.title ?? '')]).toHaveLength(120);
  });

  it('SHOP-22 a sheet is removed on the word, also one that was never written', async () => {
    const { ask, shop, now, store, clock, key } = await writing();
    await ask.remove(key);
    expect([now(), shop.getState().shelf, store.there.size]).toEqual([undefined, [], 0]);
    store.broken = { code: 'full', detail: '' };
    const other = await ask.create(BLANK);
    await ask.remove(other);
    store.broken = undefined;
    await clock.pass(5);
    expect(store.there.size).toBe(0);
  });

  it('SHOP-22 opening the one that is open keeps its way back', async () => {
    const { ask, now, key } = await writing();
    ask.edit(title('Marsh'));
    expect(ask.openSheet(key)).toBe(true);
    expect(now()?.canUndo).toBe(true);
  });
});

describe('the workshop of the app', () => {
  it('SHOP-18 keeps in the phone’s own database what another visit finds, beside everything else', async () => {
    const first = await openTab();
    const one = await first.app.workshop();
    expect(await first.app.workshop()).toBe(one);
    await one.getState().load();
    const key = await one.getState().create(BLANK);
    one.getState().edit(cell(WALK));
    await expect.poll(() => one.getState().open?.saved).toBe(true);
    first.kill();
    const second = await openTab({ database: first.database });
    const two = await second.app.workshop();
    await two.getState().load();
    expect(two.getState().openSheet(key)).toBe(true);
    expect(two.getState().open?.readings[0]?.a?.[0]?.timeline?.total).toBe(1_800_000);
    expect((await everythingIn(first.database)).sheets).toHaveLength(1);
  });
});
