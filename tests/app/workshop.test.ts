import { describe, expect, it } from 'vitest';
import { DEMO_PROGRAMME_TEXT } from '../../src/app/demo/demo.ts';
import { blankSheet } from '../../src/domain/workshop/blank.ts';
import { settle } from '../drivers/clock.ts';
import { MemorySheets } from '../drivers/workshop/memory-sheets.ts';
import { workshopOver } from '../drivers/workshop/workshop.ts';

const WALK = '5 min easy walk; 20 min walk; 5 min easy walk';

describe('the workshop', () => {
  it('SHOP-20 keeps each change at once, and a new window finds the last of them', async () => {
    const store = new MemorySheets();
    const shop = workshopOver(store);
    await shop.getState().load();
    const key = await shop.getState().create(blankSheet('marsh-a', 'en'));
    shop.getState().edit({ kind: 'title', title: 'Marsh' });
    shop.getState().edit({ kind: 'cell', at: { week: 0, group: 'a', session: 0 }, text: WALK });
    expect(shop.getState().open).toMatchObject({ key, saved: false, canUndo: true });
    await settle();
    expect(shop.getState().open?.saved).toBe(true);
    const again = workshopOver(store);
    await again.getState().load();
    expect(again.getState().shelf.map(({ sheet }) => sheet.title)).toEqual(['Marsh']);
    expect(again.getState().openSheet(key)).toBe(true);
    expect(again.getState().open?.readings[0]?.a?.[0]?.timeline?.total).toBe(1_800_000);
  });

  it('SHOP-12 a programme file is opened once', async () => {
    const shop = workshopOver(new MemorySheets());
    const first = await shop.getState().createFromFile(DEMO_PROGRAMME_TEXT);
    const second = await shop.getState().createFromFile(DEMO_PROGRAMME_TEXT);
    expect(second).toEqual(first);
    expect(shop.getState().shelf).toHaveLength(1);
    expect(shop.getState().file()).toMatchObject({ ok: true });
  });
});
