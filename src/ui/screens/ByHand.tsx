import { type ReactNode, useState } from 'react';
import { useLocation, useParams } from 'wouter';
import type { Choice } from '../../app/contract.ts';
import { byHand } from '../../copy/by-hand.ts';
import { common } from '../../copy/common.ts';
import { day, length, minutes, timeOfDay } from '../../copy/times.ts';
import { atTheSameTime, entryByHand, putRight, type Which } from '../../domain/log/by-hand.ts';
import type { LogEntry } from '../../domain/log/entry.ts';
import { endsInTime, type FieldCode, type Here, readWhen } from '../../domain/log/fields.ts';
import { beganAt, clockOf, offsetIn } from '../../domain/log/local-time.ts';
import type { Programme } from '../../domain/programme/programme.ts';
import { msOfSeconds } from '../../domain/units.ts';
import { useApp, useLog, useProgrammes } from '../app-context.tsx';
import { useNow, useSituation } from '../now/use-now.ts';
import { type AmountAnswer, AmountField, amountOf } from '../parts/AmountField.tsx';
import { Choices } from '../parts/Choices.tsx';
import { toFirstProblem } from '../parts/Field.tsx';
import { NotHere } from '../parts/NotHere.tsx';
import { planOf } from '../parts/plan-of.ts';
import { timelineOf } from '../parts/plans.ts';
import { Screen } from '../parts/Screen.tsx';
import { firstChoice, SessionPick } from '../parts/SessionPick.tsx';
import { type WhenAnswer, WhenFields } from '../parts/WhenFields.tsx';
import { whichOf } from '../parts/which.ts';

/** A session that was done without the app, written down afterwards. */
export function NewEntry() {
  const params = useParams<{ id?: string; week?: string; session?: string }>();
  const programmes = useProgrammes((p) => p.programmes);
  const chosen = useProgrammes((p) => p.chosen);
  const ready = useProgrammes((p) => p.ready);
  if (!ready) return null;
  const programme =
    programmes.find(({ id }) => id === params.id) ??
    programmes.find(({ id }) => chosen[id] !== undefined) ??
    programmes[0];
  if (programme === undefined) return <NotHere />;
  const group = chosen[programme.id] ?? programme.groups[0]?.id ?? '';
  return <NewIn programme={programme} group={group} week={params.week} session={params.session} />;
}

interface NewInProps {
  readonly programme: Programme;
  readonly group: string;
  readonly week: string | undefined;
  readonly session: string | undefined;
}

/** The session of the address, or the one that was next: it is most likely the one just done. */
function NewIn({ programme, group, week, session }: NewInProps) {
  const programmes = useProgrammes((p) => p.programmes);
  const { next } = useNow(useSituation(programme, group));
  const first = firstChoice(programme, group);
  const asked = { ...first, week: Number(week), session: Number(session) };
  const likely = next === undefined ? first : { ...first, week: next.week, session: next.session };
  return <NewForm first={[asked, likely].find((each) => whichOf(programmes, each)) ?? first} />;
}

const HOWS = ['by-hand', 'there'] as const;

function NewForm({ first }: { first: Choice }) {
  const app = useApp();
  const [, go] = useLocation();
  const programmes = useProgrammes((p) => p.programmes);
  const [choice, setChoice] = useState(first);
  const [how, setHow] = useState<'by-hand' | 'there'>('by-hand');
  const [amount, setAmount] = useState<AmountAnswer>({ what: 'all', minutes: '' });
  const which = whichOf(programmes, choice);
  const here = useHere();
  const [when, setWhen] = useState<WhenAnswer>(() =>
    clockOf(here.began(here.now - (which?.planSeconds ?? 0) * 1000)),
  );
  const [tried, setTried] = useState(false);

  const began = readWhen(when.date, when.time, here);
  const done = amountOf(amount);
  const made =
    which === undefined || !began.ok || !done.ok
      ? undefined
      : entryByHand('', which, began.value, done.value ?? 'all', how);
  const problems = problemsOf(began, done, made, here.now);
  const save = async () => {
    setTried(true);
    if (made === undefined || problems.when !== undefined) return toFirstProblem();
    const entry = { ...made, id: app.newId() };
    await app.log.getState().write(entry);
    go(`/felt/${entry.id}`, { replace: true });
  };
  return (
    <Screen
      title={byHand.title}
      sub={byHand.sub}
      back={{ href: '/done', name: common.done }}
      foot={<Save name={byHand.next} onSave={save} />}
    >
      <SessionPick value={choice} onChange={setChoice} />
      {which === undefined && <p className="notice">{byHand.nothing}</p>}
      <WhenFields
        value={when}
        onChange={setWhen}
        problem={shown(problems.when, tried)}
        today={clockOf(here.began(here.now)).date}
        zone={undefined}
      />
      <AmountField
        value={amount}
        onChange={setAmount}
        problem={shown(problems.amount, tried)}
        planned={minutes(msOfSeconds(which?.planSeconds ?? 0))}
      />
      <Choices
        legend={byHand.how}
        list
        value={how}
        onChange={setHow}
        options={HOWS.map((value) => {
          const [name, help] = byHand.hows[value];
          return { value, name, help };
        })}
      />
      <AtTheSameTime entry={made} />
    </Screen>
  );
}

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
      foot={<Save name={byHand.save} onSave={save} />}
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

/** Now, and the clocks by which a session is written down: those of the place where it began. */
function useHere(entry?: LogEntry) {
  const { clock } = useApp();
  const [now] = useState(() => clock.now());
  const phone = clock.zoneTime(now);
  const zone = entry?.zone ?? phone.zone;
  const isElsewhere = zone !== phone.zone;
  const offsetAt = isElsewhere
    ? (offsetIn(zone) ?? (() => entry?.offsetMinutes ?? phone.offsetMinutes))
    : (utc: number) => clock.zoneTime(utc).offsetMinutes;
  const began = (utc: number) => beganAt(utc, { zone, offsetMinutes: offsetAt(utc) });
  return { now, zone, offsetAt, isElsewhere, began } satisfies Here & Record<string, unknown>;
}

type Read = { readonly ok: true } | { readonly ok: false; readonly error: FieldCode };

function problemsOf(began: Read, amount: Read, made: LogEntry | undefined, now: number) {
  const late = made !== undefined && !endsInTime(made.startedAt, made.activeSeconds, now);
  return {
    when: began.ok ? (late ? ('ends-future' as const) : undefined) : began.error,
    amount: amount.ok ? undefined : amount.error,
  };
}

/** What is still empty is no mistake before the person wants to save. */
const shown = (problem: FieldCode | undefined, tried: boolean): FieldCode | undefined =>
  tried || !problem?.endsWith('-none') ? problem : undefined;

function Save({ name, onSave }: { name: string; onSave: () => Promise<void> }): ReactNode {
  return (
    <button type="button" className="button primary wide" onClick={() => void onSave()}>
      {name}
    </button>
  );
}

/** Says that another session is written down for the same time; the person knows which is right. */
function AtTheSameTime({ entry }: { entry: LogEntry | undefined }) {
  const entries = useLog((l) => l.entries);
  const other = entry && atTheSameTime(entries, entry);
  return (
    <div role="status">
      {other !== undefined && (
        <p className="notice">
          {byHand.same(day(other.localDate), timeOfDay(other.startedAt, other.offsetMinutes))}
        </p>
      )}
    </div>
  );
}
