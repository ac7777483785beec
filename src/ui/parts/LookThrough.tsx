import { lead } from '../../copy/lead.ts';
import { minutes } from '../../copy/times.ts';
import { programmeWarning } from '../../copy/warning.ts';
import { sourceOf } from '../../copy/warning-sources.ts';
import { weeks } from '../../copy/weeks.ts';
import { stripInWords } from '../../copy/words.ts';
import type { Group, Programme } from '../../domain/programme/programme.ts';
import { reviewOutline } from '../../domain/review/review.ts';
import type { ProgrammeWarning } from '../../domain/review/warning.ts';
import { lengthOfPart } from '../../domain/timeline/totals.ts';
import { longestSession, timelineOf } from './plans.ts';
import { Screen } from './Screen.tsx';
import { Strip } from './Strip.tsx';

interface Place {
  readonly week: number;
  /** Empty when it is about the week itself. */
  readonly group: string;
  /** From 1; 0 when it is about all of the week's sessions. */
  readonly session: number;
}

/** Where a warning is, from a path such as `weeks[1].sessions.wren[0]` or `weeks[1].effort`. */
export function placeOfWarning(path: string): Place | undefined {
  const found =
    /^weeks\[(\d+)\](?:\.sessions(?:\.([\w-]+)|\["([^"]+)"\])(?:\[(\d+)\])?|\.effort)?$/.exec(path);
  if (found === null) return undefined;
  const [, week, plain, quoted, session] = found;
  return {
    week: Number(week) + 1,
    group: plain ?? quoted ?? '',
    session: session === undefined ? 0 : Number(session) + 1,
  };
}

interface LookProps {
  readonly programme: Programme;
  readonly onSend: () => void;
  readonly onOther: () => void;
}

/** The leader's programme as it will be walked and run, and what may deserve another look. */
export function LookThrough({ programme, onSend, onOther }: LookProps) {
  const warnings = reviewOutline(programme);
  return (
    <Screen
      title={programme.title}
      sub={programme.leader.name}
      back={{ href: '/lead', name: lead.title, onGo: onOther }}
      foot={
        <button type="button" className="button primary wide" onClick={onSend}>
          {lead.toSend}
        </button>
      }
    >
      <Warnings programme={programme} warnings={warnings} />
      <ol className="lines lead-weeks">
        {programme.weeks.map((week, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a week is its number
          <li key={i} className="stack">
            <h2>{lead.week(i + 1, week.focus)}</h2>
            <Here warnings={warnings} week={i + 1} group="" />
            <ul className="lead-groups">
              {programme.groups.map((group) => (
                <li key={group.id}>
                  <Cell programme={programme} group={group} week={i + 1} warnings={warnings} />
                </li>
              ))}
            </ul>
          </li>
        ))}
      </ol>
      <div>
        <button type="button" className="text-button" onClick={onOther}>
          {lead.other}
        </button>
      </div>
    </Screen>
  );
}

interface Checked {
  readonly programme: Programme;
  readonly warnings: readonly ProgrammeWarning[];
}

function Warnings({ programme, warnings }: Checked) {
  if (warnings.length === 0) return <p>{lead.noLooks}</p>;
  return (
    <details>
      <summary>
        {lead.looksTitle}: {warnings.length}
      </summary>
      <p>{lead.looksBody}</p>
      <ul className="bullets">
        {warnings.map((warning) => (
          <li key={`${warning.path} ${warning.code}`}>
            <strong>{placeSaid(programme, warning.path)}</strong>. {programmeWarning(warning)}
          </li>
        ))}
      </ul>
      <h3>{lead.sourcesTitle}</h3>
      <ul className="bullets small">
        {[...new Set(warnings.map(({ code }) => sourceOf(code)))].map((source) => (
          <li key={source}>{source}</li>
        ))}
      </ul>
    </details>
  );
}

function placeSaid(programme: Programme, path: string): string {
  const place = placeOfWarning(path);
  if (place === undefined) return path;
  const group = programme.groups.find(({ id }) => id === place.group)?.name ?? place.group;
  return lead.place(place.week, group, place.session);
}

function Cell({ programme, group, week, warnings }: Checked & { group: Group; week: number }) {
  const sessions = programme.weeks[week - 1]?.sessions[group.id] ?? [];
  const longest = longestSession(programme, group.id);
  return (
    <div className="stack tight">
      <h3>{group.name}</h3>
      {sessions.map(({ plan }, n) => {
        const timeline = timelineOf(plan);
        return (
          // biome-ignore lint/suspicious/noArrayIndexKey: a session of a week is its number
          <div key={n} className="stack tight">
            <Strip timeline={timeline} height={44} of={longest} label={stripInWords(plan)} />
            <p className="small figures">
              {sessions.length > 1 && lead.session(n + 1)}
              {weeks.totals(minutes(timeline.total), minutes(lengthOfPart(timeline, 'main')))}
            </p>
          </div>
        );
      })}
      <Here warnings={warnings} week={week} group={group.id} />
    </div>
  );
}

interface HereProps {
  readonly warnings: readonly ProgrammeWarning[];
  readonly week: number;
  /** Empty for the week itself. */
  readonly group: string;
}

function Here({ warnings, week, group }: HereProps) {
  const here = warnings.filter(({ path }) => {
    const place = placeOfWarning(path);
    return place?.week === week && place.group === group;
  });
  if (here.length === 0) return null;
  return (
    <ul className="bullets small">
      {here.map((warning) => (
        <li key={`${warning.path} ${warning.code}`}>{programmeWarning(warning)}</li>
      ))}
    </ul>
  );
}
