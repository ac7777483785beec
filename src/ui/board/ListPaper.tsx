import { attendance } from '../../copy/attendance.ts';
import { calledOf } from '../../copy/board.ts';
import { day } from '../../copy/times.ts';
import type { Programme } from '../../domain/programme/programme.ts';
import type { Which } from './list-day.ts';
import type { Marks } from './list-marks.ts';
import type { ListedGroup } from './list-people.ts';

const words = attendance.paper;

interface PaperProps {
  readonly programme: Programme;
  readonly date: string;
  readonly which: Which;
  readonly groups: readonly ListedGroup[];
  readonly marks: Marks;
}

/** Lines that fit on one page beside the groups' names. */
const LINES = 50;

/**
 * Empty lines of a group: for those who are said to be in it and are not known by name, and as many
 * as the page has room for, within reason.
 */
function emptyLines(group: ListedGroup, groups: readonly ListedGroup[]): number {
  const known = groups.reduce((sum, { people }) => sum + people.length, 0);
  const room = Math.floor((LINES - known) / groups.length);
  return Math.min(12, Math.max(2, Math.min(6, room), group.of - group.people.length));
}

/** The list on A4, in two columns, and nothing else of the page. Only printed. */
export function ListPaper({ programme, date, which, groups, marks }: PaperProps) {
  const { title, leader } = programme;
  const facts = [day(date), words.what(which.week, which.session), words.with(leader.name)];
  return (
    <section className="attendance-paper" aria-label={attendance.title}>
      <div className="attendance-title">
        <h2>{title}</h2>
        <p>
          {words.there} <span className="attendance-line" />
        </p>
      </div>
      <p className="attendance-facts">{facts.filter((fact) => fact !== '').join(' · ')}</p>
      <p className="attendance-care">{words.unwell}</p>
      <p className="attendance-care">{words.care}</p>
      <div className="attendance-columns">
        {groups.map((group) => (
          <div key={group.id} className="attendance-block">
            <h3>{words.count(group.name, group.people.length)}</h3>
            <ul>
              {group.people.map((who) => (
                <li key={who.person}>
                  <Box isTicked={marks.isThere(who)} />
                  <span>{calledOf(who)}</span>
                </li>
              ))}
              {Array.from({ length: emptyLines(group, groups) }, (_, n) => (
                // biome-ignore lint/suspicious/noArrayIndexKey: empty lines are all alike
                <li key={`empty ${n}`}>
                  <Box isTicked={false} />
                  <span className="attendance-line" />
                </li>
              ))}
            </ul>
          </div>
        ))}
      </div>
    </section>
  );
}

const Box = ({ isTicked }: { isTicked: boolean }) => (
  <svg viewBox="0 0 20 20" aria-hidden="true" className="attendance-box" data-ticked={isTicked}>
    <rect x="1" y="1" width="18" height="18" fill="none" stroke="currentColor" strokeWidth="1.5" />
    {isTicked && (
      <path d="M4.5 10.5 8.5 15 16 5" fill="none" stroke="currentColor" strokeWidth="2.5" />
    )}
  </svg>
);
