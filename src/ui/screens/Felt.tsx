import { useState } from 'react';
import { Link, useLocation, useParams } from 'wouter';
import { common } from '../../copy/common.ts';
import { felt } from '../../copy/felt.ts';
import { minutes } from '../../copy/times.ts';
import { weeks } from '../../copy/weeks.ts';
import type { Feeling, LogEntry } from '../../domain/log/entry.ts';
import { msOfSeconds } from '../../domain/units.ts';
import { useApp, useLog } from '../app-context.tsx';
import { EffortScale } from '../parts/EffortScale.tsx';
import { type NiggleAnswer, NiggleField } from '../parts/NiggleField.tsx';
import { NotHere } from '../parts/NotHere.tsx';
import { Screen } from '../parts/Screen.tsx';
import { isOver } from '../parts/session-state.ts';
import { WarningField } from '../parts/WarningField.tsx';

/** How hard a session was. Every answer may be left out, and all of it may be left for later. */
export function Felt() {
  const { entry } = useParams<{ entry: string }>();
  const found = useLog((l) => l.entries.find((each) => each.id === entry));
  const ready = useLog((l) => l.ready);
  if (found !== undefined) return <FeltForm key={found.id} entry={found} />;
  return ready ? <NotHere /> : null;
}

/** What the form's answers come to: absent answers are left out. */
export function feelingOf(answers: {
  readonly effort: number | undefined;
  readonly niggle: NiggleAnswer;
  readonly warning: boolean;
  readonly note: string;
}): Feeling {
  const { niggle } = answers;
  const note = answers.note.trim();
  return {
    ...(answers.effort === undefined ? {} : { effort: answers.effort }),
    ...(niggle.has === 'yes' && niggle.place !== undefined
      ? {
          niggle: {
            place: niggle.place,
            ...(niggle.side === undefined ? {} : { side: niggle.side }),
          },
        }
      : {}),
    ...(answers.warning ? { warningSign: true } : {}),
    ...(note === '' ? {} : { note }),
  };
}

const NOTE_MAX = 500;

function FeltForm({ entry }: { entry: LogEntry }) {
  const app = useApp();
  const [, go] = useLocation();
  const before = entry.feeling;
  const [effort, setEffort] = useState(before.effort);
  const [niggle, setNiggle] = useState<NiggleAnswer>(
    before.niggle ? { has: 'yes', ...before.niggle } : {},
  );
  const [warning, setWarning] = useState(before.warningSign ?? false);
  const [note, setNote] = useState(before.note ?? '');

  const leave = () => {
    const { view, close } = app.session.getState();
    if (isOver(view.state)) close();
    go(`/done/${entry.id}`, { replace: true });
  };
  const save = async () => {
    await app.log.getState().feel(entry.id, feelingOf({ effort, niggle, warning, note }));
    leave();
  };
  return (
    <Screen
      title={felt.title}
      sub={`${weeks.session(entry.week, entry.session)}, ${entry.group.name}. ${minutes(msOfSeconds(entry.doneSeconds))}.`}
      back={{ href: '/done', name: common.done }}
      foot={
        <div className="pair">
          <button type="button" className="button primary" onClick={() => void save()}>
            {felt.save}
          </button>
          <Link
            href="/done"
            className="button"
            onClick={() => {
              const { view, close } = app.session.getState();
              if (isOver(view.state)) close();
            }}
          >
            {felt.later}
          </Link>
        </div>
      }
    >
      <p>{felt.lead}</p>
      <EffortScale value={effort} target={Math.round(entry.target / 10)} onChange={setEffort} />
      <WarningField value={warning} onChange={setWarning} />
      <NiggleField value={niggle} onChange={setNiggle} />
      <label className="field">
        <strong>{felt.note}</strong>
        <span className="small soft">{felt.noteHelp}</span>
        <textarea
          value={note}
          maxLength={NOTE_MAX}
          onChange={(event) => setNote(event.target.value)}
        />
      </label>
    </Screen>
  );
}
