import { memo } from 'react';
import { Link } from 'wouter';
import { calledOf, cellWords } from '../../copy/board.ts';
import type { BoardCell, PersonRow } from '../../domain/board/board.ts';
import { personAt } from './addresses.ts';
import { CellMarks } from './BoardMarks.tsx';
import { PersonTags } from './BoardTable.tsx';
import type { DueBy, Section } from './board-rows.ts';
import { GroupWeekLines } from './GroupWeeks.tsx';
import { MoreRows, useMore } from './MoreRows.tsx';

interface ListProps {
  readonly programmeId: string;
  /** How many there will be; in a first picture `sections` are fewer. */
  readonly groups: number;
  readonly sections: readonly Section[];
  readonly due: DueBy;
  /** From 1. */
  readonly week: number;
}

/** One week of everybody, group below group: for a phone. */
export function BoardList({ sections, ...rest }: ListProps) {
  return sections.map((section) => (
    <GroupList key={section.group.id} section={section} {...rest} />
  ));
}

interface GroupProps extends Omit<ListProps, 'sections'> {
  readonly section: Section;
}

const GroupList = memo(function GroupList(props: GroupProps) {
  const { section, groups, programmeId, due, week } = props;
  const { group, rows } = section;
  const more = useMore(rows.length, groups);
  const known = group.weeks[week - 1];
  return (
    <section className="stack rule">
      <h2>{group.name}</h2>
      {known !== undefined && <GroupWeekLines week={known} />}
      <ul className="board-list">
        {rows.slice(0, more.shown).map((row) => (
          <Person
            key={row.person}
            row={row}
            cell={row.cells[week - 1]}
            href={personAt(programmeId, row.person)}
            isDue={due.has(row.person)}
          />
        ))}
      </ul>
      {more.left > 0 && (
        <div>
          <MoreRows more={more} group={group.name} />
        </div>
      )}
    </section>
  );
});

interface PersonProps {
  readonly row: PersonRow;
  readonly cell: BoardCell | undefined;
  readonly href: string;
  readonly isDue: boolean;
}

const Person = memo(function Person({ row, cell, href, isDue }: PersonProps) {
  return (
    <li>
      <span className="board-who">
        <Link href={href}>{calledOf(row)}</Link>
        <PersonTags row={row} isDue={isDue} />
      </span>
      {cell !== undefined && (
        <>
          <span className="board-marks" aria-hidden="true">
            <CellMarks cell={cell} />
          </span>
          <span className="small board-said">{cellWords(cell)}</span>
        </>
      )}
    </li>
  );
});
