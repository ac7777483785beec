// biome-ignore-all lint/a11y/useSemanticElements: a table's own elements cannot become a list on a phone and stay a table
// biome-ignore-all lint/a11y/useFocusableInteractive: cells are read, the links in them have the focus
import { memo } from 'react';
import { Link } from 'wouter';
import type { OpenSheet, Reading } from '../../app/workshop-contract.ts';
import { minutes } from '../../copy/times.ts';
import { weekDates } from '../../copy/week-dates.ts';
import { stripInWords } from '../../copy/words.ts';
import { desk as words } from '../../copy/workshop.ts';
import { dayOf } from '../../domain/programme/dates.ts';
import type { ProgrammeWarning } from '../../domain/review/warning.ts';
import { lengthOfPart } from '../../domain/timeline/totals.ts';
import { type Ms, ms } from '../../domain/units.ts';
import type { Cell, CellPlace, SheetWeek } from '../../domain/workshop/sheet.ts';
import { EffortLine } from '../parts/EffortLine.tsx';
import { Strip } from '../parts/Strip.tsx';
import { cellAt, weekAt } from './addresses.ts';
import { type PathPlace, placeInSheet } from './warning-place.ts';

interface TableProps {
  readonly open: OpenSheet;
  readonly warnings: readonly ProgrammeWarning[];
  /** What to say of each week: whether it was sent as it is, whether it is over. */
  readonly standings: readonly string[];
  /** What stands open beside the table. */
  readonly at: CellPlace | undefined;
  readonly week: number | undefined;
}

/** Weeks by groups: a table on a desk, one week under another on a phone. */
export function SheetTable({ open, warnings, standings, at, week: openWeek }: TableProps) {
  const { key, sheet, readings } = open;
  const longest = longestOf(open);
  const notes = warnings.map(({ path }) => placeInSheet(open, path));
  const monday = sheet.startDate === undefined ? undefined : dayOf(sheet.startDate);
  const columns = { '--groups': sheet.groups.length } as React.CSSProperties;
  return (
    <div role="table" aria-label={words.table} className="plan-table" style={columns}>
      <div role="row" className="plan-row plan-head">
        <span role="columnheader">{words.weekColumn}</span>
        {sheet.groups.map((group) => (
          <span role="columnheader" key={group.id}>
            {group.name}
          </span>
        ))}
      </div>
      {sheet.weeks.map((week, w) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a week is its number
        <div role="row" className="plan-row" key={w}>
          <div role="rowheader">
            <WeekHead
              href={weekAt(key, w)}
              week={week}
              number={w + 1}
              dates={monday === undefined ? '' : weekDates(monday + 7 * w)}
              standing={standings[w] ?? ''}
              isOpen={openWeek === w}
            />
          </div>
          {sheet.groups.map((group) => (
            <div role="cell" key={group.id} className="plan-cell">
              <p className="plan-group" aria-hidden="true">
                {group.name}
              </p>
              {(week.sessions[group.id] ?? []).map((cell, s) => {
                const place = { week: w, group: group.id, session: s };
                return (
                  <CellLink
                    // biome-ignore lint/suspicious/noArrayIndexKey: a session of a week is its number
                    key={s}
                    href={cellAt(key, place)}
                    cell={cell}
                    reading={readings[w]?.[group.id]?.[s]}
                    longest={longest}
                    name={words.cell(
                      w + 1,
                      group.name,
                      s + 1,
                      week.sessions[group.id]?.length ?? 1,
                    )}
                    notes={notesAt(notes, place)}
                    isOpen={isSame(at, place)}
                  />
                );
              })}
            </div>
          ))}
        </div>
      ))}
    </div>
  );
}

const isSame = (at: CellPlace | undefined, place: CellPlace): boolean =>
  at?.week === place.week && at.group === place.group && at.session === place.session;

/** Warnings about this session, or about all of the week's sessions of its group. */
function notesAt(places: readonly PathPlace[], place: CellPlace): number {
  return places.filter(({ week, group, session }) => {
    return (
      week === place.week && group === place.group && (session ?? place.session) === place.session
    );
  }).length;
}

/** The measure of all strips, so that lengths can be compared across the table. */
const longestOf = ({ readings }: OpenSheet): Ms =>
  ms(
    readings.reduce(
      (most, week) =>
        Object.values(week)
          .flat()
          .reduce((so, { timeline }) => Math.max(so, timeline?.total ?? 0), most),
      1,
    ),
  );

interface WeekHeadProps {
  readonly href: string;
  readonly week: SheetWeek;
  readonly number: number;
  readonly dates: string;
  readonly standing: string;
  readonly isOpen: boolean;
}

const WeekHead = memo(function WeekHead(props: WeekHeadProps) {
  const { href, week, number, dates, standing, isOpen } = props;
  const { min, max } = week.timesPerWeek;
  return (
    <Link href={href} className="week-link" aria-current={isOpen ? 'true' : undefined}>
      <b className="big">{words.week(number)}</b>
      {dates !== '' && <span className="small figures">{dates}</span>}
      <span className="small">{week.focus || words.noFocus}</span>
      <span className="small soft">
        <EffortLine target={week.effort} />. {words.times(min, max)}
        {week.together === undefined ? '' : `, ${words.together(week.together)}`}
      </span>
      {standing !== '' && <span className="small standing">{standing}</span>}
    </Link>
  );
});

interface CellLinkProps {
  readonly href: string;
  readonly cell: Cell;
  readonly reading: Reading | undefined;
  readonly longest: Ms;
  readonly name: string;
  readonly notes: number;
  readonly isOpen: boolean;
}

/** One session in the table. Drawn again only when it says something else. */
const CellLink = memo(function CellLink(props: CellLinkProps) {
  const { href, cell, reading, longest, name, notes, isOpen } = props;
  const { plan, timeline, problems = [] } = reading ?? {};
  const isEmpty = cell.text.trim() === '';
  return (
    <Link href={href} className="cell-link" aria-current={isOpen ? 'true' : undefined}>
      <span className="for-readers">{name}. </span>
      {timeline !== undefined && plan !== undefined && (
        <>
          <Strip timeline={timeline} height={40} of={longest} label={stripInWords(plan)} />
          <span className="small figures">
            <b>{minutes(timeline.total)}</b>{' '}
            <span>{words.main(minutes(lengthOfPart(timeline, 'main')))}</span>
          </span>
        </>
      )}
      <span className="cell-tags">
        {isEmpty && <span className="small soft">{words.empty}</span>}
        {!isEmpty && problems.length > 0 && <span className="tag">{words.broken}</span>}
        {cell.pinned && <span className="tag plain">{words.pinned}</span>}
        {notes > 0 && <span className="small soft">{words.notes(notes)}</span>}
      </span>
    </Link>
  );
});
