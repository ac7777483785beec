import { screen, within } from '@testing-library/react';
import { describe, expect, it } from 'vitest';
import type { KeysView, PublishingState, Sending } from '../../src/app/exchange-contract.ts';
import { exchangeWays } from '../../src/copy/came.ts';
import { keyProblem } from '../../src/copy/exchange.ts';
import { lead, leaderKeys, sending as words } from '../../src/copy/lead.ts';
import { programmeWarning } from '../../src/copy/warning.ts';
import { sourceOf } from '../../src/copy/warning-sources.ts';
import { desk, shelf } from '../../src/copy/workshop.ts';
import { fail, ok } from '../../src/domain/result.ts';
import { placeOfPath } from '../../src/ui/workshop/warning-place.ts';
import { marshProgramme } from '../drivers/exchange/programmes.ts';
import { askedFor, here, show, user } from './show.tsx';

const SENDING: Sending = {
  programmeId: 'heron-loop-spring',
  title: 'Four weeks to the Heron Loop',
  revision: 2,
  signed: true,
  link: 'https://club.example/#/join/AQabc',
  linkIsLocal: false,
  text: 'A programme.\nhttps://club.example/#/join/AQabc\n',
  fileName: 'heron-loop-spring-2.txt',
  codes: [
    { size: 29, path: 'M4 4h1v1h-1z', version: 1 },
    { size: 29, path: 'M5 5h1v1h-1z', version: 1 },
  ],
  message: 'Revision 2.',
};
const THERE: KeysView = { name: 'there', madeAt: 0, savedAt: 1, digits: async () => '402 917' };

const button = (name: string) => screen.findByRole('button', { name });
const pick = async (text: string) =>
  user.upload(await screen.findByLabelText(shelf.file), new File([text], 'p.json'));

/** Four weeks by hand, the first cell of the second week without a cool-down. */
function programmeText(): string {
  const programme = marshProgramme(4) as { weeks: { sessions: Record<string, unknown> }[] };
  const week = programme.weeks[1];
  if (week !== undefined) week.sessions.wren = '5 min easy walk; 20 min run';
  return JSON.stringify(programme);
}

async function toSending(publishing: Partial<PublishingState>) {
  const app = show('/lead', { publishing });
  await pick(programmeText());
  await user.click(await screen.findByRole('link', { name: desk.send }));
  await screen.findByRole('heading', { level: 1, name: words.title });
  return app;
}
const SENT = { id: 'heron-loop-spring', revision: 1, text: programmeText(), signature: '', at: 0 };

describe('the leader', () => {
  it('UI-25 comes here from the first page', async () => {
    show('/start');
    await user.click(await screen.findByRole('link', { name: exchangeWays.lead }));
    expect(here()).toBe('/lead');
    expect(await screen.findByRole('heading', { name: shelf.title })).toBeDefined();
  });

  it('UI-25 a file stands as weeks by groups with totals, and a warning stands at its place', async () => {
    show('/lead');
    await pick(programmeText());
    const table = await screen.findByRole('table', { name: desk.table });
    expect(within(table).getAllByRole('row')).toHaveLength(1 + 4);
    const cell = within(table).getByRole('link', {
      name: new RegExp(`^${desk.cell(2, 'Wren', 1, 1)}`),
    });
    // 5 + 20 min, worked by hand; the run is the main set.
    expect(cell.textContent).toContain(`25 min ${desk.main('20 min')}`);
    const said = programmeWarning({ code: 'cool-down-none', path: '' });
    const check = (await screen.findByText(said)).closest('li');
    const place = within(check as HTMLElement).getByRole('link', {
      name: desk.cell(2, 'Wren', 1, 1),
    });
    await user.click(place);
    expect(here()).toMatch(/^\/lead\/[^/]+\/2\/wren\/1$/);
  });

  it('UI-25 a check about a week leads to the week, and says where its number comes from', async () => {
    show('/lead');
    const file = JSON.parse(programmeText());
    file.weeks[2].effort = 90;
    await pick(JSON.stringify(file));
    const detail = { now: 9, before: 5 };
    const said = programmeWarning({ code: 'target-jump', path: 'weeks[2].effort', detail });
    const check = within((await screen.findByText(said)).closest('li') as HTMLElement);
    expect(check.getByText(sourceOf('target-jump'))).toBeDefined();
    await user.click(check.getByRole('link', { name: desk.week(3) }));
    expect(here()).toMatch(/^\/lead\/[^/]+\/week\/3$/);
  });

  it('UI-25 a path into the file is read as week, group and session', () => {
    expect(placeOfPath('weeks[1].sessions.wren')).toEqual({ week: 1, group: 'wren' });
    const second = { week: 0, group: 'sea-birds', session: 2 };
    expect(placeOfPath('weeks[0].sessions["sea-birds"][2]')).toEqual(second);
    expect(placeOfPath('weeks[3].effort')).toEqual({ week: 3 });
    expect(placeOfPath('goal.date')).toEqual({});
  });

  it('UI-25 a file that cannot be used is answered with every path and what is wrong there', async () => {
    show('/lead');
    await pick('{"format":"towpath-programme/1"}');
    expect(await screen.findByText(lead.errorsTitle)).toBeDefined();
    expect(screen.getByText('weeks')).toBeDefined();
    expect(screen.getByText('title')).toBeDefined();
  });

  it('UI-25 the file that people receive is not called damaged when it is opened to write on', async () => {
    show('/lead');
    await pick(SENDING.text);
    expect(await screen.findByText(lead.asSent)).toBeDefined();
  });

  it('UI-26 publishing asks for keys with a backup first, and passes the passphrase on', async () => {
    const app = await toSending({ keys: { name: 'none' } });
    expect(await screen.findByText(leaderKeys.why)).toBeDefined();
    expect(screen.queryByRole('button', { name: words.publish })).toBeNull();
    await user.type(
      screen.getAllByLabelText(leaderKeys.passphrase)[0] as HTMLElement,
      'heron tide reed wind',
    );
    await user.click(await button(leaderKeys.make));
    expect(askedFor(app, 'publishing.makeKeys')).toEqual([['heron tide reed wind']]);
    expect(await screen.findByText(keyProblem({ code: 'no-keys' }))).toBeDefined();
  });

  it('UI-26 keys whose backup was not saved do not publish yet', async () => {
    const app = await toSending({
      keys: { name: 'there', madeAt: 0, digits: async () => '' },
    });
    expect(screen.queryByRole('button', { name: words.publish })).toBeNull();
    await user.click(await button(leaderKeys.save));
    expect(askedFor(app, 'publishing.saveBackup')).toHaveLength(1);
  });

  it('UI-26 keys are taken over from a backup file', async () => {
    const app = await toSending({ keys: { name: 'none' } });
    await user.click(await screen.findByText(leaderKeys.restoreTitle));
    await user.upload(screen.getByLabelText(leaderKeys.restoreFile), new File(['backup'], 'b.txt'));
    await user.type(screen.getByLabelText(leaderKeys.restorePassphrase), 'heron');
    await user.click(await button(leaderKeys.restore));
    expect(askedFor(app, 'publishing.restore')).toEqual([['backup', 'heron']]);
  });

  it('UI-27 what is published is shown as link, code in parts, file and message', async () => {
    const given: unknown[] = [];
    const app = await toSending({
      keys: THERE,
      publish: async (text) => {
        given.push(JSON.parse(text));
        return ok(SENDING);
      },
    });
    await user.click(await button(words.publish));
    expect(given).toEqual([
      {
        ...JSON.parse(programmeText()),
        leader: { name: 'Imogen', sign: null, seal: null },
        revision: 1,
      },
    ]);
    expect(await screen.findByDisplayValue(SENDING.link)).toBeDefined();
    expect(screen.queryByText(words.local)).toBeNull();
    expect(screen.getByRole('img', { name: /Part 1 of 2/ })).toBeDefined();
    await user.click(await button(words.file));
    expect(askedFor(app, 'publishing.give')).toEqual([[SENDING.fileName]]);
  });

  it('UI-28 what changed since the last revision is proposed, and goes out as the leader words it', async () => {
    const changes: unknown[] = [];
    show('/lead', {
      publishing: {
        keys: THERE,
        sent: { [SENT.id]: SENT },
        publish: async (_, change) => {
          changes.push(change);
          return ok(SENDING);
        },
      },
    });
    await pick(programmeText());
    const table = await screen.findByRole('table', { name: desk.table });
    expect(within(table).getAllByText(desk.sentIn(1), { exact: false })).toHaveLength(4);
    await user.click(
      within(table).getByRole('link', { name: new RegExp(`^${desk.cell(2, 'Wren', 1, 1)}`) }),
    );
    const field = await screen.findByDisplayValue('5 min easy walk; 20 min run');
    await user.type(field, '; 5 min easy walk');
    expect(await within(table).findByText(desk.changedSince(1), { exact: false })).toBeDefined();
    await user.click(screen.getByRole('link', { name: new RegExp(desk.back) }));
    await user.click(await screen.findByRole('link', { name: desk.send }));
    const change = (await screen.findByLabelText(words.change)) as HTMLTextAreaElement;
    expect(change.value).toBe('Week 2: Wren is changed.');
    await user.type(change, ' A cool-down.');
    await user.click(await button(words.publish));
    expect(changes).toEqual(['Week 2: Wren is changed. A cool-down.']);
  });

  it('UI-28 when nothing changed since, that is said, with a way to send the same again', async () => {
    await toSending({ keys: THERE, sent: { [SENT.id]: SENT } });
    expect(await screen.findByText(words.unchanged(1), { exact: false })).toBeDefined();
    await user.click(await screen.findByRole('link', { name: /^Send .* again$/ }));
    expect(here()).toBe(`/lead/sent/${SENT.id}`);
  });

  it('UI-27 a local address is said to be one; an unsigned copy needs no keys', async () => {
    await toSending({
      keys: { name: 'none' },
      unsigned: async () => ok({ ...SENDING, signed: false, linkIsLocal: true }),
    });
    await user.click(await button(words.unsigned));
    expect(await screen.findByText(words.local)).toBeDefined();
    expect(screen.getByText(words.sheetSub(2, false))).toBeDefined();
  });

  it('UI-25 the way back leads a step back and keeps the programme', async () => {
    await toSending({ keys: THERE });
    await user.click(await screen.findByRole('link', { name: new RegExp(desk.back) }));
    expect(await screen.findByRole('table', { name: desk.table })).toBeDefined();
    await user.click(await screen.findByRole('link', { name: new RegExp(shelf.backTo) }));
    const open = shelf.open('Four weeks to the Heron Loop');
    expect(await screen.findByRole('link', { name: open })).toBeDefined();
  });

  it('UI-27 why something cannot be sent is one sentence', async () => {
    await toSending({ keys: THERE, publish: async () => fail({ code: 'not-kept' }) });
    await user.click(await button(words.publish));
    expect(await screen.findByText(keyProblem({ code: 'not-kept' }))).toBeDefined();
  });

  it('UI-26 six digits are shown to be read out', async () => {
    await toSending({ keys: THERE });
    await user.click(await screen.findByText(leaderKeys.manage));
    await user.click(await button(leaderKeys.digits));
    expect(await screen.findByText(leaderKeys.digitsSaid('402 917'))).toBeDefined();
  });
});
