import { useState } from 'react';
import { useStore } from 'zustand';
import type { Answer, PlainReason, TellingPerson, TellStore } from '../../app/tell-contract.ts';
import { answerProblem, tell } from '../../copy/tell.ts';
import { day } from '../../copy/times.ts';
import { entriesOf } from '../../domain/exchange/tell.ts';
import type { Programme } from '../../domain/programme/programme.ts';
import { useLog, useReceived } from '../app-context.tsx';
import { useDateAt } from '../parts/date-at.ts';
import { Screen } from '../parts/Screen.tsx';
import { choosingOf, type Touched } from './choices.ts';
import { TellAlong } from './TellAlong.tsx';
import { TellSessions } from './TellSessions.tsx';
import { TellWho } from './TellWho.tsx';

interface FormProps {
  readonly programme: Programme;
  readonly store: TellStore;
  readonly touched: Touched;
  readonly onTouch: (touched: Touched) => void;
  readonly onReady: (answer: Answer) => void;
}

const NOBODY: TellingPerson = { name: '', under16: false, told: [] };

/** As it will turn out when the answer is made; said early, because it bears on what one tells. */
function usePlain({ id, leader }: Programme): PlainReason | undefined {
  const isSigned = useReceived((r) => r.came[id]?.signed === true);
  if (leader.seal === null) return 'no-key';
  return isSigned ? undefined : 'unsigned';
}

/** What goes along is chosen here; a press leads on to looking at it, and sends nothing. */
export function TellForm({ programme, store, touched, onTouch, onReady }: FormProps) {
  const log = useLog((l) => l.entries);
  const entries = entriesOf(log, programme.id);
  const person = useStore(store, ({ people }) => people[programme.id]) ?? NOBODY;
  const plain = usePlain(programme);
  const isPlain = plain !== undefined;
  const choosing = choosingOf({ entries, person, isPlain, touched, onTouch });
  const [said, setSaid] = useState('');

  const look = async () => {
    const { telling, introduction, under16, guardian } = choosing;
    if (telling.ids.length === 0) return setSaid(tell.chooseOne);
    if (under16 && !guardian) return setSaid(tell.guardianNeeded);
    setSaid(tell.working);
    const made = await store.getState().prepare(programme.id, telling, introduction);
    if (!made.ok) return setSaid(answerProblem(made.error));
    onReady(made.value);
  };
  return (
    <Screen
      title={tell.title}
      sub={tell.sub(programme.leader.name, programme.title)}
      back={{ href: `/p/${programme.id}`, name: programme.title }}
      foot={
        entries.length > 0 && (
          <>
            <div role="alert">{said !== '' && <p>{said}</p>}</div>
            <button type="button" className="button primary" onClick={() => void look()}>
              {tell.look}
            </button>
          </>
        )
      }
    >
      <p>{entries.length === 0 ? tell.none : tell.lead}</p>
      {plain === undefined ? (
        <p>{tell.sealed(programme.leader.name)}</p>
      ) : (
        <p className="notice">{tell.plain[plain]}</p>
      )}
      {entries.length > 0 && (
        <>
          <TellSessions entries={entries} told={person.told} choosing={choosing} />
          <TellAlong choosing={choosing} />
          <TellWho choosing={choosing} />
        </>
      )}
      <Before told={person.told} />
    </Screen>
  );
}

const SHOWN = 5;

/** What was handed on from this phone, the latest first. */
function Before({ told }: Pick<TellingPerson, 'told'>) {
  const dateAt = useDateAt();
  if (told.length === 0) return null;
  return (
    <section className="stack tight rule">
      <h2>{tell.before}</h2>
      <ul>
        {told
          .slice(-SHOWN)
          .reverse()
          .map(({ at, ids }) => (
            <li key={at} className="figures">
              {tell.toldOn(day(dateAt(at)), ids.length)}
            </li>
          ))}
      </ul>
    </section>
  );
}
