import { harmless, toCsv } from '../exchange/csv.ts';
import type { BoardInput, BoardSession } from './board.ts';
import { boardOf } from './board-of.ts';
import { everybodyIn } from './row.ts';

interface Line {
  readonly name: string;
  readonly group: string;
  readonly session: BoardSession;
}

type Cell = (line: Line) => string | number | boolean | undefined;

/** In this order for ever; a new column comes last, so that nobody's sums move. */
const COLUMNS: readonly (readonly [name: string, cell: Cell])[] = [
  ['person', ({ name }) => harmless(name)],
  ['group', ({ group }) => harmless(group)],
  ['date', ({ session }) => session.localDate],
  ['week', ({ session }) => session.week],
  ['session', ({ session }) => session.session],
  ['session_group', ({ session }) => harmless(session.group)],
  ['there', ({ session }) => session.there],
  ['told', ({ session }) => session.id !== undefined],
  ['done_percent', ({ session }) => session.donePercent],
  ['active_seconds', ({ session }) => session.activeSeconds],
  ['cut_short', ({ session }) => session.cutShort],
  ['target_effort', ({ session }) => session.target],
  ['effort', ({ session }) => session.felt],
  ['niggle', ({ session }) => session.niggle?.place],
  ['niggle_side', ({ session }) => session.niggle?.side],
  ['niggle_severity', ({ session }) => session.niggle?.severity],
  ['warning_sign', ({ session }) => session.sign],
  ['note', ({ session }) => harmless(session.note ?? '')],
];

/** The table's head, in order. */
export const BOARD_COLUMNS: readonly string[] = COLUMNS.map(([name]) => name);

const cellText = (value: ReturnType<Cell>): string => {
  if (value === undefined) return '';
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  return String(value);
};

/** As of the log's table: spreadsheets take a file without it for one in the country's letters. */
const BYTE_ORDER_MARK = '\ufeff';

/**
 * A board as a table for a spreadsheet: one row for each session that is known, people in the order
 * of the board, each person's sessions in the order of time. Never read back. Secrets are not in it.
 *
 * @param called how a person is called who may have no name
 */
export function boardTable(
  input: BoardInput,
  called: (person: { readonly person: string; readonly name?: string }) => string,
): string {
  const seen = new Map(everybodyIn(input).people.map((each) => [each.row.person, each]));
  const names = new Map(boardOf(input).groups.map(({ id, name }) => [id, name]));
  const nameOf = (group: string): string => names.get(group) ?? group;
  const lines = boardOf(input).people.flatMap((row): readonly Line[] =>
    (seen.get(row.person)?.record.sessions ?? []).map((session) => ({
      name: called(row),
      group: nameOf(row.group),
      session: { ...session, group: nameOf(session.group) },
    })),
  );
  return (
    BYTE_ORDER_MARK +
    toCsv([BOARD_COLUMNS, ...lines.map((line) => COLUMNS.map(([, cell]) => cellText(cell(line))))])
  );
}
