import { describe, expect, it } from 'vitest';
import { createBringIn } from '../../src/app/board/intake.ts';
import type { IntakeView } from '../../src/app/board-contract.ts';
import type { Intake, IntakeBatch } from '../../src/app/intake-contract.ts';
import { heardKey } from '../../src/domain/board/heard.ts';
import { type Outcome, takeIn } from '../../src/domain/board/take.ts';
import type { Response } from '../../src/domain/exchange/response.ts';
import { fail, ok } from '../../src/domain/result.ts';
import { PROGRAMME, ROSA, response, SUNDAY, TAMSIN, told } from '../domain/board/records.ts';

const batch = (more: Partial<IntakeBatch>): IntakeBatch => {
  const responses = more.responses ?? [];
  return {
    share: 1,
    from: responses.map(() => ''),
    left: [],
    found: responses.length,
    ...more,
    responses,
  };
};

/** An intake of given batches, which asks for the next only when the last was taken. */
function intakeOf(batches: readonly IntakeBatch[], given: { asked?: number[] } = {}): Intake {
  return {
    async open(_, take, signal) {
      for (const [n, each] of batches.entries()) {
        if (signal.aborted) break;
        given.asked?.push(n);
        await take(each);
      }
      return ok(undefined);
    },
  };
}

/** Takes in over a memory, by the core's own rules. */
function memory() {
  const here = new Map<string, ReturnType<typeof takeIn>['heard'][number]>();
  return async (responses: readonly Response[]): Promise<readonly Outcome[]> => {
    const { heard, outcomes } = takeIn({ heard: [...here.values()], setups: [] }, responses, {
      now: SUNDAY,
      programmes: new Set([PROGRAMME]),
      people: new Map([[PROGRAMME, here.size]]),
      digests: new Map([[heardKey(PROGRAMME, ROSA), 'A'.repeat(43)]]),
    });
    for (const each of heard) here.set(each.key, each);
    return outcomes;
  };
}

const rosa = response({ entries: [told('one'), told('two', 2)] });
const later = response({
  sentAt: SUNDAY + 1,
  entries: [told('two', 2, { effort: 5 }), told('three', 4)],
});
const tamsin = response({ secret: TAMSIN });

async function broughtIn(
  intake: Intake,
  take: Parameters<typeof createBringIn>[0]['take'] = memory(),
): Promise<readonly IntakeView[]> {
  const shown: IntakeView[] = [];
  await createBringIn({ intake, take, show: (view) => shown.push(view) }).bringIn([]);
  return shown;
}

describe('bringing answers in', () => {
  it('IN-16 says what was taken of each programme: answers, people and new sessions', async () => {
    const shown = await broughtIn(
      intakeOf([
        batch({ share: 0.4, responses: [rosa, tamsin] }),
        batch({ responses: [later, response({ programme: { id: 'marsh-mile', revision: 1 } })] }),
      ]),
    );
    const taken = { [PROGRAMME]: { answers: 3, people: 2, sessions: 4 } };
    const left = [{ why: 'other-programme', count: 1, from: [] }];
    expect(shown).toEqual([
      { name: 'reading', share: 0, report: { found: 0, taken: {}, left: [] } },
      {
        name: 'reading',
        share: 0.4,
        report: {
          found: 2,
          taken: { [PROGRAMME]: { answers: 2, people: 2, sessions: 3 } },
          left: [],
        },
      },
      { name: 'reading', share: 1, report: { found: 4, taken, left } },
      { name: 'done', cancelled: false, report: { found: 4, taken, left } },
    ]);
  });

  it('IN-16 what was left is counted by its reason, with the names of the first three sources', async () => {
    const names = ['a.txt', 'b.txt', 'b.txt', 'c.txt', 'd.txt'];
    const shown = await broughtIn(
      intakeOf([
        batch({ responses: [rosa], from: ['a.txt'] }),
        batch({
          responses: names.map(() => rosa),
          from: names,
          left: [
            { why: 'damaged', count: 1, from: ['a.txt'] },
            { why: 'damaged', count: 2, from: ['e.txt'] },
          ],
          found: 8,
        }),
      ]),
    );
    const done = shown.at(-1);
    if (done?.name !== 'done') throw new Error(done?.name);
    expect(done.report.left).toEqual([
      { why: 'damaged', count: 3, from: ['a.txt', 'e.txt'] },
      { why: 'again', count: 5, from: ['a.txt', 'b.txt', 'c.txt'] },
    ]);
    const { found, taken, left } = done.report;
    const answers = Object.values(taken).reduce((sum, each) => sum + each.answers, 0);
    expect(answers + left.reduce((sum, { count }) => sum + count, 0)).toBe(found);
  });

  it('IN-17 cancelled, it ends after the batch that is under way, and that stays taken', async () => {
    const asked: number[] = [];
    const shown: IntakeView[] = [];
    const bringing = createBringIn({
      intake: intakeOf([batch({ share: 0.5, responses: [rosa] }), batch({ responses: [tamsin] })], {
        asked,
      }),
      take: memory(),
      show: (view) => {
        shown.push(view);
        if (view.name === 'reading' && view.share === 0.5) bringing.cancel();
      },
    });
    await bringing.bringIn([]);
    expect(asked).toEqual([0]);
    expect(shown.at(-1)).toMatchObject({ name: 'done', cancelled: true, report: { found: 1 } });
    await bringing.bringIn([]);
    expect(shown.at(-1), 'and can be begun again').toMatchObject({ name: 'done' });
  });

  it('IN-17 what is brought in meanwhile waits its turn, and goes with what is cancelled', async () => {
    const order: string[] = [];
    const bringing = createBringIn({
      intake: {
        async open([source], _, signal) {
          order.push(`${source?.name} begins${signal.aborted ? ', cancelled' : ''}`);
          await new Promise((resolve) => setTimeout(resolve, 5));
          order.push(`${source?.name} ends`);
          return ok(undefined);
        },
      },
      take: memory(),
      show: () => {},
    });
    const both = [
      bringing.bringIn([{ name: 'a', content: '' }]),
      bringing.bringIn([{ name: 'b', content: '' }]),
    ];
    await both[0];
    bringing.cancel();
    await both[1];
    expect(order).toEqual(['a begins', 'a ends', 'b begins', 'b ends']);
  });

  it('IN-17 what cannot be kept ends it, and nothing more is opened', async () => {
    const asked: number[] = [];
    const batches = [batch({ responses: [rosa] }), batch({ responses: [tamsin] })];
    const shown = await broughtIn(intakeOf(batches, { asked }), async () => 'store');
    expect(asked).toEqual([0]);
    expect(shown.at(-1)).toEqual({ name: 'refused', why: 'store' });
  });

  it('IN-17 without keys, without a secure page or when something is thrown it says so', async () => {
    for (const why of ['no-keys', 'not-secure', 'not-loaded'] as const)
      expect((await broughtIn({ open: async () => fail(why) })).at(-1)).toEqual({
        name: 'refused',
        why,
      });
    const broken = { open: () => Promise.reject(new Error('gone')) };
    expect((await broughtIn(broken)).at(-1)).toEqual({ name: 'refused', why: 'not-loaded' });
  });
});
