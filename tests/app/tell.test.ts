import { describe, expect, it } from 'vitest';
import type { Answer, Telling } from '../../src/app/tell-contract.ts';
import { answerProblem } from '../../src/copy/tell.ts';
import { encodeAnswer, encodePacket } from '../../src/domain/exchange/packet.ts';
import { responseBytes } from '../../src/domain/exchange/response-bytes.ts';
import { createKeys } from '../../src/platform/keys/index.ts';
import { sealFor } from '../../src/platform/keys/seal.ts';
import { connect } from '../../src/platform/store/connection.ts';
import { ALL, entry, NOTHING_MORE } from '../drivers/exchange/answers.ts';
import { openResponse } from '../drivers/exchange/open-response.ts';
import { marshProgramme } from '../drivers/exchange/programmes.ts';
import { openTab, type Tab, take } from '../drivers/phone.ts';

const ID = 'heron-loop-spring';
const ROSA = { name: 'Rosa', under16: false };

/** A leader with keys, and what they publish as their participants get it. */
async function leader(): Promise<{
  readonly tab: Tab;
  readonly text: string;
  readonly unsigned: string;
}> {
  const tab = await openTab();
  const publishing = () => tab.app.publishing.getState();
  await publishing().load();
  await publishing().makeKeys('four herons by the gate');
  const file = JSON.stringify(marshProgramme(4));
  const [signed, unsigned] = [await publishing().publish(file), await publishing().unsigned(file)];
  if (!signed.ok || !unsigned.ok) throw new Error('not published');
  return { tab, text: signed.value.text, unsigned: unsigned.value.text };
}

const keysOf = ({ database }: Tab) => createKeys(connect(database));

async function participant(text: string, entries = [entry({ id: 'one' })]): Promise<Tab> {
  const tab = await openTab();
  await take(tab.app, text);
  for (const each of entries) await tab.app.log.getState().write(each);
  return tab;
}

async function tellFrom(tab: Tab, telling: Telling, id = ID): Promise<Answer> {
  const state = await tab.app.telling();
  const made = await state.getState().prepare(id, telling, ROSA);
  if (!made.ok) throw new Error(made.error.code);
  return made.value;
}

const codeIn = (answer: Answer): string => answer.link?.split('#/answer/')[1] ?? '';

describe('an answer', () => {
  const entries = [
    entry({ id: 'one', feeling: { effort: 5, note: 'Wind on the sea wall' } }),
    entry({ id: 'two', day: 2, feeling: { niggle: { place: 'knee' } } }),
  ];

  it('TELL-12, TELL-18 made on one phone is opened by the keys on another, and holds what was chosen', async () => {
    const { tab: leads, text } = await leader();
    const tab = await participant(text, entries);
    const answer = await tellFrom(tab, { ids: ['one', 'two'], ...ALL, name: 'Rosa' });
    const opened = await openResponse(codeIn(answer), keysOf(leads), ID);
    expect(opened).toEqual({ ok: true, value: answer.response });
    expect(answer.response).toMatchObject({ name: 'Rosa', leftOut: 0, programme: { revision: 1 } });
    expect(answer.response.entries.map(({ id }) => id)).toEqual(['one', 'two']);
    expect(answer.codes.length).toBeGreaterThan(0);
    expect(answer.linkIsLocal).toBe(false);
  });

  it('TELL-18 what the leader cannot open is told apart, with a sentence each', async () => {
    const { tab: leads, text } = await leader();
    const [other, tab] = [await leader(), await participant(text)];
    const code = codeIn(await tellFrom(tab, { ids: ['one'], ...ALL }));
    const keys = keysOf(leads);
    const reason = async (...[given, by, programme]: Parameters<typeof openResponse>) => {
      const opened = await openResponse(given, by, programme);
      if (opened.ok) return 'opened';
      expect(answerProblem(opened.error)).toMatch(/^[A-Z].{20,}\.$/);
      return opened.error.code;
    };
    expect(await reason(code, keys)).toBe('opened');
    expect(await reason(code, keys, `${ID}.2`)).toBe('opened');
    expect(await reason(code, keysOf(other.tab))).toBe('not-for-this-key');
    expect(await reason(code, keysOf(tab))).toBe('no-keys');
    expect(await reason(code, keys, 'marsh-mile')).toBe('other-programme');
    const other9 = code.at(-9) === 'A' ? 'B' : 'A';
    expect(await reason(`${code.slice(0, -9)}${other9}${code.slice(-8)}`, keys)).toBe('damaged');
    expect(await reason(encodePacket({ bytes: Uint8Array.of(1) }), keys)).toBe('not-an-answer');
    expect(await reason('', keys)).toBe('cut-short');
    const own = await keys.read();
    if (!own.ok || own.value === undefined) throw new Error('no keys');
    const sealed = async (bytes: Uint8Array): Promise<string> => {
      const made = await sealFor(own.value?.seal ?? '', bytes);
      if (!made.ok) throw new Error(made.error);
      return encodeAnswer(made.value);
    };
    expect(await reason(await sealed(Uint8Array.of(1, 2, 3)), keys)).toBe('damaged');
    const newer = {
      ...(await tellFrom(tab, { ids: ['one'], ...ALL })).response,
      format: 'towpath-response/2',
    };
    const bytes = responseBytes(newer as never);
    expect(await reason(await sealed(bytes.ok ? bytes.value : new Uint8Array()), keys)).toBe(
      'newer',
    );
  });

  it('TELL-2, TELL-19 outside the seal nothing is said of what is in it', async () => {
    const { text } = await leader();
    const tab = await participant(text, entries);
    const answer = await tellFrom(tab, { ids: ['one', 'two'], ...ALL, name: 'Rosa' });
    const around = [answer.message, answer.text].map((each) => each.replace(answer.link ?? '', ''));
    for (const word of ['Rosa', 'Wind', 'knee', '2027', answer.response.secret])
      for (const each of [...around, answer.fileName]) expect(each).not.toContain(word);
    const [first] = answer.text.split('\n');
    expect(first).toBe(
      'An answer for Imogen, who leads “Four weeks to the Heron Loop” with the Towpath app: how a participant’s sessions went. It is sealed, and only Imogen can read it.',
    );
    expect(answer.message.split('\n')[1]).toBe(answer.link);
    await (await tab.app.telling()).getState().give(answer);
    expect(tab.seen.files).toMatchObject([{ name: `${ID}-answer.txt`, type: 'text/plain' }]);
  });

  it('TELL-15 without a key that its leader vouches for it is a plain message that says who can read it', async () => {
    const { unsigned } = await leader();
    const file = JSON.stringify(marshProgramme(4));
    const withKey = JSON.parse(file);
    // A copy that somebody put a key of their own into.
    withKey.leader.seal = 'A'.repeat(44);
    for (const [given, plain] of [
      [unsigned, 'no-key'],
      [JSON.stringify(withKey), 'unsigned'],
    ] as const) {
      const tab = await participant(given, entries);
      const answer = await tellFrom(tab, { ids: ['one', 'two'], ...NOTHING_MORE, name: 'Rosa' });
      expect(answer).toMatchObject({ plain, codes: [] });
      expect(answer.link).toBeUndefined();
      expect(answer.message.split('\n')).toEqual([
        'To Imogen, about “Four weeks to the Heron Loop”. This is not sealed: anyone who sees it can read it.',
        'From Rosa. Group Wren.',
        '',
        '- Mon, 1 March 2027, 17:30. Week 1, session 1. 31 min done. Felt 5 of 10: whole sentences, breath deeper. Meant to be 5.',
        '- Wed, 3 March 2027, 17:30. Week 1, session 3. 31 min done. Not rated. Meant to be 5.',
        '',
        'No session is left out.',
        '',
      ]);
    }
  });

  it('TELL-16 the secret is made once for each programme, and no other programme gets it', async () => {
    const { text } = await leader();
    const tab = await participant(text, [entry({ id: 'one' })]);
    await take(tab.app, JSON.stringify({ ...marshProgramme(4), id: 'marsh-mile' }));
    await tab.app.log.getState().write(entry({ id: 'mile', programme: 'marsh-mile' }));
    const one = await tellFrom(tab, { ids: ['one'], ...ALL });
    const again = await tellFrom(await openTab({ database: tab.database }), {
      ids: ['one'],
      ...ALL,
    });
    const other = await tellFrom(tab, { ids: ['mile'], ...ALL }, 'marsh-mile');
    expect(one.response.secret).toMatch(/^[\w-]{22,64}$/);
    expect(again.response.secret).toBe(one.response.secret);
    expect(other.response.secret).not.toBe(one.response.secret);
  });

  it('TELL-16 a phone that cannot keep the secret makes no answer', async () => {
    const { text } = await leader();
    const first = await participant(text);
    const tab = await openTab({
      database: first.database,
      store: (real) => ({
        ...real,
        putPerson: async () => ({ ok: false, error: { code: 'full', detail: '' } }),
      }),
    });
    const state = await tab.app.telling();
    expect(await state.getState().prepare(ID, { ids: ['one'], ...ALL }, ROSA)).toEqual({
      ok: false,
      error: { code: 'not-kept' },
    });
    expect(await state.getState().prepare('nowhere', { ids: ['one'], ...ALL }, ROSA)).toMatchObject(
      {
        error: { code: 'other-programme' },
      },
    );
    expect(await state.getState().prepare(ID, { ids: [], ...ALL }, ROSA)).toMatchObject({
      error: { code: 'empty' },
    });
  });

  it('TELL-17 making one notes nothing; handing it on is noted once, and can be taken back', async () => {
    const { text } = await leader();
    const tab = await participant(text, entries);
    const state = await tab.app.telling();
    const told = () => state.getState().people[ID]?.told;
    const answer = await tellFrom(tab, { ids: ['one'], ...ALL });
    expect(told()).toEqual([]);
    await state.getState().noteTold(answer);
    await state.getState().noteTold(answer);
    const at = answer.response.sentAt;
    expect(told()).toEqual([{ at, ids: ['one'] }]);
    const later = await (await openTab({ database: tab.database })).app.telling();
    await later.getState().load();
    expect(later.getState().people[ID]).toEqual({
      name: 'Rosa',
      under16: false,
      told: [{ at, ids: ['one'] }],
    });
    await state.getState().takeBack(answer);
    expect(told()).toEqual([]);
  });
});
