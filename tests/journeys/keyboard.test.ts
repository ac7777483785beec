import { expect } from 'vitest';
import { cellWords } from '../../src/copy/cell.ts';
import { fill } from '../../src/copy/cell-fill.ts';
import { sending } from '../../src/copy/lead.ts';
import { desk, details, shelf } from '../../src/copy/workshop.ts';
import { journey } from '../drivers/browser/journey.ts';
import { press, tabTo, typeInto } from '../drivers/browser/keys.ts';
import { go, visit } from '../drivers/browser/visit.ts';

const PLAN = '5 min easy walk; 6 x (1 min jog, 2 min walk); 5 min easy walk';

journey('REAL-30 a keyboard alone suffices to write a whole programme', async (j) => {
  const { page } = j;
  await visit(page, j.site);
  await go(page, '/lead');
  await page.getByRole('heading', { level: 1, name: shelf.title }).waitFor();
  await press(page, shelf.blank);
  await page.getByRole('heading', { level: 1, name: details.title }).waitFor();
  await typeInto(page, details.name, 'Four weeks on the sea wall');
  await typeInto(page, details.leader, 'Imogen');
  await typeInto(page, details.goal, 'Heron Loop');
  await typeInto(page, details.groupName(1), 'Wren');
  await typeInto(page, details.groupName(2), 'Curlew');
  await press(page, /^← /);
  await page.getByRole('table', { name: desk.table }).waitFor();

  // One session by hand for each group, then grown over the later weeks.
  for (const group of ['Wren', 'Curlew']) {
    await press(page, new RegExp(`^${desk.cell(1, group, 1, 1)}\\b`));
    await page.getByLabel(cellWords.text).waitFor();
    await typeInto(page, cellWords.text, PLAN);
    await press(page, fill.open.weeks);
    await page.getByRole('dialog').waitFor();
    await press(page, fill.copy);
    await page.getByRole('dialog').waitFor({ state: 'hidden' });
    await press(page, /^← All weeks/);
    await page.getByRole('table', { name: desk.table }).waitFor();
  }
  // 5 + 6 x (1 + 2) + 5 = 28 min, by hand; every week of both groups holds a session.
  expect(await page.getByRole('link', { name: /28 min/ }).count()).toBe(8);
  await press(page, desk.undo);
  await press(page, desk.redo);
  await press(page, desk.send);
  await page.getByRole('heading', { level: 1, name: sending.title }).waitFor();
  await press(page, sending.unsigned);
  await page.getByText(sending.sheetSub(1, false)).waitFor();
  await tabTo(page, sending.link);

  // Written to the phone at every letter: what was written stands there after a restart.
  await j.kill();
  await j.restart();
  await visit(j.page, j.site);
  await go(j.page, '/lead');
  await j.page.getByRole('link', { name: shelf.open('Four weeks on the sea wall') }).click();
  expect(await j.page.getByRole('link', { name: /28 min/ }).count()).toBe(8);
});
