import { draftProgramme } from '../../src/domain/draft/draft.ts';
import type { Wish } from '../../src/domain/draft/wish.ts';
import { type GroupLine, wishOf } from '../domain/draft/wishes.ts';
import { median, type Table } from './table.ts';

const TURNS = 15;

/** Four groups that all arrive in eight weeks, and one in the third place that does not. */
const CLUB: readonly GroupLine[] = [
  ['Wren', 20, 0, 'walk'],
  ['Dunlin', 20, 0, 'mix'],
  ['Curlew', 30, 5, 'mix'],
  ['Swift', 40, 12, 'run'],
];
const LATE = CLUB.with(2, ['Curlew', 30, 2, 'run']);
const MORE: readonly GroupLine[] = [...LATE, ['Tern', 40, 20, 'run'], ['Plover', 50, 30, 'run']];

/** How long a leader waits for a draft, the answers who arrives and what would do included. */
export function drafting(): Table {
  const row = (name: string, wish: Wish): readonly string[] => {
    const times: number[] = [];
    let arriving = 0;
    for (let n = 0; n < TURNS; n += 1) {
      const begun = performance.now();
      const draft = draftProgramme(wish);
      times.push(performance.now() - begun);
      if (draft.ok) arriving = draft.value.answers.filter(({ arrives }) => arrives).length;
    }
    const first = times[0] ?? Number.NaN;
    return [
      name,
      `${arriving} of ${wish.groups.length}`,
      first.toFixed(0),
      median(times).toFixed(0),
    ];
  };
  return {
    title: 'Drafting a programme',
    how: `One draft with its answers, in ms, in Node: the first, and the middle one of ${TURNS}. For groups that do not arrive, longer programmes are tried too. The first row's first draft is that of a cold start.`,
    head: ['Asked for', 'Arrive', 'First', 'Middle'],
    rows: [
      row('8 weeks, 4 groups, 45 min, 5 km', wishOf(8, 45, CLUB)),
      row('the same, one group too late', wishOf(8, 45, LATE)),
      row('12 weeks, 6 groups, 90 min, 10 km', wishOf(12, 90, MORE, { distanceM: 10_000 })),
      row('16 weeks, 6 groups, 120 min, 21.1 km', wishOf(16, 120, MORE, { distanceM: 21_098 })),
    ],
  };
}
