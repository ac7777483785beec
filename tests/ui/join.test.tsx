import { screen, waitFor } from '@testing-library/react';
import { describe, expect, it } from 'vitest';
import type { Came, Preview, Received } from '../../src/app/exchange-contract.ts';
import { cameLine } from '../../src/copy/came.ts';
import { exchangeProblem } from '../../src/copy/exchange.ts';
import { choiceSaid, join, verdictSaid } from '../../src/copy/join.ts';
import type { Verdict } from '../../src/domain/exchange/decide.ts';
import { DEMO } from '../drivers/fake-app.ts';
import { askedFor, here, show, user } from './show.tsx';

const came: Came = {
  id: DEMO.id,
  revision: 2,
  leader: 'Imogen',
  title: DEMO.title,
  // A Monday, on this machine's own clock.
  at: new Date(2027, 2, 1, 20, 14).getTime(),
  signed: true,
  apart: false,
};
const preview = (more: Partial<Preview> = {}): Received => ({
  name: 'preview',
  preview: {
    programme: DEMO,
    verdict: { kind: 'new' },
    signed: true,
    choices: ['keep'],
    ...more,
  },
});
const button = (name: string) => screen.findByRole('button', { name });

describe('a programme that came', () => {
  it('UI-23 a code in the address is opened and at once taken out of the address', async () => {
    const app = show('/join/AQcode');
    await waitFor(() => expect(askedFor(app, 'received.open')).toEqual([['#/join/AQcode']]));
    expect(here()).toBe('/join');
  });

  it('UI-22 what is pasted is opened as it is, words around it included', async () => {
    const app = show('/join');
    await user.type(await screen.findByLabelText(join.paste), 'Look: #/join/abc');
    await user.click(await button(join.pasteGo));
    expect(askedFor(app, 'received.open')).toEqual([['Look: #/join/abc']]);
  });

  it('UI-22 a picture or a file is opened, and parts are counted', async () => {
    const app = show('/join', {
      received: { received: { name: 'parts', have: [3, 1], of: 3 } },
    });
    expect(await screen.findByText(join.parts(2, 3))).toBeDefined();
    expect(screen.getByText(/part 1, part 3/)).toBeDefined();
    const picture = new File(['x'], 'code.png', { type: 'image/png' });
    await user.upload(screen.getByLabelText(join.file), picture);
    expect(askedFor(app, 'received.openFile')).toEqual([['image/png']]);
  });

  it('UI-22 without a camera the reason is said in a sentence', async () => {
    show('/join');
    await user.click(await button(join.scan));
    expect(await screen.findByText(exchangeProblem({ code: 'camera-none' }))).toBeDefined();
  });

  it('UI-22 what is refused is answered with one sentence', async () => {
    show('/join', { received: { received: { name: 'refused', problem: { code: 'damaged' } } } });
    expect(await screen.findByText(exchangeProblem({ code: 'damaged' }))).toBeDefined();
  });

  it('UI-22 on an iPhone the page says where a link leads', async () => {
    show('/join', { device: { platform: 'ios' } });
    expect(await screen.findByText(join.ios)).toBeDefined();
  });

  it('UI-22 all of it is shown before anything is stored, and then kept on a press', async () => {
    const app = show('/join', { received: { received: preview() } });
    for (const text of [DEMO.leader.name, String(DEMO.weeks.length), join.signed])
      expect(await screen.findByText(text)).toBeDefined();
    expect(screen.getByText(DEMO.groups.map(({ name }) => name).join(', '))).toBeDefined();
    expect(askedFor(app, 'received.accept')).toEqual([]);
    await user.click(await button(choiceSaid('keep', 'new', 1).name));
    expect(askedFor(app, 'received.accept')).toEqual([['keep']]);
  });

  const verdicts: readonly (readonly [Verdict, Preview['choices']])[] = [
    [{ kind: 'new' }, ['keep']],
    [{ kind: 'same' }, []],
    [{ kind: 'update', from: 1 }, ['keep']],
    [{ kind: 'older', stored: 3 }, []],
    [{ kind: 'conflict' }, ['take-over']],
    [{ kind: 'copy' }, ['keep-apart']],
    [{ kind: 'rotated', from: 1 }, ['keep']],
    [{ kind: 'retired' }, []],
    [{ kind: 'key-changed', from: 1 }, ['take-over', 'keep-apart']],
  ];
  it.each(verdicts)(
    'UI-22 the verdict %o is said, and each choice with what it does',
    async (verdict, choices) => {
      show('/join', { received: { received: preview({ verdict, choices, stored: came }) } });
      const said = verdictSaid(verdict, DEMO.revision, DEMO.leader.name);
      expect(await screen.findByRole('heading', { name: said.title })).toBeDefined();
      expect(screen.getByText(said.body)).toBeDefined();
      const names = screen.getAllByRole('button').map((each) => each.textContent);
      const wanted = choices.map((choice) => choiceSaid(choice, verdict.kind, DEMO.revision));
      expect(names).toEqual([...wanted.map(({ name }) => name), join.leave]);
      for (const { help } of wanted) expect(screen.getByText(help)).toBeDefined();
    },
  );

  it('UI-22 after a change of key six digits are shown, and a group that is gone is told', async () => {
    show('/join', {
      received: {
        received: preview({
          verdict: { kind: 'key-changed', from: 1 },
          choices: ['take-over', 'keep-apart'],
          digits: '402 917',
          groupGone: 'Heron',
        }),
      },
    });
    expect(await screen.findByText('402 917')).toBeDefined();
    expect(screen.getByText(join.groupGone('Heron'))).toBeDefined();
  });

  it('UI-22 what was kept leads to its groups, and to its weeks when a group is chosen', async () => {
    show('/join', {
      received: { received: { name: 'kept', id: DEMO.id, verdict: { kind: 'new' } } },
    });
    await waitFor(() => expect(here()).toBe(`/p/${DEMO.id}/groups`));
  });

  it('UI-22 what cannot be written is told, and nothing is lost from the page', async () => {
    show('/join', {
      received: {
        received: preview(),
        accept: async () => ({ ok: false, error: { code: 'full' } as never }),
      },
    });
    await user.click(await button(choiceSaid('keep', 'new', 1).name));
    expect(await screen.findByText(join.notKept)).toBeDefined();
  });

  it('UI-24 a card and the programme’s page say revision, sender and when it came', async () => {
    expect(cameLine(came, came.at + 3_600_000)).toBe(
      'Revision 2, from Imogen, received Mon 20:14.',
    );
    expect(cameLine(came, came.at + 30 * 86_400_000)).toContain('1 March 2027');
    show('/start', { received: { came: { [DEMO.id]: came } } });
    expect(await screen.findByText(/^Revision 2, from Imogen/)).toBeDefined();
  });

  it('UI-24 the programme’s page says it too, and that a copy is one', async () => {
    show(`/p/${DEMO.id}`, {
      chosen: { [DEMO.id]: 'wren' },
      received: { came: { [DEMO.id]: { ...came, signed: false, apart: true } } },
    });
    expect(await screen.findByText(/Not signed. A separate copy.$/)).toBeDefined();
  });
});
