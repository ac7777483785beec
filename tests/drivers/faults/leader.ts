/** A leader's whole story on one device, and what is there of it afterwards. */
import { DEMO_PROGRAMME_TEXT } from '../../../src/app/demo/demo.ts';
import { fail, ok, type Result } from '../../../src/domain/result.ts';
import { ROSA, response, TAMSIN } from '../../domain/board/records.ts';
import { openLeaderBoard } from '../board/leader-board.ts';
import { settle } from '../clock.ts';
import { openTab, type Tab } from '../phone.ts';
import { insist, type Lived } from './participant.ts';

const PASSPHRASE = 'four herons by the gate';
const TITLE = 'Six weeks on the marsh';
const PLAN = '5 min easy walk; 6 x (1 min run, 2 min walk); 5 min easy walk';
const SATURDAY = { date: '2027-03-06', week: 1, session: 1 };

/** Writes a programme, makes keys, publishes, takes answers in, ticks who came. */
export async function lead(tab?: Tab): Promise<Lived> {
  const own = tab ?? (await openTab());
  const told: string[] = [];
  const text = await writeProgramme(own, told);
  const id = await publish(own, told, text);
  const { database, clock } = own;
  const { board, hear } = await openLeaderBoard({ database, clock, programmes: [] });
  const ask = () => board.getState();
  await insist(told, 'taking the answers in', async () => {
    const programme = { id, revision: 1 };
    await hear(response({ programme }), response({ programme, secret: TAMSIN, name: 'Tamsin' }));
    return isTakenIn(ask().intake);
  });
  await insist(told, 'ticking', () => ask().mark(id, SATURDAY, ROSA, true));
  await insist(told, 'naming', () => ask().describe(id, ROSA, { name: 'Rosa' }));
  await insist(told, 'counting', () => ask().expect(id, 'wren', 9));
  await insist(told, 'adding', () => ask().addPerson(id, { name: 'Perran', group: 'wren' }));
  await clock.pass(20);
  return { tab: own, told };
}

const isTakenIn = (intake: { readonly name: string }): Result<void, string> =>
  intake.name === 'done' ? ok(undefined) : fail(intake.name);

async function writeProgramme({ app, clock }: Tab, told: string[]): Promise<string> {
  const shop = await app.workshop();
  shop.subscribe(({ open, problem }) => {
    if (open?.problem ?? problem) told.push('what is written is not kept yet');
  });
  const ask = () => shop.getState();
  await ask().load();
  await ask().createFromFile(DEMO_PROGRAMME_TEXT);
  await settle();
  ask().edit({ kind: 'title', title: TITLE });
  await settle();
  const at = { week: 0, group: ask().open?.sheet.groups[0]?.id ?? '', session: 0 };
  ask().edit({ kind: 'cell', at, text: PLAN });
  await clock.pass(12);
  const file = ask().file();
  if (!file.ok) throw new Error(JSON.stringify(file.error));
  return file.value.text;
}

async function publish({ app }: Tab, told: string[], text: string): Promise<string> {
  const ask = () => app.publishing.getState();
  await ask().load();
  await insist(told, 'making keys', () =>
    // Made, and only their backup not noted: the page then asks for the backup alone.
    ask().keys.name === 'there' ? ask().saveBackup() : ask().makeKeys(PASSPHRASE),
  );
  await insist(told, 'publishing', () => ask().publish(text));
  return JSON.parse(text).id;
}

/** What of the story another visit finds, without what is different each time. */
export async function ledAfter({ database, clock }: Tab): Promise<unknown> {
  const tab = await openTab({ database, clock });
  const { workshop, publishing } = tab.app;
  const shop = await workshop();
  await shop.getState().load();
  await publishing.getState().load();
  const { board } = await openLeaderBoard({ database, clock, programmes: [] });
  const { keys, sent } = publishing.getState();
  const { heard, days, setups } = board.getState();
  const there = {
    sheets: shop
      .getState()
      .shelf.map(({ sheet }) => [sheet.title, Object.values(sheet.weeks[0]?.sessions ?? {})[0]]),
    keys: [keys.name, keys.name === 'there' && keys.savedAt !== undefined],
    sent: Object.values(sent).map(({ id, revision }) => [id, revision]),
    people: Object.values(heard).flatMap((all) =>
      all.map(({ told, known, entries }) => [told?.name, known?.name, entries.length]).sort(),
    ),
    marks: Object.values(days).flatMap((all) => all.map(({ marks }) => Object.keys(marks))),
    expected: Object.values(setups).map(({ expected }) => expected?.wren?.count),
  };
  tab.kill();
  return there;
}
