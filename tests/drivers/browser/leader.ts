/** A leader at a desk: the example taken over, signed and sent, and once more with a change. */
import { cellWords } from '../../../src/copy/cell.ts';
import { leaderKeys, sending } from '../../../src/copy/lead.ts';
import { desk, shelf } from '../../../src/copy/workshop.ts';
import type { Site } from './site.ts';
import { button, go, visit } from './visit.ts';
import { lastFile, type Phone } from './weeks.ts';

const PASSPHRASE = 'heron tide reed wind salt';

export interface Leader {
  /** The backup of the keys as it was saved, and its passphrase. */
  readonly keys: string;
  readonly passphrase: string;
  /** The link of the first revision. */
  publish(): Promise<string>;
  /** Writes one session anew. @returns the link of the next revision */
  publishAgain(week: number, group: string, text: string): Promise<string>;
}

export async function leader({ page }: Phone, site: Site): Promise<Leader> {
  await visit(page, site);
  await go(page, '/lead');
  await button(page, shelf.example).click();
  await page.getByRole('link', { name: desk.send }).click();
  await page.getByLabel(leaderKeys.passphrase, { exact: true }).fill(PASSPHRASE);
  await button(page, leaderKeys.make).click();
  await button(page, sending.publish).waitFor({ timeout: 60_000 });
  const { text } = await lastFile(page);
  const publish = async (): Promise<string> => {
    await button(page, sending.publish).click();
    return page.getByLabel(sending.linkTitle, { exact: true }).inputValue();
  };
  return {
    keys: text,
    passphrase: PASSPHRASE,
    publish,
    async publishAgain(week, group, plan) {
      await page.getByRole('link', { name: new RegExp(desk.back) }).click();
      const cell = new RegExp(`^${desk.cell(week, group, 1, 1)}\\b`);
      await page.getByRole('table', { name: desk.table }).getByRole('link', { name: cell }).click();
      await page.getByLabel(cellWords.text).fill(plan);
      await page.getByRole('link', { name: new RegExp(desk.back) }).click();
      await page.getByText(desk.changedSince(1)).first().waitFor();
      await page.getByRole('link', { name: desk.send }).click();
      return publish();
    },
  };
}
