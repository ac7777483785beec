import { type RefObject, useEffect, useRef } from 'react';
import { Link, useLocation, useParams } from 'wouter';
import type { OpenSheet } from '../../app/workshop-contract.ts';
import { boards } from '../../copy/board-page.ts';
import { shelf, desk as words } from '../../copy/workshop.ts';
import { LIMITS } from '../../domain/programme/shape.ts';
import { fileOf } from '../../domain/workshop/file.ts';
import type { Sheet } from '../../domain/workshop/sheet.ts';
import { boardAt } from '../board/addresses.ts';
import { useBoardsAhead } from '../board/read-ahead.ts';
import { NotHere } from '../parts/NotHere.tsx';
import { Screen } from '../parts/Screen.tsx';
import { deskAt, leadDayAt, pageAt, placeAt, shelfAt } from './addresses.ts';
import { CellPanel } from './CellPanel.tsx';
import { ChecksPanel } from './ChecksPanel.tsx';
import { Refused } from './Refused.tsx';
import { SheetTable } from './SheetTable.tsx';
import { Redo, Undo } from './UndoRedo.tsx';
import { saveText } from './use-begin.ts';
import { useOutlineChecks } from './use-checks.ts';
import { useSent, useStandings } from './use-sent.ts';
import { WeekPanel } from './WeekPanel.tsx';
import { useEdit, useSheet, useWorkshopStore } from './workshop-context.tsx';

/**
 * The table of weeks by groups. Beside it (on a phone: in its place) stands what the address
 * names: a session, a week, or else the checks.
 */
export function Desk() {
  const { key = '', week, group, session } = useParams();
  const open = useSheet(key);
  const panel = useRef<HTMLDivElement>(null);
  useFocus(panel, week === undefined);
  if (open === undefined) return null;
  const { sheet } = open;
  const title = sheet.title.trim() || words.untitled;
  const cell = group === undefined ? undefined : placeAt(week, group, session);
  const weekNumber = group === undefined && week !== undefined ? Number(week) - 1 : undefined;
  const isMissing =
    (cell !== undefined && open.readings[cell.week]?.[cell.group]?.[cell.session] === undefined) ||
    (weekNumber !== undefined && sheet.weeks[weekNumber] === undefined);
  if (isMissing) return <NotHere />;
  const isAtTable = cell === undefined && weekNumber === undefined;
  return (
    <Screen
      title={title}
      sub={shelf.size(sheet.weeks.length, sheet.groups.length)}
      back={
        isAtTable ? { href: shelfAt, name: shelf.backTo } : { href: deskAt(key), name: words.back }
      }
      foot={
        isAtTable && (
          <Link href={pageAt(key, 'send')} className="button primary wide">
            {words.send}
          </Link>
        )
      }
    >
      <Refused />
      <div className={isAtTable ? 'desk' : 'desk one'}>
        <div className="desk-table stack">
          <Tools open={open} />
          <Midway sheet={sheet} />
          <Table open={open} at={cell} week={weekNumber} />
          <AddWeek weeks={sheet.weeks.length} />
        </div>
        <div className="desk-panel stack" ref={panel}>
          {cell !== undefined && <CellPanel open={open} at={cell} />}
          {weekNumber !== undefined && <WeekPanel key={weekNumber} open={open} week={weekNumber} />}
          {isAtTable ? (
            <ChecksPanel open={open} />
          ) : (
            <div className="row tools desk-narrow">
              <Undo />
              <Redo />
            </div>
          )}
        </div>
      </div>
    </Screen>
  );
}

/** The focus follows the address: to what was opened, and back to where it was opened from. */
function useFocus(panel: RefObject<HTMLDivElement | null>, isAtTable: boolean): void {
  const [address] = useLocation();
  const last = useRef<string>(undefined);
  useEffect(() => {
    if (!isAtTable) {
      last.current = address;
      panel.current?.querySelector('h2')?.focus();
    } else if (last.current !== undefined) {
      document.querySelector<HTMLElement>(`a[href="#${last.current}"]`)?.focus();
      last.current = undefined;
    }
  }, [panel, address, isAtTable]);
}

function Table(props: Omit<Parameters<typeof SheetTable>[0], 'warnings' | 'standings'>) {
  const warnings = useOutlineChecks(props.open.outline);
  const standings = useStandings(props.open.sheet);
  return <SheetTable {...props} warnings={warnings} standings={standings} />;
}

function Tools({ open }: { open: OpenSheet }) {
  const { key, saved, problem, sheet } = open;
  const store = useWorkshopStore();
  const sent = useSent(sheet);
  useBoardsAhead();
  const save = () => {
    const file = store.getState().file();
    const name = `${sheet.id}.json`;
    saveText(name, file.ok ? file.value.text : fileOf(sheet));
  };
  return (
    <>
      <div className="row tools">
        <Undo />
        <Redo />
        <Link href={pageAt(key, 'details')} className="button">
          {words.details}
        </Link>
        <Link href={pageAt(key, 'draft')} className="button">
          {words.draft}
        </Link>
        <Link href={leadDayAt(key)} className="button">
          {words.lead}
        </Link>
        <Link href={pageAt(key, 'paper')} className="button">
          {words.paper}
        </Link>
        <button type="button" className="button" onClick={save}>
          {words.saveFile}
        </button>
        {sent !== undefined && (
          <Link href={boardAt(sheet.id)} className="button">
            {boards.one}
          </Link>
        )}
      </div>
      <p role="status" className="small soft">
        {problem !== undefined ? '' : saved ? words.kept : words.keeping}
      </p>
      {problem !== undefined && (
        <p role="alert" className="notice">
          {words.notKept}
        </p>
      )}
    </>
  );
}

/** One more at the end; it begins as a copy of the last. */
function AddWeek({ weeks }: { weeks: number }) {
  const edit = useEdit();
  return (
    <div>
      <button
        type="button"
        className="button"
        disabled={weeks >= LIMITS.weeks}
        onClick={() => edit({ kind: 'add-week', at: weeks })}
      >
        {words.addWeek}
      </button>
    </div>
  );
}

/** Once something is out, editing is about the weeks to come. */
function Midway({ sheet }: { sheet: Sheet }) {
  const sent = useSent(sheet);
  return sent === undefined ? null : <p className="small">{words.midway(sent.revision)}</p>;
}
