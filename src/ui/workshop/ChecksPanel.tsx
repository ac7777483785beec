import { Link } from 'wouter';
import type { OpenSheet } from '../../app/workshop-contract.ts';
import { programmeWarning } from '../../copy/warning.ts';
import { sourceOf } from '../../copy/warning-sources.ts';
import { desk, checks as words } from '../../copy/workshop.ts';
import type { ProgrammeWarning } from '../../domain/review/warning.ts';
import type { CellPlace } from '../../domain/workshop/sheet.ts';
import { cellAt, weekAt } from './addresses.ts';
import { useOutlineChecks } from './use-checks.ts';
import { placeInSheet } from './warning-place.ts';

/** The whole list, each with its place, its reason, and where its number comes from. */
export function ChecksPanel({ open }: { open: OpenSheet }) {
  const warnings = useOutlineChecks(open.outline);
  const missing = open.readings
    .flatMap((week) => Object.values(week).flat())
    .filter(({ problems }) => problems.length > 0).length;
  return (
    <section className="stack" aria-labelledby="checks">
      <h2 id="checks">{warnings.length === 0 ? words.title : words.count(warnings.length)}</h2>
      {missing > 0 && <p>{words.missing(missing)}</p>}
      {warnings.length === 0 && missing === 0 && <p>{words.none}</p>}
      {warnings.length > 0 && <p className="soft">{words.body}</p>}
      {warnings.length > 0 && (
        <ul className="stack">
          {warnings.map((warning) => (
            <li key={`${warning.path} ${warning.code}`} className="check">
              <Warning warning={warning} open={open} />
            </li>
          ))}
        </ul>
      )}
    </section>
  );
}

function Warning({ warning, open }: { warning: ProgrammeWarning; open: OpenSheet }) {
  const { week, group, session } = placeInSheet(open, warning.path);
  const said =
    week === undefined
      ? ''
      : group === undefined
        ? desk.week(week + 1)
        : desk.cell(
            week + 1,
            nameOf(open, group),
            (session ?? 0) + 1,
            session === undefined ? 1 : 2,
          );
  const href =
    week === undefined
      ? undefined
      : group === undefined
        ? weekAt(open.key, week)
        : cellAt(open.key, { week, group, session: session ?? 0 });
  return (
    <div className="stack tight">
      {href !== undefined && (
        <Link href={href} className="text-button">
          {said}
        </Link>
      )}
      <p>{programmeWarning(warning)}</p>
      <Source warning={warning} />
    </div>
  );
}

const nameOf = ({ sheet }: OpenSheet, id: string): string =>
  sheet.groups.find((group) => group.id === id)?.name ?? id;

function Source({ warning }: { warning: ProgrammeWarning }) {
  return (
    <details className="small">
      <summary>{words.why}</summary>
      <p>{sourceOf(warning.code)}</p>
    </details>
  );
}

/** The checks about one session, where it is written. */
export function ChecksHere({ open, at }: { open: OpenSheet; at: CellPlace }) {
  const warnings = useOutlineChecks(open.outline).filter(({ path }) => {
    const { week, group, session } = placeInSheet(open, path);
    return week === at.week && group === at.group && (session ?? at.session) === at.session;
  });
  if (warnings.length === 0) return null;
  return (
    <section className="stack tight rule">
      <h3>{words.here}</h3>
      {warnings.map((warning) => (
        <div key={`${warning.path} ${warning.code}`} className="check">
          <p>{programmeWarning(warning)}</p>
          <Source warning={warning} />
        </div>
      ))}
    </section>
  );
}
