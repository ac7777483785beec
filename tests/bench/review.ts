import { createReader } from '../../src/app/workshop/readings.ts';
import { reviewOutline } from '../../src/domain/review/review.ts';
import { applyEdit } from '../../src/domain/workshop/apply-edit.ts';
import { sheetOf } from '../../src/domain/workshop/file.ts';
import type { Sheet } from '../../src/domain/workshop/sheet.ts';
import { marshProgramme } from '../drivers/exchange/programmes.ts';
import { median, type Table } from './table.ts';

const TURNS = 300;
const WEEKS = 12;
/** Of the marsh programme's groups, so that there are six. */
const TWINS = { 'curlew-2': 'curlew', 'swift-2': 'swift' } as const;

function sixGroups(): Sheet {
  const file = marshProgramme(WEEKS) as {
    groups: readonly { readonly id: string }[];
    weeks: readonly { sessions: Record<string, unknown> }[];
  };
  for (const { sessions } of file.weeks)
    for (const [id, of] of Object.entries(TWINS)) sessions[id] = sessions[of];
  const twins = Object.keys(TWINS).map((id) => ({ id, name: id, for: '' }));
  const sheet = sheetOf(JSON.stringify({ ...file, groups: [...file.groups, ...twins] }));
  if (!sheet.ok) throw new Error(JSON.stringify(sheet.error));
  return sheet.value;
}

const timed = (job: () => void): number => {
  const begun = performance.now();
  job();
  return performance.now() - begun;
};

const row = (what: string, times: readonly number[]): readonly string[] => {
  const sorted = [...times].sort((a, b) => a - b);
  const late = sorted[Math.floor(sorted.length * 0.95)] ?? Number.NaN;
  const say = (value: number): string => `${value.toFixed(2)} ms`;
  return [what, say(median(times)), say(median(times) * 4), say(late)];
};

/** Every edit is a text that was never read before, each in another cell. */
function edits(sheet: Sheet): { whole: number[]; review: number[]; found: number } {
  const { read } = createReader();
  reviewOutline(read(sheet).outline);
  const [whole, review]: [number[], number[]] = [[], []];
  let [now, found] = [sheet, 0];
  for (let turn = 0; turn < TURNS; turn += 1) {
    const group = now.groups[turn % now.groups.length]?.id ?? '';
    const text = `5 min easy walk; 4 x (${100 + turn} s run, 1 min walk); 5 min easy walk`;
    const at = { week: turn % WEEKS, group, session: 0 };
    let reviewed = 0;
    const all = timed(() => {
      now = applyEdit(now, { kind: 'cell', at, text });
      const { outline } = read(now);
      reviewed = timed(() => {
        found = reviewOutline(outline).length;
      });
    });
    whole.push(all);
    review.push(reviewed);
  }
  return { whole, review, found };
}

/** All plans new: what opening a programme takes. */
const anew = (sheet: Sheet): number[] =>
  Array.from({ length: 30 }, () => {
    const { outline } = createReader().read(sheet);
    return timed(() => reviewOutline(outline));
  });

/** Looking a programme of 12 weeks and six groups through while it is written. */
export function reviewing(): Table {
  const sheet = sixGroups();
  edits(sheet);
  const { whole, review, found } = edits(sheet);
  return {
    title: 'Looking a programme through',
    how: `12 weeks, six groups, in Node; ${TURNS} edits of one cell, each a new text, ${found} warnings in the end. Budget: one frame, 16.7 ms, at a processor four times slower.`,
    head: ['What', 'Median', 'Four times slower', '95 of 100 within'],
    rows: [
      row('All checks after an edit', review),
      row('The edit, read and checked', whole),
      row('All checks of a programme just opened', anew(sheet)),
    ],
  };
}
