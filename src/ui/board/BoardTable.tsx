import { type CSSProperties, memo, type ReactNode, useEffect, useRef } from 'react';
import { Link } from 'wouter';
import { calledOf, cellWords, gapText, groupWeekSentences } from '../../copy/board.ts';
import { boardPage as words } from '../../copy/board-page.ts';
import type { Board, BoardCell, GroupWeek, PersonRow } from '../../domain/board/board.ts';
import { personAt } from './addresses.ts';
import { CellMarks, Flags, GapMark } from './BoardMarks.tsx';
import type { DueBy, Section } from './board-rows.ts';
import { MoreRows, useMore } from './MoreRows.tsx';

interface TableProps {
  readonly programmeId: string;
  readonly board: Board;
  /** How many there will be; in a first picture `sections` are fewer. */
  readonly groups: number;
  readonly sections: readonly Section[];
  readonly due: DueBy;
  /** The week that is looked at, from 1. */
  readonly week: number;
  /** In a first picture: the marks of that week alone. Those of the others follow right behind. */
  readonly isFirst: boolean;
}

/** Everybody by weeks, group below group: for a desk. Scrolls in itself, so that the weeks stay in sight. */
export function BoardTable(props: TableProps) {
  const { programmeId, board, groups, sections, due, week, isFirst } = props;
  const weeks = board.groups[0]?.weeks ?? [];
  const scroll = useWeekInSight(week);
  const columns = { '--weeks': weeks.length } as CSSProperties;
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls is scrolled by the keyboard too
    <section ref={scroll} className="board-scroll" aria-label={words.scroll} tabIndex={0}>
      <table className="board-table figures" style={columns}>
        <caption className="for-readers">{words.table}</caption>
        <thead>
          <tr>
            <th scope="col" className="board-name">
              {words.person}
            </th>
            {weeks.map((each) => (
              <th scope="col" key={each.week} data-now={each.week === week}>
                {words.weekHead(each.week)}
                {each.week === board.week && <span className="board-now">{words.now}</span>}
              </th>
            ))}
          </tr>
        </thead>
        {sections.map((section) => (
          <GroupRows
            key={section.group.id}
            section={section}
            groups={groups}
            programmeId={programmeId}
            due={due}
            week={week}
            isFirst={isFirst}
            now={board.week}
          />
        ))}
      </table>
    </section>
  );
}

/** Where not all weeks fit, the one that is looked at is there. */
function useWeekInSight(week: number) {
  const scroll = useRef<HTMLElement>(null);
  useEffect(() => {
    const frame = scroll.current;
    const head = frame?.querySelectorAll<HTMLElement>('thead th')[week];
    if (!frame || !head) return;
    const end = head.offsetLeft + head.offsetWidth;
    if (end > frame.scrollLeft + frame.clientWidth) frame.scrollLeft = end - frame.clientWidth;
    // The names lie over what is left of the first week in sight.
    const names = frame.querySelector<HTMLElement>('thead th')?.offsetWidth ?? 0;
    if (head.offsetLeft - names < frame.scrollLeft) frame.scrollLeft = head.offsetLeft - names;
  }, [week]);
  return scroll;
}

interface GroupProps extends Omit<TableProps, 'board' | 'sections'> {
  readonly section: Section;
  readonly now: number;
}

const GroupRows = memo(function GroupRows(props: GroupProps) {
  const { section, groups, programmeId, due, week, isFirst, now } = props;
  const { group, rows } = section;
  const more = useMore(rows.length, groups);
  return (
    <tbody>
      <tr className="board-group">
        <th scope="rowgroup" className="board-name">
          <span className="big">{group.name}</span>
          <span className="small">{words.groupHelp}</span>
        </th>
        {group.weeks.map((each) => (
          <td key={each.week} data-now={each.week === week}>
            {each.week <= now && (!isFirst || each.week === week) && <Together week={each} />}
          </td>
        ))}
      </tr>
      {rows.slice(0, more.shown).map((row) => (
        <Row
          key={row.person}
          row={row}
          href={personAt(programmeId, row.person)}
          isDue={due.has(row.person)}
          week={week}
          isFirst={isFirst}
        />
      ))}
      {more.left > 0 && (
        <tr>
          <td className="board-more" colSpan={group.weeks.length + 1}>
            <MoreRows more={more} group={group.name} />
          </td>
        </tr>
      )}
      <tr className="board-silent">
        <th scope="row" className="board-name">
          {words.noReply}
        </th>
        {group.weeks.map(({ week: n, of, heard }) => (
          <td key={n} data-now={n === week}>
            {n <= now && of > heard && of - heard}
          </td>
        ))}
      </tr>
    </tbody>
  );
});

const Together = memo(function Together({ week }: { week: GroupWeek }) {
  return (
    <Named says={groupWeekSentences(week).join(' ')}>
      {week.of > 0 && <span>{words.of(week.heard, week.of)}</span>}
      {week.gap !== undefined && (
        <span>
          <GapMark gap={week.gap.median} />
        </span>
      )}
      {week.gap !== undefined && week.gap.lower !== week.gap.upper && (
        <span className="small">
          {words.half(gapText(week.gap.lower), gapText(week.gap.upper))}
        </span>
      )}
      <Flags {...week} />
    </Named>
  );
});

interface RowProps {
  readonly row: PersonRow;
  readonly href: string;
  readonly isDue: boolean;
  readonly week: number;
  readonly isFirst: boolean;
}

const Row = memo(function Row({ row, href, isDue, week, isFirst }: RowProps) {
  return (
    <tr>
      <th scope="row" className="board-name">
        <Link href={href}>{calledOf(row)}</Link>
        <PersonTags row={row} isDue={isDue} />
      </th>
      {row.cells.map((cell) => (
        <td key={cell.week} data-now={cell.week === week}>
          {(!isFirst || cell.week === week) && <Cell cell={cell} />}
        </td>
      ))}
    </tr>
  );
});

/** Beside a name: that they need a word, or are there only because the leader wrote them in. */
export function PersonTags({ row, isDue }: { row: PersonRow; isDue: boolean }) {
  return (
    <>
      {isDue && <span className="tag board-due">{words.needsWord}</span>}
      {row.byHand && <span className="small soft">{words.byHand}</span>}
    </>
  );
}

const Cell = memo(function Cell({ cell }: { cell: BoardCell }) {
  return (
    <Named says={cellWords(cell)}>
      <CellMarks cell={cell} />
    </Named>
  );
});

/**
 * Marks for the eye with their words for the ear: one picture with a name. The same words as
 * hidden text were a third of the time that a board of twelve weeks took to appear.
 */
const Named = ({ says, children }: { says: string; children: ReactNode }) => (
  <span role="img" aria-label={says} className="board-cell">
    {children}
  </span>
);
