/** How a group's week to decide stands to what was sent, and what would bring it elsewhere. */
import { type Asked, editsFor } from '../../domain/board/next-edits.ts';
import { WAYS, type Way } from '../../domain/board/next-week.ts';
import type { Programme } from '../../domain/programme/programme.ts';
import { applyEdit } from '../../domain/workshop/apply-edit.ts';
import type { Edit } from '../../domain/workshop/edit.ts';
import { cellsOf } from '../../domain/workshop/places.ts';
import type { Sheet } from '../../domain/workshop/sheet.ts';

/** Texts of a group's sessions in one week, in their order. */
export type Texts = readonly string[];

const textsIn = (sheet: Sheet, { group, next }: Place): Texts =>
  cellsOf(sheet.weeks[next - 1], group).map(({ text }) => text);

const isSame = (a: Texts, b: Texts): boolean =>
  a.length === b.length && a.every((text, n) => text === b[n]);

type Place = Pick<Asked, 'group' | 'next'>;

/**
 * The sheet with these sessions as they were sent: what every choice begins from, so that two
 * choices one after the other are never one on top of the other. Pinned sessions stay.
 *
 * @returns nothing where the sheet has no such group or week
 */
function asSent(sheet: Sheet, programme: Programme, { group, next }: Place): Sheet | undefined {
  const sent = programme.weeks[next - 1]?.sessions[group] ?? [];
  const week = sheet.weeks[next - 1];
  const cells = cellsOf(week, group);
  if (week === undefined || cells.length === 0 || sent.length === 0) return undefined;
  const before = sent.map(({ text }, n) => (cells[n]?.pinned ? cells[n] : { text }));
  const sessions = { ...week.sessions, [group]: before };
  return {
    ...sheet,
    weeks: sheet.weeks.map((each, n) => (n === next - 1 ? { ...week, sessions } : each)),
  };
}

/** A group's week as it was sent, as the sheet has it now, and as each way would make it. */
export interface Standing {
  readonly sent: Texts;
  readonly now: Texts;
  /** What each way comes to. */
  readonly ways: Readonly<Record<Way, Texts>>;
  /** Which of them the sheet says; `by-hand`: none of them. */
  readonly is: Way | 'by-hand';
  /** Places of sessions, from 0, that must stay as they are. */
  readonly pinned: readonly number[];
}

/**
 * @param preferred of two ways that come to the same, this one
 * @returns nothing where the sheet has no such group or week
 */
export function standingOf(
  sheet: Sheet,
  programme: Programme,
  asked: Omit<Asked, 'way'>,
  preferred: Way,
): Standing | undefined {
  const base = asSent(sheet, programme, asked);
  if (base === undefined) return undefined;
  const after = (way: Way): Texts =>
    textsIn(editsFor({ ...asked, way }, base).reduce(applyEdit, base), asked);
  const ways = Object.fromEntries(WAYS.map((way) => [way, after(way)])) as Record<Way, Texts>;
  const now = textsIn(sheet, asked);
  const sent = textsIn(base, asked);
  const is = isSame(now, sent)
    ? 'go-on'
    : [preferred, ...WAYS].find((way) => isSame(now, ways[way]));
  const cells = cellsOf(sheet.weeks[asked.next - 1], asked.group);
  return {
    sent,
    now,
    ways,
    is: is ?? 'by-hand',
    pinned: cells.flatMap(({ pinned }, n) => (pinned ? [n] : [])),
  };
}

/** Whether a way leaves the week as it was sent: then there is nothing to take. */
export const changesNothing = (standing: Standing, way: Way): boolean =>
  isSame(standing.ways[way], standing.sent);

/** The edits that make a group's sessions of a week say these texts. */
export function editsTo(sheet: Sheet, { group, next }: Place, texts: Texts): readonly Edit[] {
  const week = next - 1;
  const cells = cellsOf(sheet.weeks[week], group);
  const add = Array.from(
    { length: Math.max(0, texts.length - cells.length) },
    (): Edit => ({ kind: 'add-session', week, group }),
  );
  const remove = Array.from(
    { length: Math.max(0, cells.length - texts.length) },
    (_, n): Edit => ({
      kind: 'remove-session',
      at: { week, group, session: cells.length - 1 - n },
    }),
  );
  const write = texts.flatMap((text, session): readonly Edit[] =>
    cells[session]?.text === text ? [] : [{ kind: 'cell', at: { week, group, session }, text }],
  );
  return [...add, ...remove, ...write];
}
