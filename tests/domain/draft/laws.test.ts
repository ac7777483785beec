import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Draft } from '../../../src/domain/draft/draft.ts';
import { draftProgramme } from '../../../src/domain/draft/draft.ts';
import type { Wish } from '../../../src/domain/draft/wish.ts';
import {
  endFaults,
  faultsOf,
  firstFaults,
  lightFaults,
  riseFaults,
  type Seen,
  seenIn,
  sessionFaults,
} from './rules.ts';
import { anyPinnedWish, anyWish, draftOf, FOUR, wishOf } from './wishes.ts';

type Rule = (wish: Wish, weeks: readonly (readonly Seen[])[]) => readonly string[];

const byGroup = (wish: Wish, weeks: readonly (readonly Seen[])[]) =>
  wish.groups.map((_, g) => weeks.map((week) => week[g] as Seen));

/** Each rule is looked for in the plans of random drafts; a failure prints its seed and wish. */
const holds = (rule: Rule): void =>
  fc.assert(
    fc.property(anyWish, (wish) => {
      expect(rule(wish, seenIn(wish, draftOf(wish)))).toEqual([]);
    }),
    { numRuns: 12 },
  );

describe('whatever is wished for', () => {
  it('DRAFT-1 there is a draft, of every week and group', () => {
    fc.assert(
      fc.property(anyWish, (wish) => {
        const draft = draftOf(wish);
        expect(draft.weeks).toHaveLength(wish.weeks);
        const ids = wish.groups.map(({ id }) => id);
        for (const { cells } of draft.weeks) expect(Object.keys(cells)).toEqual(ids);
        expect(draft.answers.map(({ group }) => group)).toEqual(ids);
      }),
      { numRuns: 12 },
    );
  });

  it('DRAFT-2 sessions have their ends, a main set that can be said, and not too much time', () => {
    holds((wish, weeks) => weeks.flat().flatMap((one) => sessionFaults(wish, one)));
  });

  it('DRAFT-3 groups end together in every week', () => {
    holds((_, weeks) => weeks.flatMap(endFaults));
  });

  it('DRAFT-4 the first week is near what can be done today', () => {
    holds((wish, weeks) => weeks.flat().flatMap((one) => firstFaults(wish, one)));
  });

  it('DRAFT-5 running, stretches and main sets rise within their bounds', () => {
    holds((wish, weeks) => byGroup(wish, weeks).flatMap((one) => riseFaults(wish, one)));
  });

  it('DRAFT-6 the last week is lighter', () => {
    holds((wish, weeks) => byGroup(wish, weeks).flatMap((one) => lightFaults(wish, one)));
  });

  it('DRAFT-2, DRAFT-3, DRAFT-4, DRAFT-5, DRAFT-6 also around pinned sessions', () => {
    fc.assert(
      fc.property(anyPinnedWish, (wish) => {
        const draft = draftProgramme(wish);
        if (draft.ok) expect(faultsOf(wish, draft.value)).toEqual([]);
        else expect(draft.error).toEqual([{ code: 'no-way' }]);
      }),
      { numRuns: 40 },
    );
  });

  it('DRAFT-9 the same wish gives the same draft, whatever was drafted in between', () => {
    fc.assert(
      fc.property(anyPinnedWish, anyWish, (wish, other) => {
        const first = draftProgramme(wish);
        draftProgramme(other);
        expect(draftProgramme(structuredClone(wish))).toEqual(first);
      }),
      { numRuns: 15 },
    );
  });
});

describe('the rules that the laws look for', () => {
  const wish = wishOf(6, 45, FOUR);
  const withText = (draft: Draft, week: number, group: string, text: string): Draft => ({
    ...draft,
    weeks: draft.weeks.map((one, n) =>
      n === week
        ? { ...one, cells: { ...one.cells, [group]: { text } as Draft['weeks'][0]['cells'][''] } }
        : one,
    ),
  });
  const draft = draftOf(wish);

  it.each([
    ['DRAFT-2', 1, '4 min easy walk; 8 x (2 min brisk walk, 1 min walk); 5 min easy walk'],
    ['DRAFT-2', 1, '5 min easy walk; 2 x (10 min brisk walk, 2 min walk); 5 min easy walk'],
    ['DRAFT-2', 1, '5 min easy walk; 8 x (2 min 5 s brisk walk, 55 s walk); 5 min easy walk'],
    ['DRAFT-3', 1, '5 min easy walk; 5 x (2 min brisk walk, 1 min walk); 5 min easy walk'],
    ['DRAFT-4', 0, '5 min easy walk; 21 min brisk walk; 5 min easy walk'],
    ['DRAFT-5', 2, '5 min easy walk; 24 min brisk walk; 5 min easy walk'],
    ['DRAFT-5', 3, '5 min easy walk; 9 x (1 min brisk walk, 2 min walk); 5 min easy walk'],
    ['DRAFT-6', 5, '5 min easy walk; 18 min brisk walk; 5 min easy walk'],
  ])(
    'DRAFT-2, DRAFT-3, DRAFT-4, DRAFT-5, DRAFT-6 a session that breaks one is found (%s, week %i): %s',
    (_, week, text) => {
      expect(faultsOf(wish, draft)).toEqual([]);
      expect(faultsOf(wish, withText(draft, week, 'wren', text))).not.toEqual([]);
    },
  );
});
