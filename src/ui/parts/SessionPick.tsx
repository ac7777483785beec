import type { ReactNode } from 'react';
import type { Choice } from '../../app/session-contract.ts';
import { byHand } from '../../copy/by-hand.ts';
import { minutes } from '../../copy/times.ts';
import type { Programme } from '../../domain/programme/programme.ts';
import { useProgrammes } from '../app-context.tsx';
import { Field } from './Field.tsx';
import { sessionsOf, timelineOf } from './plans.ts';

interface SessionPickProps {
  readonly value: Choice;
  readonly onChange: (value: Choice) => void;
}

/** Which session it was: programme, group, week, session. What has only one answer is not asked. */
export function SessionPick({ value, onChange }: SessionPickProps) {
  const programmes = useProgrammes((p) => p.programmes);
  const chosen = useProgrammes((p) => p.chosen);
  const programme = programmes.find(({ id }) => id === value.programmeId);
  if (programme === undefined) return null;
  const sessions = sessionsOf(programme, value.groupId, value.week);
  const ofProgramme = (id: string) => {
    const other = programmes.find((each) => each.id === id);
    if (other !== undefined) onChange(firstChoice(other, chosen[id] ?? other.groups[0]?.id ?? ''));
  };
  return (
    <div className="fields">
      {programmes.length > 1 && (
        <Pick name={byHand.programme} value={value.programmeId} onChange={ofProgramme}>
          {programmes.map(({ id, title }) => option(id, title))}
        </Pick>
      )}
      <Pick
        name={byHand.group}
        value={value.groupId}
        onChange={(groupId) => onChange({ ...firstChoice(programme, groupId), week: value.week })}
      >
        {programme.groups.map(({ id, name }) => option(id, name))}
      </Pick>
      <Pick
        name={byHand.week}
        value={String(value.week)}
        onChange={(week) => onChange({ ...value, week: Number(week), session: 1 })}
      >
        {programme.weeks.map(({ focus }, i) => option(String(i + 1), byHand.weekN(i + 1, focus)))}
      </Pick>
      <Pick
        name={byHand.session}
        value={String(value.session)}
        onChange={(session) => onChange({ ...value, session: Number(session) })}
      >
        {sessions.map(({ plan }, i) =>
          option(String(i + 1), byHand.sessionN(i + 1, minutes(timelineOf(plan).total))),
        )}
      </Pick>
    </div>
  );
}

/** The first session of a group in a programme. */
export const firstChoice = (programme: Programme, groupId: string): Choice => ({
  programmeId: programme.id,
  groupId,
  week: 1,
  session: 1,
});

const option = (value: string, name: string) => (
  <option key={value} value={value}>
    {name}
  </option>
);

function Pick(props: {
  readonly name: string;
  readonly value: string;
  readonly onChange: (value: string) => void;
  readonly children: ReactNode;
}) {
  return (
    <Field name={props.name}>
      {(input) => (
        <select
          {...input}
          value={props.value}
          onChange={(event) => props.onChange(event.target.value)}
        >
          {props.children}
        </select>
      )}
    </Field>
  );
}
