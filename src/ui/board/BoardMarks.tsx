/** Marks of the board: told apart by shape, so that they are read in grey and without colours. */
import type { ReactNode } from 'react';
import { gapText, LOOK } from '../../copy/board.ts';
import { boardPage as words } from '../../copy/board-page.ts';
import type { BoardCell } from '../../domain/board/board.ts';
import { type CellLook, lookOfGap } from '../../domain/board/cells.ts';

const SIDE = 13;
const STEP = SIDE + 4;
/** More than these are told by the number beside them. */
const MOST = 6;

type Mark = 'done' | 'begun' | 'asked' | 'may';

const square = (x: number): string => `M${x + 1} 1h${SIDE - 2}v${SIDE - 2}h${2 - SIDE}z`;
const lowerHalf = (x: number): string => `M${x + 1} ${SIDE - 1}h${SIDE - 2}L${x + 1} 1z`;

/** The outlines of all boxes of a mark, and what is full of them, as path data. */
function pathOf(boxes: readonly Mark[], which: (mark: Mark) => boolean, draw = square): string {
  return boxes.map((mark, n) => (which(mark) ? draw(n * STEP) : '')).join('');
}

/**
 * A row of boxes. Full: done. Half: begun. Empty: asked for. Dotted: may be done besides. As few
 * elements as can be, because a board has thousands of them.
 */
function Boxes({ boxes }: { boxes: readonly Mark[] }) {
  const width = Math.max(SIDE, boxes.length * STEP);
  const full = `${pathOf(boxes, (m) => m === 'done')}${pathOf(boxes, (m) => m === 'begun', lowerHalf)}`;
  const firm = pathOf(boxes, (mark) => mark !== 'may');
  const dotted = pathOf(boxes, (mark) => mark === 'may');
  return (
    <svg
      className="board-mark"
      width={width}
      height={SIDE}
      viewBox={`0 0 ${width} ${SIDE}`}
      fill="none"
      stroke="currentColor"
      aria-hidden="true"
    >
      {full !== '' && <path d={full} fill="currentColor" stroke="none" />}
      {firm !== '' && <path d={firm} strokeWidth="2" />}
      {dotted !== '' && <path d={dotted} strokeDasharray="2 2" />}
    </svg>
  );
}

/** The sessions of a week, one mark for each that was done, begun or wanted. */
export function boxesOf({
  done,
  sessions,
  wanted,
}: Pick<BoardCell, 'done' | 'sessions' | 'wanted'>): readonly Mark[] {
  const begun = Math.max(0, sessions.length - done);
  return Array.from({ length: Math.max(wanted.max, done + begun) }, (_, n) => {
    if (n < done) return 'done';
    if (n < done + begun) return 'begun';
    return n < wanted.min ? 'asked' : 'may';
  });
}

const UP = 'M8 1L14.5 13H1.5Z';
/**
 * A ring near the target, a full triangle up for harder, two for much harder, one down for easier;
 * a dash for nothing told, dots for not known.
 */
const SHAPE: Readonly<Record<CellLook, ReactNode>> = {
  'as-meant': <circle cx="8" cy="7" r="4.5" fill="none" stroke="currentColor" strokeWidth="2" />,
  harder: <path d={UP} fill="currentColor" />,
  'much-harder': <path d={`${UP}M14 1L20.5 13H11Z`} fill="currentColor" />,
  easier: <path d="M8 13L14.5 1H1.5Z" fill="currentColor" />,
  'not-rated': null,
  'none-told': <path d="M1 7H18" stroke="currentColor" strokeWidth="3" />,
  unknown: (
    <g fill="currentColor">
      <circle cx="3" cy="7" r="1.7" />
      <circle cx="9" cy="7" r="1.7" />
      <circle cx="15" cy="7" r="1.7" />
    </g>
  ),
  ahead: null,
};

const WIDTH: Partial<Record<CellLook, number>> = {
  'much-harder': 22,
  'none-told': 19,
  unknown: 18,
};

/** The shape of a look, for the eye alone: who draws it puts the words beside it. */
export function LookMark({ look }: { look: CellLook }) {
  const width = WIDTH[look] ?? 16;
  return (
    <svg
      className="board-mark"
      width={width}
      height="14"
      viewBox={`0 0 ${width} 14`}
      aria-hidden="true"
    >
      {SHAPE[look]}
    </svg>
  );
}

/** How felt effort stood to the target: a shape and points. */
export const GapMark = ({ gap }: { gap: number }) => (
  <span className="board-gap">
    <LookMark look={lookOfGap(gap)} />
    <b>{gapText(gap)}</b>
  </span>
);

type Flagged = Pick<BoardCell, 'cutShort' | 'niggles' | 'signs'>;

/** What stands out in a week, by word. */
export function Flags({ cutShort, niggles, signs }: Flagged) {
  if (cutShort + niggles + signs === 0) return null;
  return (
    <span className="board-flags">
      {signs > 0 && (
        <span className="board-flag sign">
          <svg width="13" height="12" viewBox="0 0 13 12" aria-hidden="true">
            <path d="M6.5 0L13 12H0Z" fill="currentColor" />
          </svg>
          {words.signs(signs)}
        </span>
      )}
      {niggles > 0 && <span className="board-flag niggle">{words.niggles(niggles)}</span>}
      {cutShort > 0 && <span className="board-flag">{words.cut(cutShort)}</span>}
    </span>
  );
}

/** A week of a person, in marks: for the eye alone, its words stand beside it. */
export function CellMarks({ cell }: { cell: BoardCell }) {
  if (cell.state === 'ahead') return null;
  if (cell.state !== 'heard') return <LookMark look={cell.state} />;
  return (
    <>
      <span className="board-done">
        {cell.done > 0 && <b>{cell.done}</b>}
        <Boxes boxes={boxesOf(cell).slice(0, MOST)} />
      </span>
      {cell.gap !== undefined && <GapMark gap={cell.gap} />}
      <Flags {...cell} />
    </>
  );
}

const LOOKS_SAID = ['as-meant', 'harder', 'much-harder', 'easier', 'none-told', 'unknown'] as const;

/** Everything that the marks of a cell mean, with their words. */
export function Legend() {
  return (
    <ul className="board-legend small">
      {(['done', 'begun', 'asked', 'may'] as const).map((mark) => (
        <li key={mark}>
          <Boxes boxes={[mark]} />
          {words.marks[mark]}
        </li>
      ))}
      <li>
        <span aria-hidden="true">{words.half(gapText(-1), gapText(1))}</span>
        {words.marks.half}
      </li>
      {LOOKS_SAID.map((look) => (
        <li key={look}>
          <LookMark look={look} />
          {LOOK[look]}
        </li>
      ))}
    </ul>
  );
}
