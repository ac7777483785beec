import type { Answer, TellStore } from '../../app/tell-contract.ts';
import { answerWords, tell } from '../../copy/tell.ts';
import type { Programme } from '../../domain/programme/programme.ts';
import { Screen } from '../parts/Screen.tsx';
import { TellWays } from './TellWays.tsx';

interface ReviewProps {
  readonly programme: Programme;
  readonly store: TellStore;
  readonly answer: Answer;
  readonly onBack: () => void;
}

/** Exactly what is in the answer, and then the ways to send it. */
export function TellReview({ programme, store, answer, onBack }: ReviewProps) {
  const { plain } = answer;
  return (
    <Screen
      title={tell.reviewTitle}
      sub={tell.sub(programme.leader.name, programme.title)}
      back={{ href: `/tell/${programme.id}`, name: tell.back, onGo: onBack }}
    >
      <p className={plain === undefined ? undefined : 'notice'}>
        {plain === undefined ? tell.sealed(programme.leader.name) : tell.plain[plain]}
      </p>
      {plain === undefined ? (
        <Content programme={programme} answer={answer} />
      ) : (
        <section className="stack rule">
          <h2>{tell.plainWords}</h2>
          <p className="written">{answer.message}</p>
        </section>
      )}
      <TellWays programme={programme} store={store} answer={answer} />
    </Screen>
  );
}

/** What is in a sealed answer, read from what was sealed. */
function Content({ programme, answer }: Pick<ReviewProps, 'programme' | 'answer'>) {
  const words = answerWords(answer.response, programme);
  return (
    <section className="stack rule">
      <h2>{tell.what}</h2>
      <p>{words.who.join(' ')}</p>
      <ol className="stack">
        {words.sessions.map(({ title, lines }, n) => (
          <li key={answer.ids[n]} className="stack tight">
            <h3 className="figures">{title}</h3>
            <p className="small as-sent">{lines.join(' ')}</p>
          </li>
        ))}
      </ol>
      <p>{words.leftOut}</p>
      <details>
        <summary>{tell.behind}</summary>
        <ul className="bullets">
          {words.behind.map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ul>
      </details>
      <p className="small soft">{tell.onlyThis}</p>
    </section>
  );
}
