import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { AHEAD_MS, CAPACITY } from '../../../src/domain/board/capacity.ts';
import { withForgotten } from '../../../src/domain/board/forget.ts';
import { type Heard, heardKey } from '../../../src/domain/board/heard.ts';
import { asHeard } from '../../../src/domain/board/shapes.ts';
import { heardOf, type Kept, keysOf, type Terms, takeIn } from '../../../src/domain/board/take.ts';
import type { Response } from '../../../src/domain/exchange/response.ts';
import { PROGRAMME, ROSA, response, responses, SUNDAY, TAMSIN, told } from './records.ts';

const NOTHING: Kept = { heard: [], setups: [] };
const DIGEST = 'A'.repeat(43);
const terms = (more: Partial<Terms> = {}): Terms => ({
  now: SUNDAY,
  programmes: new Set([PROGRAMME]),
  people: new Map(),
  digests: new Map([[heardKey(PROGRAMME, ROSA), DIGEST]]),
  ...more,
});

/** Some at a time, as they come out of a file. */
function takeAll(all: readonly Response[], size: number): readonly Heard[] {
  const here = new Map<string, Heard>();
  for (let at = 0; at < all.length; at += size) {
    const { heard } = takeIn(
      { heard: [...here.values()], setups: [] },
      all.slice(at, at + size),
      terms({ now: SUNDAY + AHEAD_MS, people: new Map([[PROGRAMME, here.size]]) }),
    );
    for (const each of heard) here.set(each.key, each);
  }
  return [...here.values()].sort((a, b) => (a.key < b.key ? -1 : 1));
}

const why = (kept: Kept, given: Response, given2: Terms): string => {
  const { heard, outcomes } = takeIn(kept, [given], given2);
  const [outcome] = outcomes;
  if (outcome === undefined) throw new Error('nothing was said of it');
  expect(heard.length).toBe(outcome.taken ? 1 : 0);
  return outcome.taken ? 'taken' : outcome.why;
};

describe('answers that are taken in', () => {
  it('IN-5 any order, any number at a time and any of them again: one board', () => {
    fc.assert(
      fc.property(
        fc.array(responses, { minLength: 1, maxLength: 14 }).chain((list) =>
          fc.tuple(
            fc.constant(list),
            fc.shuffledSubarray([...list, ...list], {
              minLength: list.length * 2,
              maxLength: list.length * 2,
            }),
            fc.integer({ min: 1, max: 9 }),
          ),
        ),
        ([list, shuffled, size]) => {
          const once = takeAll(list, 100);
          expect(takeAll(shuffled, size)).toEqual(once);
          for (const heard of once) expect(asHeard(heard), 'can be stored').toEqual(heard);
        },
      ),
      { numRuns: 300 },
    );
  });

  it('IN-5 every answer is taken or has its reason, in the order in which they came', () => {
    const given = [
      response(),
      response(),
      response({ programme: { id: 'marsh-mile', revision: 1 } }),
      response({ secret: TAMSIN, entries: [told('one'), told('two', 2)] }),
    ];
    expect(takeIn(NOTHING, given, terms()).outcomes).toEqual([
      { taken: true, programmeId: PROGRAMME, person: ROSA, sessions: 1 },
      { taken: false, why: 'again' },
      { taken: false, why: 'other-programme' },
      { taken: true, programmeId: PROGRAMME, person: TAMSIN, sessions: 2 },
    ]);
    expect(keysOf(given)).toEqual([
      heardKey(PROGRAMME, ROSA),
      heardKey('marsh-mile', ROSA),
      heardKey(PROGRAMME, TAMSIN),
    ]);
  });

  it('IN-5 the same secret in two programmes is two people', () => {
    const other = response({ programme: { id: 'marsh-mile', revision: 1 } });
    const both = terms({ programmes: new Set([PROGRAMME, 'marsh-mile']) });
    expect(takeIn(NOTHING, [response(), other], both).heard).toHaveLength(2);
  });
});

describe('answers that are left', () => {
  it('IN-6 of a programme that was not sent from this device', () => {
    const none = terms({ programmes: new Set() });
    expect(why(NOTHING, response(), none)).toBe('other-programme');
  });

  it('IN-6 with nothing new: replayed, or older than what is known', () => {
    const kept = {
      heard: [heardOf(response({ entries: [told('one'), told('two', 2)] }))],
      setups: [],
    };
    expect(why(kept, response({ entries: [told('one'), told('two', 2)] }), terms())).toBe('again');
    expect(why(kept, response({ sentAt: SUNDAY - 1 }), terms())).toBe('again');
    expect(why(kept, response({ sentAt: SUNDAY - 1, entries: [told('three', 3)] }), terms())).toBe(
      'taken',
    );
  });

  it('IN-6 more than a day ahead of this device’s clock', () => {
    const at = (sentAt: number) => why(NOTHING, response({ sentAt }), terms());
    expect(at(SUNDAY + AHEAD_MS)).toBe('taken');
    expect(at(SUNDAY + AHEAD_MS + 1)).toBe('ahead');
  });

  it('IN-6 sent up to when the person was forgotten; what is sent afterwards is consent anew', () => {
    const setup = withForgotten(undefined, PROGRAMME, [{ digest: DIGEST, at: SUNDAY }]);
    const kept = { heard: [], setups: [setup] };
    expect(why(kept, response({ sentAt: SUNDAY - 1 }), terms())).toBe('forgotten');
    expect(why(kept, response(), terms())).toBe('forgotten');
    expect(why(kept, response({ sentAt: SUNDAY + 1 }), terms())).toBe('taken');
    expect(why(kept, response({ secret: TAMSIN }), terms())).toBe('taken');
  });

  it('IN-7 when a programme has all the people that a board holds; those known still tell', () => {
    const many = terms({ people: new Map([[PROGRAMME, CAPACITY.people]]) });
    expect(why(NOTHING, response(), many)).toBe('full');
    const kept = { heard: [heardOf(response())], setups: [] };
    expect(why(kept, response({ sentAt: SUNDAY + 1 }), many)).toBe('taken');
    const one = terms({ people: new Map([[PROGRAMME, CAPACITY.people - 1]]) });
    const { outcomes } = takeIn(NOTHING, [response(), response({ secret: TAMSIN })], one);
    expect(outcomes.map(({ taken }) => taken)).toEqual([true, false]);
  });

  it('IN-7 when a person has all the sessions that a board holds; those known are still put right', () => {
    const list = Array.from({ length: CAPACITY.sessions }, (_, n) => told(`s-${n}`));
    const kept = { heard: [heardOf(response({ entries: list }))], setups: [] };
    expect(why(kept, response({ sentAt: SUNDAY + 1, entries: [told('more')] }), terms())).toBe(
      'full',
    );
    const put = response({ sentAt: SUNDAY + 1, entries: [told('s-7', 0, { effort: 3 })] });
    expect(why(kept, put, terms())).toBe('taken');
  });
});
