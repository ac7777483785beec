import { formatPlan } from '../programme/format.ts';
import { parsePlan } from '../programme/parse.ts';
import type { SessionPlan } from '../programme/programme.ts';
import { factsOf } from '../review/facts.ts';
import { type Outline, sessionsIn } from '../review/outline.ts';
import { applyEdit } from '../workshop/apply-edit.ts';
import type { Edit } from '../workshop/edit.ts';
import { cellsOf } from '../workshop/places.ts';
import type { Cell, Sheet } from '../workshop/sheet.ts';
import { easedAt } from './ease.ts';
import type { Suggestion } from './next-week.ts';
import { stretchedAt, withPlan } from './stretch.ts';

/** What of a suggestion decides its edits. */
export type Asked = Pick<Suggestion, 'group' | 'looked' | 'next' | 'way'>;

/** An outline in which the place of a session is its place in the sheet: unreadable ones end a list. */
function readable(cells: readonly Cell[]): readonly SessionPlan[] {
  const read: SessionPlan[] = [];
  for (const { text } of cells) {
    const plan = parsePlan(text);
    if (!plan.ok) break;
    read.push({ text, plan: plan.value });
  }
  return read;
}

const outlineOf = ({ weeks, ...sheet }: Sheet): Outline => ({
  ...sheet,
  weeks: weeks.map((week) => ({
    ...week,
    sessions: Object.fromEntries(
      sheet.groups.map(({ id }) => [id, readable(cellsOf(week, id))] as const),
    ),
  })),
});

/** The sessions of the week that was looked at in the place of the next week's. */
function repeatEdits({ group, looked, next }: Asked, sheet: Sheet): readonly Edit[] {
  const from = cellsOf(sheet.weeks[looked - 1], group);
  const to = cellsOf(sheet.weeks[next - 1], group);
  if (from.length === 0 || to.length === 0) return [];
  const week = next - 1;
  // A session that must stay stays, and so does how many there are.
  const isHeld = to.some(({ pinned }) => pinned);
  const count = isHeld ? to.length : from.length;
  const more = Array.from(
    { length: Math.max(0, count - to.length) },
    (): Edit => ({
      kind: 'add-session',
      week,
      group,
    }),
  );
  const fewer = Array.from(
    { length: Math.max(0, to.length - count) },
    (_, n): Edit => ({
      kind: 'remove-session',
      at: { week, group, session: to.length - 1 - n },
    }),
  );
  const texts = Array.from({ length: count }, (_, session): readonly Edit[] => {
    const text = (from[session] ?? from.at(-1))?.text;
    const before = to[session] ?? to.at(-1);
    if (text === undefined || to[session]?.pinned || before?.text === text) return [];
    return [{ kind: 'cell', at: { week, group, session }, text }];
  });
  return [...more, ...fewer, ...texts.flat()];
}

/** Each session of the next week changed in turn, so that each is judged beside those before it. */
function changedEdits({ group, looked, next, way }: Asked, sheet: Sheet): readonly Edit[] {
  let outline = outlineOf(sheet);
  const week = next - 1;
  const was = outline.weeks[looked - 1];
  const facts = was === undefined ? [] : sessionsIn(was, group).map(({ plan }) => factsOf(plan));
  const most = {
    work: facts.length === 0 ? Infinity : Math.max(...facts.map(({ work }) => work)),
    stretch: facts.length === 0 ? Infinity : Math.max(...facts.map(({ stretch }) => stretch)),
  };
  return cellsOf(sheet.weeks[week], group).flatMap(({ pinned }, session): readonly Edit[] => {
    if (pinned) return [];
    const at = { week, group, session };
    const plan = way === 'ease' ? easedAt(outline, at, most) : stretchedAt(outline, at);
    if (plan === undefined) return [];
    outline = withPlan(outline, at, plan);
    return [{ kind: 'cell', at, text: formatPlan(plan) }];
  });
}

/**
 * What a suggestion does to a sheet: only the sessions of its group in the week to decide change.
 * Pinned sessions, the week's focus, effort and times, and everything else stay as they are.
 * Repeating takes over the texts of the week that was looked at; easing makes each session gentler
 * than it is written; stretching goes one step up within the limits of the review; going on, and
 * what cannot be read, change nothing.
 */
export function editsFor(asked: Asked, sheet: Sheet): readonly Edit[] {
  if (asked.way === 'go-on') return [];
  return asked.way === 'repeat' ? repeatEdits(asked, sheet) : changedEdits(asked, sheet);
}

/** One session of the week to decide, as it is and as it would be. */
export interface PreviewRow {
  /** From 1. */
  readonly session: number;
  /** Nothing: it is a session more, or one less. */
  readonly before?: string;
  readonly after?: string;
  /** The leader wants it as it is: it stays. */
  readonly pinned: boolean;
}

/** The texts of the week to decide before and after a suggestion's edits. */
export function previewOf(asked: Asked, sheet: Sheet): readonly PreviewRow[] {
  const { group, next } = asked;
  const edited = editsFor(asked, sheet).reduce(applyEdit, sheet);
  const [before, after] = [sheet, edited].map(({ weeks }) => cellsOf(weeks[next - 1], group));
  const count = Math.max(before?.length ?? 0, after?.length ?? 0);
  return Array.from({ length: count }, (_, n) => {
    const [was, is] = [before?.[n], after?.[n]];
    return {
      session: n + 1,
      ...(was && { before: was.text }),
      ...(is && { after: is.text }),
      pinned: was?.pinned ?? false,
    };
  });
}
