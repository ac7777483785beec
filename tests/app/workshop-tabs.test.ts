import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { blankSheet } from '../../src/domain/workshop/blank.ts';
import { HandClock, settle } from '../drivers/clock.ts';
import { MemorySheets } from '../drivers/workshop/memory-sheets.ts';
import { workshopOver } from '../drivers/workshop/workshop.ts';

type Deed = 'type' | 'undo' | 'redo' | 'load' | 'reopen' | 'copy' | 'wait' | 'break' | 'mend';
interface Turn {
  readonly tab: 0 | 1;
  readonly deed: Deed;
}

const turns = fc.array(
  fc.record<Turn>({
    tab: fc.constantFrom(0, 1),
    deed: fc.constantFrom(
      ...(['type', 'type', 'type', 'undo', 'redo', 'load', 'reopen', 'copy'] as const),
      ...(['wait', 'wait', 'break', 'mend'] as const),
    ),
  }),
  { maxLength: 30 },
);

/** Two tabs over one store, both with the same sheet open. */
async function twoTabs() {
  const store = new MemorySheets();
  const clock = new HandClock();
  const tabs = [workshopOver(store, clock), workshopOver(store, clock)] as const;
  const [one, two] = tabs;
  await one.getState().load();
  const key = await one.getState().create(blankSheet('marsh-a', 'en'));
  await two.getState().load();
  two.getState().openSheet(key);
  await settle();
  return { store, clock, tabs, key };
}

async function act(deed: Deed, n: number, all: Awaited<ReturnType<typeof twoTabs>>, tab: 0 | 1) {
  const { store, clock, tabs, key } = all;
  const ask = tabs[tab].getState();
  if (deed === 'type') ask.edit({ kind: 'title', title: `Title ${n}` });
  if (deed === 'undo') ask.undo();
  if (deed === 'redo') ask.redo();
  if (deed === 'load') void ask.load();
  if (deed === 'reopen') ask.openSheet(key);
  if (deed === 'copy') void ask.copy(ask.open?.key ?? '', `Copy ${n}`);
  if (deed === 'wait') await clock.pass(4);
  if (deed === 'break') store.broken = { code: 'lost', detail: '' };
  if (deed === 'mend') store.broken = undefined;
}

describe('two tabs that do whatever they like', () => {
  it('SHOP-19, SHOP-20 lose nothing: what each shows in the end was written as it is, and everything is kept', async () => {
    await fc.assert(
      fc.asyncProperty(turns, async (all) => {
        const here = await twoTabs();
        for (const [n, { tab, deed }] of all.entries()) await act(deed, n, here, tab);
        here.store.broken = undefined;
        await here.clock.pass(12);
        for (const tab of here.tabs) {
          const { open, shelf } = tab.getState();
          const written = here.store.written.filter(({ key }) => key === open?.key);
          expect(open?.saved).toBe(true);
          expect(written.map(({ sheet }) => sheet)).toContainEqual(open?.sheet);
          for (const { key } of shelf) expect([...here.store.there.keys()]).toContain(key);
        }
        const copies = all.filter(({ deed }) => deed === 'copy').length;
        const kept = [...here.store.there.values()].filter(({ sheet }) =>
          sheet.title.startsWith('Copy '),
        );
        expect(kept).toHaveLength(copies);
      }),
      { numRuns: 60 },
    );
  });
});
