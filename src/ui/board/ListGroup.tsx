import { useId } from 'react';
import { attendance as words } from '../../copy/attendance.ts';
import { calledOf } from '../../copy/board.ts';
import type { Marks } from './list-marks.ts';
import type { Listed, ListedGroup } from './list-people.ts';

interface GroupProps {
  /** With the people who are shown. */
  readonly group: ListedGroup;
  /** With everybody, to be counted. */
  readonly whole: ListedGroup | undefined;
  readonly marks: Marks;
}

/** One group with its people and how many of them are there. */
export function ListGroup({ group, whole = group, marks }: GroupProps) {
  const id = useId();
  const there = whole.people.filter(marks.isThere).length;
  return (
    <section className="stack tight" aria-labelledby={id}>
      <div className="attendance-head">
        <h2 id={id}>{group.isGone ? words.gone(group.name) : group.name}</h2>
        <p className="figures">{words.thereOf(there, whole.of)}</p>
      </div>
      <ul className="attendance">
        {group.people.map((who) => (
          <Row key={who.person} who={who} marks={marks} />
        ))}
      </ul>
    </section>
  );
}

/** The whole row is the target: a thumb in a glove finds it. */
function Row({ who, marks }: { who: Listed; marks: Marks }) {
  return (
    <li>
      <label className="attendance-row">
        <input
          type="checkbox"
          checked={marks.isThere(who)}
          onChange={(event) => marks.tick(who, event.target.checked)}
        />
        <span>{calledOf(who)}</span>
      </label>
    </li>
  );
}
