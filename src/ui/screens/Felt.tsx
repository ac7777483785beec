import { useState } from 'react';
import { Link, useLocation, useParams } from 'wouter';
import { common } from '../../copy/common.ts';
import { felt } from '../../copy/felt.ts';
import { day, minutes, timeOfDay } from '../../copy/times.ts';
import { weeks } from '../../copy/weeks.ts';
import { withFeeling } from '../../domain/log/by-hand.ts';
import type { Feeling, LogEntry } from '../../domain/log/entry.ts';
import { kilometres, readKilometres } from '../../domain/log/fields.ts';
import { msOfSeconds } from '../../domain/units.ts';
import { useApp, useLog } from '../app-context.tsx';
import { CoveredStrip } from '../parts/CoveredStrip.tsx';
import { EffortScale } from '../parts/EffortScale.tsx';
import { Field, toFirstProblem } from '../parts/Field.tsx';
import { type NiggleAnswer, NiggleField, niggleAnswer, niggleOf } from '../parts/NiggleField.tsx';
import { NotHere } from '../parts/NotHere.tsx';
import { planOf } from '../parts/plan-of.ts';
import { timelineOf } from '../parts/plans.ts';
import { Screen } from '../parts/Screen.tsx';
import { isOver } from '../parts/session-state.ts';
import { useSecondTap } from '../parts/use-second-tap.ts';
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
  /** Given at another time, and not asked here. */
  readonly effortLater?: number | undefined;
  readonly niggle: NiggleAnswer;
  readonly warning: boolean;
  readonly note: string;
}): Feeling {
  const { effort, effortLater, niggle, warning } = answers;
  const note = answers.note.trim();
  return {
    ...(effort === undefined ? {} : { effort }),
    ...(effortLater === undefined ? {} : { effortLater }),
    ...niggleOf(niggle),
    ...(warning ? { warningSign: true } : {}),
    ...(note === '' ? {} : { note }),
  };
}

const NOTE_MAX = 500;

function FeltForm({ entry }: { entry: LogEntry }) {
  const app = useApp();
  const secondTap = useSecondTap();
  const [, go] = useLocation();
  const before = entry.feeling;
  const [effort, setEffort] = useState(before.effort);
  const [niggle, setNiggle] = useState<NiggleAnswer>(niggleAnswer(before));
  const [warning, setWarning] = useState(before.warningSign ?? false);
  const [note, setNote] = useState(before.note ?? '');
  const [km, setKm] = useState(kilometres(entry.distanceM));
  const distance = readKilometres(km, entry.activeSeconds);

  const close = () => {
    const { view, close } = app.session.getState();
    if (isOver(view.state)) close();
  };
  const save = async () => {
    if (!distance.ok) return toFirstProblem();
    const { effortLater } = before;
    const feeling = feelingOf({ effort, effortLater, niggle, warning, note });
    const now = app.clock.now();
    await app.log.getState().write(withFeeling(entry, feeling, distance.value, now));
    close();
    go(`/done/${entry.id}`, { replace: true });
  };
  return (
    <Screen
      title={felt.title}
      sub={`${weeks.session(entry.week, entry.session)}, ${entry.group.name}.`}
      back={{ href: '/done', name: common.done }}
      foot={
        <div className="pair" onClickCapture={secondTap.drop}>
          <button type="button" className="button primary" onClick={() => void save()}>
            {felt.save}
          </button>
          <Link href="/done" className="button" onClick={close}>
            {felt.later}
          </Link>
        </div>
      }
    >
      <HowMuch entry={entry} />
      <p>{felt.lead}</p>
      <EffortScale value={effort} target={entry.target} onChange={setEffort} />
      <WarningField value={warning} onChange={setWarning} />
      <NiggleField value={niggle} onChange={setNiggle} />
      <section className="stack rule">
        <Field
          name={felt.distance}
          help={felt.distanceHelp}
          problem={distance.ok ? undefined : distance.error}
        >
          {(input) => (
            <input
              {...input}
              className="short"
              inputMode="decimal"
              autoComplete="off"
              value={km}
              onChange={(event) => setKm(event.target.value)}
            />
          )}
        </Field>
        <label className="field">
          <strong>{felt.note}</strong>
          <span className="small soft">{felt.noteHelp}</span>
          <textarea
            value={note}
            maxLength={NOTE_MAX}
            onChange={(event) => setNote(event.target.value)}
          />
        </label>
      </section>
    </Screen>
  );
}

/** How much of the session was done; of one that the app did not lead also when, to be put right. */
function HowMuch({ entry }: { entry: LogEntry }) {
  const plan = planOf(entry.plan);
  const done = minutes(msOfSeconds(entry.doneSeconds));
  const total = plan === undefined ? done : minutes(timelineOf(plan).total);
  return (
    <div className="stack tight">
      <CoveredStrip entry={entry} height={40} />
      <p className="small figures">
        {felt.done(done, total)}{' '}
        {entry.how !== 'app' &&
          `${felt.doneHow[entry.how]} ${day(entry.localDate)}, ${timeOfDay(entry.startedAt, entry.offsetMinutes)}.`}
      </p>
      {entry.how !== 'app' && (
        <Link href={`/done/${entry.id}/edit`} className="text-button">
          {felt.doneChange}
        </Link>
      )}
    </div>
  );
}
