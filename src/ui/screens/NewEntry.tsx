import { useState } from 'react';
import { useLocation, useParams } from 'wouter';
import type { Choice } from '../../app/session-contract.ts';
import { byHand } from '../../copy/by-hand.ts';
import { common } from '../../copy/common.ts';
import { minutes } from '../../copy/times.ts';
import { entryByHand } from '../../domain/log/by-hand.ts';
import { readWhen } from '../../domain/log/fields.ts';
import { clockOf } from '../../domain/log/local-time.ts';
import type { Programme } from '../../domain/programme/programme.ts';
import { msOfSeconds } from '../../domain/units.ts';
import { useApp, useProgrammes } from '../app-context.tsx';
import { useNow, useSituation } from '../now/use-now.ts';
import { type AmountAnswer, AmountField, amountOf } from '../parts/AmountField.tsx';
import { AtTheSameTime } from '../parts/AtTheSameTime.tsx';
import { problemsOf, shown } from '../parts/by-hand-problems.ts';
import { Choices } from '../parts/Choices.tsx';
import { toFirstProblem } from '../parts/Field.tsx';
import { NotHere } from '../parts/NotHere.tsx';
import { Screen } from '../parts/Screen.tsx';
import { firstChoice, SessionPick } from '../parts/SessionPick.tsx';
import { useHere } from '../parts/use-here.ts';
import { useOneAtATime } from '../parts/use-one-at-a-time.ts';
import { useSecondTap } from '../parts/use-second-tap.ts';
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
  const secondTap = useSecondTap();
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
  const save = useOneAtATime(async () => {
    setTried(true);
    if (made === undefined || problems.when !== undefined) return toFirstProblem();
    const entry = { ...made, id: app.newId() };
    await app.log.getState().write(entry);
    go(`/felt/${entry.id}`, { replace: true });
  });
  return (
    <Screen
      title={byHand.title}
      sub={byHand.sub}
      back={{ href: '/done', name: common.done }}
      foot={
        <button
          type="button"
          className="button primary wide"
          onClick={(event) => {
            secondTap.note(event);
            void save();
          }}
        >
          {byHand.next}
        </button>
      }
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
