import { useState } from 'react';
import type { Reading } from '../../src/app/workshop-contract.ts';
import { parsePlan } from '../../src/domain/programme/parse.ts';
import { tidy } from '../../src/domain/programme/tidy.ts';
import { layOut } from '../../src/domain/timeline/lay-out.ts';
import type { Edit } from '../../src/domain/workshop/edit.ts';
import type { Cell, CellPlace, Sheet } from '../../src/domain/workshop/sheet.ts';
import { CellEditor } from '../../src/ui/workshop/CellEditor.tsx';

const WEEK = { focus: '', effort: 50, timesPerWeek: { min: 2, max: 3 } } as const;
const GROUPS = [
  { id: 'wren', name: 'Wren', for: '' },
  { id: 'dunlin', name: 'Dunlin', for: '' },
  { id: 'curlew', name: 'Curlew', for: '' },
];
export const USUAL = '5 min easy walk; 7 x (1 min walk, 2 min run); 5 min easy walk';

/** Four weeks of three groups, all of them the same session. */
export function sheetOf(...cells: readonly Cell[]): Sheet {
  const usual: readonly Cell[] = [{ text: USUAL }];
  const week = (first: readonly Cell[]) => ({
    ...WEEK,
    sessions: { wren: first, dunlin: usual, curlew: usual },
  });
  return {
    id: 'heron-loop',
    title: 'Four weeks to the Heron Loop',
    language: 'en',
    goal: { name: 'Heron Loop', distanceM: 5000 },
    leader: 'Imogen',
    groups: GROUPS,
    weeks: [week(cells), week(usual), week([{ text: USUAL, pinned: true }]), week(usual)],
    reminders: [],
  };
}

/** How a cell's text is understood, as the app does it. */
export function readingOf({ text, good }: Cell): Reading {
  const read = parsePlan(text);
  if (read.ok) return { plan: read.value, timeline: layOut(read.value), problems: [] };
  const last = good === undefined ? undefined : parsePlan(good);
  if (!last?.ok) return { problems: [read.error] };
  return { plan: last.value, timeline: layOut(last.value), problems: [read.error] };
}

function written(cell: Cell, text: string): Cell {
  if (parsePlan(text).ok) return cell.pinned ? { text, pinned: true } : { text };
  const good = parsePlan(cell.text).ok ? cell.text : cell.good;
  return { ...cell, text, ...(good === undefined ? {} : { good }) };
}

function edited(cell: Cell, edit: Edit): Cell {
  if (edit.kind === 'cell') return written(cell, edit.text);
  if (edit.kind === 'pin') return { ...cell, ...(edit.pinned ? { pinned: true } : {}) };
  const tidied = edit.kind === 'tidy' ? tidy(cell.text) : undefined;
  return tidied?.ok ? written(cell, tidied.value) : cell;
}

interface CellHostProps {
  readonly cells: readonly Cell[];
  readonly at?: CellPlace;
  readonly onEdit?: (edit: Edit) => void;
}

const FIRST: CellPlace = { week: 0, group: 'wren', session: 0 };

/** A page around one cell that takes the edits of its text over, and passes all of them on. */
export function CellHost({ cells: first, at = FIRST, onEdit }: CellHostProps) {
  const [cells, setCells] = useState(first);
  const sheet = sheetOf(...cells);
  const cell = sheet.weeks[at.week]?.sessions[at.group]?.[at.session] ?? { text: '' };
  const take = (edit: Edit) => {
    onEdit?.(edit);
    setCells((now) => now.map((each, n) => (n === at.session ? edited(each, edit) : each)));
  };
  return <CellEditor at={at} sheet={sheet} reading={readingOf(cell)} onEdit={take} />;
}
