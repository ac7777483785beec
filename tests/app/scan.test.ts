import { beforeAll, describe, expect, it } from 'vitest';
import { createStore } from 'zustand/vanilla';
import type { ProgrammesState } from '../../src/app/contract.ts';
import type { Codes } from '../../src/app/exchange-ports.ts';
import { createReceived } from '../../src/app/exchange-stores.ts';
import { joinLink, partLinks } from '../../src/domain/exchange/link.ts';
import { fail, ok } from '../../src/domain/result.ts';
import { createVerifier } from '../../src/platform/keys/index.ts';
import { NO_BOARDS } from '../drivers/board/no-boards.ts';
import { settle } from '../drivers/clock.ts';
import { codeOf, newLeader } from '../drivers/exchange/leader.ts';
import { NO_KEYS } from '../drivers/exchange/no-keys.ts';
import { marshProgramme } from '../drivers/exchange/programmes.ts';
import { NO_RECORDS } from '../drivers/records/no-records.ts';
import { MemorySheets } from '../drivers/workshop/memory-sheets.ts';

const code = codeOf(newLeader(), marshProgramme(4));
const link = joinLink('https://club.example/app/', code);
const parts = partLinks('https://club.example/app/', code, 3);

// What is fetched when first needed is here before the first sight: frames do not wait for it.
beforeAll(async () => {
  await import('../../src/app/exchange-reader.ts');
  await import('../../src/app/exchange-judge.ts');
});

/** A camera whose every sight is told by hand. */
function camera(picture: readonly string[] = []) {
  let saw: (text: string) => void = () => {};
  const state = { on: false };
  const codes: Codes = {
    draw: async () => undefined,
    inPicture: async () => (picture.length > 0 ? ok(picture) : { ok: false, error: 'code-none' }),
    watch: async (_, tell) => {
      saw = tell;
      state.on = true;
      return ok(() => {
        state.on = false;
      });
    },
  };
  const programmes = createStore<ProgrammesState>(() => ({
    ready: true,
    programmes: [],
    chosen: {},
    chooseGroup: async () => {},
    open: async () => ({ ok: false, error: [] }),
  }));
  const broken = { isOn: false };
  const store = {
    programmes: async () => {
      if (broken.isOn) throw new Error('a part of the app is not there');
      return ok([]);
    },
    putProgramme: async () => ok(undefined),
    sent: async () => ok([]),
    putSent: async () => ok(undefined),
  };
  const ports = async () => ({
    verifier: createVerifier(),
    store,
    sheets: new MemorySheets(),
    records: NO_RECORDS,
    ...NO_BOARDS,
    codes,
    keys: NO_KEYS,
    seal: async () => fail('seal' as const),
    words: { canShare: () => false, share: async () => false },
    address: () => '',
  });
  const received = createReceived({
    ports,
    clock: { now: () => 0 },
    programmes,
  });
  return {
    received,
    broken,
    state,
    see: async (text: string) => {
      saw(text);
      for (let n = 0; n < 20; n++) await settle();
    },
    name: () => received.getState().received.name,
  };
}

const video = {} as HTMLVideoElement;

describe('the camera', () => {
  it('XCHG-22 sees a link and stops looking', async () => {
    const { received, state, see, name } = camera();
    await received.getState().scan(video);
    expect(state.on).toBe(true);
    await see('https://club.example/menu');
    expect(name()).toBe('nothing');
    await see(link);
    await expect.poll(name, { timeout: 20_000 }).toBe('preview');
    expect(state.on).toBe(false);
  });

  it('XCHG-22 collects parts from several symbols in view, whichever it sees when', async () => {
    const { received, state, see, name } = camera();
    await received.getState().scan(video);
    const [one = '', two = '', three = ''] = parts;
    for (const text of [two, one, two, one, 'something else', two]) await see(text);
    expect(received.getState().received).toEqual({ name: 'parts', have: [1, 2], of: 3 });
    await see(three);
    await see(one);
    await expect.poll(name, { timeout: 20_000 }).toBe('preview');
    expect(state.on).toBe(false);
  });

  it('XCHG-22 is stopped when what was opened is put away', async () => {
    const { received, state } = camera();
    await received.getState().scan(video);
    received.getState().dismiss();
    expect(state.on).toBe(false);
  });
});

describe('what cannot be fetched or read', () => {
  it('XCHG-16 is told, and what was opened before is no longer offered', async () => {
    const { received, broken } = camera();
    await received.getState().open(link);
    expect(received.getState().received.name).toBe('preview');
    broken.isOn = true;
    await received.getState().open(link);
    expect(received.getState().received).toMatchObject({ problem: { code: 'not-loaded' } });
    broken.isOn = false;
    await received.getState().open(link);
    expect(received.getState().received.name).toBe('preview');
  });
});

describe('pictures', () => {
  const png = new Blob([Uint8Array.of(0x89, 0x50, 0x4e, 0x47, 1, 2)]);

  it('XCHG-22 all parts on one photograph are a programme', async () => {
    const { received, name } = camera(['https://club.example/menu', ...parts]);
    await received.getState().openFile(png);
    expect(name()).toBe('preview');
  });

  it('XCHG-22 one part on a picture waits for the others', async () => {
    const { received } = camera([parts[1] ?? '']);
    await received.getState().openFile(png);
    expect(received.getState().received).toEqual({ name: 'parts', have: [2], of: 3 });
  });

  it('XCHG-22 a picture without a code, or with other codes only, says so', async () => {
    const none = camera();
    await none.received.getState().openFile(png);
    expect(none.received.getState().received).toMatchObject({ problem: { code: 'code-none' } });
    const other = camera(['https://club.example/menu', 'hello']);
    await other.received.getState().openFile(png);
    expect(other.received.getState().received).toMatchObject({
      problem: { code: 'nothing-found' },
    });
  });
});
