import { useState } from 'react';
import { useLocation } from 'wouter';
import { calledOf } from '../../copy/board.ts';
import { personPage as words } from '../../copy/board-page.ts';
import type { BoardInput } from '../../domain/board/board.ts';
import { boardAt } from './addresses.ts';
import { useBoardStore } from './board-context.tsx';
import { ForgetQuestion } from './ForgetQuestion.tsx';
import { KeepSaid } from './KeepSaid.tsx';
import { useJob } from './keep-job.ts';
import { listedBy } from './list-people.ts';

interface ForgetProps {
  readonly input: BoardInput;
  readonly person: string;
}

/** Everything that is known of a person, wholly gone after one question. */
export function PersonForget({ input, person }: ForgetProps) {
  const store = useBoardStore();
  const job = useJob();
  const [, go] = useLocation();
  const [isAsking, setAsking] = useState(false);
  const who = listedBy(input)
    .flatMap(({ people }) => people)
    .find((each) => each.person === person);
  if (who === undefined) return null;
  const { id } = input.programme;
  const forget = async () => {
    setAsking(false);
    const isGone = await job.run(store.getState().forget(id, person), '');
    if (isGone) go(boardAt(id), { replace: true });
  };
  return (
    <section className="stack rule">
      <h2>{words.forget}</h2>
      <p>{words.forgetBody}</p>
      <KeepSaid said={job.said} />
      <div>
        <button type="button" className="button" onClick={() => setAsking(true)}>
          {words.forgetGo(calledOf(who))}
        </button>
      </div>
      {isAsking && (
        <ForgetQuestion
          who={who}
          input={input}
          onYes={() => void forget()}
          onNo={() => setAsking(false)}
        />
      )}
    </section>
  );
}
