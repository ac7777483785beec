import { reviewOutline } from '../../src/domain/review/review.ts';
import { ms } from '../../src/domain/units.ts';
import { applyEdit } from '../../src/domain/workshop/apply-edit.ts';
import { blankSheet } from '../../src/domain/workshop/blank.ts';
import type { Edit } from '../../src/domain/workshop/edit.ts';
import type { Sheet } from '../../src/domain/workshop/sheet.ts';
import { MemorySheets } from '../drivers/workshop/memory-sheets.ts';
import { workshopOver } from '../drivers/workshop/workshop.ts';
import { median, type Table } from './table.ts';

const TYPED =
  '5 min easy walk; 4 x (3 min run, 90 s walk); 2 x (5 min run @ 60%, 2 min walk); 5 min easy walk';
const AT = { week: 6, group: 'c', session: 0 };

/** 12 weeks and 6 groups, each session different from the others. */
function wideSheet(): Sheet {
  const more: readonly Edit[] = [
    ...Array.from({ length: 8 }, () => ({ kind: 'add-week', at: 1 }) as const),
    ...['C', 'D', 'E', 'F'].map((name) => ({ kind: 'add-group', name, for: '' }) as const),
    ...['a', 'b', 'c', 'd', 'e', 'f'].flatMap((group, n): readonly Edit[] => [
      {
        kind: 'cell',
        at: { week: 0, group, session: 0 },
        text: `5 min easy walk; ${n + 4} x (1 min run, 2 min walk); 5 min easy walk`,
      },
      {
        kind: 'fill',
        from: { week: 0, group, session: 0 },
        along: 'weeks',
        step: { kind: 'hard', by: ms(5000 * (n + 1)) },
      },
    ]),
  ];
  return more.reduce(applyEdit, blankSheet('marsh-a', 'en'));
}

const percentile = (values: readonly number[], part: number): number =>
  [...values].sort((a, b) => a - b)[Math.floor(values.length * part)] ?? Number.NaN;

/** Typing a session letter by letter into the middle of a wide programme. */
export async function typing(): Promise<Table> {
  const shop = workshopOver(new MemorySheets());
  await shop.getState().create(wideSheet());
  const { edit } = shop.getState();
  const edits: number[] = [];
  const checks: number[] = [];
  // Twice: the second time through, the engine has made its code fast, as it has for one who types.
  for (let letter = 0; letter < 2 * TYPED.length; letter += 1) {
    const text = TYPED.slice(0, (letter % TYPED.length) + 1);
    const begun = performance.now();
    edit({ kind: 'cell', at: AT, text });
    const open = shop.getState().open;
    const read = performance.now();
    if (open !== undefined) reviewOutline(open.outline);
    edits.push(read - begun);
    checks.push(performance.now() - read);
    await Promise.resolve();
  }
  const row = (name: string, values: readonly number[]): readonly string[] => [
    name,
    ...[median(values), 4 * median(values), percentile(values, 0.95)].map((n) => n.toFixed(2)),
  ];
  return {
    title: 'Typing a session',
    how: '12 weeks, 6 groups, one keystroke after another, through the store of the workshop: the text read and laid out, undo kept, everything checked anew. Aim: within one frame (16.7 ms) on a processor four times slower. In ms, in Node.',
    head: ['Each keystroke', 'Median', 'Four times slower', '95 of 100 within'],
    rows: [
      row('reading and outline', edits),
      row('checks of all weeks', checks),
      row(
        'both',
        edits.map((value, n) => value + (checks[n] ?? 0)),
      ),
    ],
  };
}
