import { useState } from 'react';
import { useLocation, useParams } from 'wouter';
import type { Choice } from '../../app/session-contract.ts';
import { byHand } from '../../copy/by-hand.ts';
import { common } from '../../copy/common.ts';
import { day, length, minutes } from '../../copy/times.ts';
import { putRight, type Which } from '../../domain/log/by-hand.ts';
import type { LogEntry } from '../../domain/log/entry.ts';
import { readWhen } from '../../domain/log/fields.ts';
import { type beganAt, clockOf } from '../../domain/log/local-time.ts';
import { msOfSeconds } from '../../domain/units.ts';
import { useApp, useLog, useProgrammes } from '../app-context.tsx';
import { type AmountAnswer, AmountField, amountOf } from '../parts/AmountField.tsx';
import { AtTheSameTime } from '../parts/AtTheSameTime.tsx';
import { problemsOf, shown } from '../parts/by-hand-problems.ts';
import { toFirstProblem } from '../parts/Field.tsx';
import { NotHere } from '../parts/NotHere.tsx';
import { planOf } from '../parts/plan-of.ts';
import { timelineOf } from '../parts/plans.ts';
import { Screen } from '../parts/Screen.tsx';
import { SessionPick } from '../parts/SessionPick.tsx';
import { useHere } from '../parts/use-here.ts';
import { type WhenAnswer, WhenFields } from '../parts/WhenFields.tsx';
import { whichOf } from '../parts/which.ts';

/** What can be put right about a session that ended: when it was, how much, and which. */
export function EditEntry() {
  const { entry } = useParams<{ entry: string }>();
  const found = useLog((l) => l.entries.find((each) => each.id === entry));
  const ready = useLog((l) => l.ready);
  if (found !== undefined) return <EditForm key={found.id} entry={found} />;
  return ready ? <NotHere /> : null;
}

function EditForm({ entry }: { entry: LogEntry }) {
  const app = useApp();
  const [, go] = useLocation();
  const programmes = useProgrammes((p) => p.programmes);
  const was: Choice = {
    programmeId: entry.programme.id,
    groupId: entry.group.id,
    week: entry.week,
    session: entry.session,
  };
  const [choice, setChoice] = useState(was);
  const [amount, setAmount] = useState<AmountAnswer>({ what: 'keep', minutes: '' });
  const before = clockOf(entry);
  const [when, setWhen] = useState<WhenAnswer>(before);
  const [tried, setTried] = useState(false);
  const here = useHere(entry);

  const canPick = entry.how !== 'app' && whichOf(programmes, was) !== undefined;
  const other = choice === was ? undefined : whichOf(programmes, choice);
  const planSeconds = other?.planSeconds ?? planSecondsOf(entry);
  // What was not touched stays to the second, also in an hour that was there twice.
  const untouched = when.date === before.date && when.time === before.time;
  const began = untouched
    ? ({ ok: true, value: undefined } as const)
    : readWhen(when.date, when.time, here);
  const done = amountOf(amount);
  const made =
    !began.ok || !done.ok
      ? undefined
      : putRight(entry, correction(began.value, done.value, other), planSeconds, here.now);
  const problems = problemsOf(began, done, made, here.now);
  const back = `/done/${entry.id}`;
  const save = async () => {
    setTried(true);
    if (made === undefined || problems.when !== undefined) return toFirstProblem();
    await app.log.getState().write(made);
    go(back, { replace: true });
  };
  return (
    <Screen
      title={byHand.titleEdit}
      sub={`${day(entry.localDate)}. ${entry.programme.title}.`}
      back={{ href: back, name: common.back }}
      foot={
        <button type="button" className="button primary wide" onClick={() => void save()}>
          {byHand.save}
        </button>
      }
    >
      {canPick && <SessionPick value={choice} onChange={setChoice} />}
      <WhenFields
        value={when}
        onChange={setWhen}
        problem={shown(problems.when, tried)}
        today={clockOf(here.began(here.now)).date}
        zone={here.isElsewhere ? entry.zone : undefined}
      />
      <AmountField
        value={amount}
        onChange={setAmount}
        problem={shown(problems.amount, tried)}
        planned={minutes(msOfSeconds(planSeconds))}
        counted={length(msOfSeconds(entry.activeSeconds))}
      />
      <AtTheSameTime entry={made} />
    </Screen>
  );
}

const correction = (
  began: ReturnType<typeof beganAt> | undefined,
  amount: 'all' | number | undefined,
  which: Which | undefined,
) => ({
  ...(began === undefined ? {} : { began }),
  ...(amount === undefined ? {} : { amount }),
  ...(which === undefined ? {} : { which }),
});

function planSecondsOf(entry: LogEntry): number {
  const plan = planOf(entry.plan);
  return plan === undefined ? entry.doneSeconds : timelineOf(plan).total / 1000;
}
