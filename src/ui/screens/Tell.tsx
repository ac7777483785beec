import { useEffect, useState } from 'react';
import { useParams } from 'wouter';
import type { Answer, TellStore } from '../../app/tell-contract.ts';
import { common } from '../../copy/common.ts';
import { answerProblem, tell } from '../../copy/tell.ts';
import type { AnswerProblem } from '../../domain/exchange/problem.ts';
import type { Programme } from '../../domain/programme/programme.ts';
import { useApp, useProgrammes } from '../app-context.tsx';
import { NotHere } from '../parts/NotHere.tsx';
import { Screen } from '../parts/Screen.tsx';
import type { Touched } from '../tell/choices.ts';
import { TellForm } from '../tell/TellForm.tsx';
import { TellReview } from '../tell/TellReview.tsx';

/** Telling the leader: choose, look at it, send it. Nothing is ever sent by itself. */
export function Tell() {
  const { id } = useParams<{ id: string }>();
  const programme = useProgrammes((p) => p.programmes.find((each) => each.id === id));
  const ready = useProgrammes((p) => p.ready);
  if (programme === undefined) return ready ? <NotHere /> : null;
  return <TellSteps key={programme.id} programme={programme} />;
}

/** The machinery of telling, fetched when this page opens, with what is known of the person. */
function useTelling(): { store?: TellStore; problem?: AnswerProblem } {
  const app = useApp();
  const [telling, setTelling] = useState<ReturnType<typeof useTelling>>({});
  useEffect(() => {
    let isGone = false;
    const open = async (): Promise<ReturnType<typeof useTelling>> => {
      const store = await app.telling();
      const loaded = await store.getState().load();
      return loaded.ok ? { store } : { problem: loaded.error };
    };
    open()
      .catch(() => ({ problem: { code: 'not-loaded' } as const }))
      .then((opened) => isGone || setTelling(opened));
    return () => {
      isGone = true;
    };
  }, [app]);
  return telling;
}

function TellSteps({ programme }: { programme: Programme }) {
  const { store, problem } = useTelling();
  const [answer, setAnswer] = useState<Answer>();
  const [touched, setTouched] = useState<Touched>({});
  if (store !== undefined && answer !== undefined)
    return (
      <TellReview
        programme={programme}
        store={store}
        answer={answer}
        onBack={() => setAnswer(undefined)}
      />
    );
  if (store !== undefined)
    return <TellForm {...{ programme, store, touched }} onTouch={setTouched} onReady={setAnswer} />;
  return (
    <Screen title={tell.title} back={{ href: `/p/${programme.id}`, name: programme.title }}>
      <div role="alert">
        {problem !== undefined && <p className="notice">{answerProblem(problem)}</p>}
      </div>
      {problem === undefined && <p role="status">{common.loading}</p>}
    </Screen>
  );
}
