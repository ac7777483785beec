import { screen, within } from '@testing-library/react';
import { describe, expect, it } from 'vitest';
import type { KeysView, PublishingState, Sending } from '../../src/app/exchange-contract.ts';
import { exchangeWays } from '../../src/copy/came.ts';
import { keyProblem } from '../../src/copy/exchange.ts';
import { lead, leaderKeys, sending as words } from '../../src/copy/lead.ts';
import { programmeWarning } from '../../src/copy/warning.ts';
import { sourceOf } from '../../src/copy/warning-sources.ts';
import { fail, ok } from '../../src/domain/result.ts';
import { placeOfWarning } from '../../src/ui/parts/LookThrough.tsx';
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
  user.upload(await screen.findByLabelText(lead.open), new File([text], 'p.json'));

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
  await user.click(await button(lead.toSend));
  return app;
}

describe('the leader', () => {
  it('UI-25 comes here from the first page', async () => {
    show('/start');
    await user.click(await screen.findByRole('link', { name: exchangeWays.lead }));
    expect(here()).toBe('/lead');
    expect(await screen.findByRole('heading', { name: lead.title })).toBeDefined();
  });

  it('UI-25 a file is shown week by week with totals, and a warning stands at its place', async () => {
    show('/lead');
    await pick(programmeText());
    const week = (await screen.findByRole('heading', { name: /^Week 2/ })).closest('li');
    expect(screen.getAllByRole('heading', { name: /^Week / })).toHaveLength(4);
    const cell = within(week as HTMLElement).getByRole('heading', { name: 'Wren' }).parentElement;
    const said = programmeWarning({ code: 'cool-down-none', path: '' });
    // 5 + 20 min, worked by hand.
    expect(within(cell as HTMLElement).getByText(/^25 min in all/)).toBeDefined();
    expect(within(cell as HTMLElement).getByText(said)).toBeDefined();
    expect(screen.getAllByText(`${lead.place(2, 'Wren', 0)}`).length).toBeGreaterThan(0);
  });

  it('UI-25 a warning’s path is read as week, group and session', () => {
    expect(placeOfWarning('weeks[1].sessions.wren')).toEqual({
      week: 2,
      group: 'wren',
      session: 0,
    });
    expect(placeOfWarning('weeks[0].sessions["sea-birds"][2]')).toEqual({
      week: 1,
      group: 'sea-birds',
      session: 3,
    });
    const week = { week: 3, group: '', session: 0 };
    expect([placeOfWarning('weeks[2].effort'), placeOfWarning('weeks[2]')]).toEqual([week, week]);
    expect(placeOfWarning('goal.date')).toBeUndefined();
  });

  it('UI-25 a warning about a week stands at the week, and every number has its source', async () => {
    show('/lead');
    const file = JSON.parse(programmeText());
    file.weeks[2].effort = 90;
    await pick(JSON.stringify(file));
    const week = (await screen.findByRole('heading', { name: /^Week 3/ })).closest('li');
    const said = programmeWarning({
      code: 'target-jump',
      path: 'weeks[2].effort',
      detail: { now: 9, before: 5 },
    });
    expect(within(week as HTMLElement).getByText(said)).toBeDefined();
    expect(screen.getByText(lead.place(3, '', 0)).textContent).toBe('Week 3');
    const sources = screen.getByRole('heading', { name: lead.sourcesTitle, hidden: true });
    const list = within(sources.nextElementSibling as HTMLElement);
    for (const code of ['target-jump', 'cool-down-none'] as const)
      expect(list.getAllByText(sourceOf(code))).toHaveLength(1);
  });

  it('UI-25 a file that cannot be used is answered with every path and what is wrong there', async () => {
    show('/lead');
    await pick('{"format":"towpath-programme/1"}');
    const alert = await screen.findByText(lead.errorsTitle);
    expect(alert).toBeDefined();
    expect(screen.getByText('weeks')).toBeDefined();
    expect(screen.getByText('title')).toBeDefined();
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
      sent: {
        'heron-loop-spring': {
          id: 'heron-loop-spring',
          revision: 1,
          text: '',
          signature: '',
          at: 0,
        },
      },
      publish: async (text, change) => {
        given.push(text, change);
        return ok(SENDING);
      },
    });
    await user.type(await screen.findByLabelText(words.change), 'Shorter week 2');
    await user.click(await button(words.publish));
    expect(given).toEqual([programmeText(), 'Shorter week 2']);
    expect(await screen.findByDisplayValue(SENDING.link)).toBeDefined();
    expect(screen.queryByText(words.local)).toBeNull();
    expect(screen.getByRole('img', { name: /Part 1 of 2/ })).toBeDefined();
    await user.click(await button(words.file));
    expect(askedFor(app, 'publishing.give')).toEqual([[SENDING.fileName]]);
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
    await user.click(await screen.findByRole('link', { name: new RegExp(lead.back) }));
    expect(await button(lead.toSend)).toBeDefined();
    await user.click(await screen.findByRole('link', { name: new RegExp(lead.title) }));
    expect(await screen.findByLabelText(lead.open)).toBeDefined();
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
