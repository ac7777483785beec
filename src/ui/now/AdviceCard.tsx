import { adviceSaid, findingSeen, advice as words } from '../../copy/advice.ts';
import { decide, followingOf } from '../../domain/advice/decide.ts';
import { askedMove, type Move } from '../../domain/advice/moves.ts';
import type { Situation } from '../../domain/advice/situation.ts';
import type { Group } from '../../domain/programme/programme.ts';
import { useApp } from '../app-context.tsx';
import { useAdvice } from './use-now.ts';

interface AdviceProps {
  readonly situation: Situation;
  readonly groups: readonly Group[];
}

/** What a good leader would say, why, and what would change it. The person decides. */
export function AdviceCard({ situation, groups }: AdviceProps) {
  const { following, programmes } = useApp();
  const advice = useAdvice(situation);
  const said = adviceSaid(advice, groups);
  const { move, decided } = advice;
  const { programme, group } = situation;
  const take = async (wanted: Move) => {
    const before = situation.following ?? followingOf(programme.id);
    await following.getState().change(decide(before, wanted));
    if (wanted.group !== group) await programmes.getState().chooseGroup(programme.id, wanted.group);
  };
  const nameOf = (id: string): string => groups.find((each) => each.id === id)?.name ?? id;
  return (
    <section className="stack rule" aria-labelledby="advice">
      <h2 id="advice">{said.title}</h2>
      {said.why.map((line) => (
        <p key={line}>{line}</p>
      ))}
      {decided !== undefined && (
        <p role="status">{words.decided(decided.on, decided.week, nameOf(decided.group))}</p>
      )}
      {move !== undefined && (
        <>
          <p className="soft">{words.decide}</p>
          <div className="row">
            <button type="button" className="button" onClick={() => void take(move)}>
              {words.yes[advice.action]}
            </button>
          </div>
        </>
      )}
      {advice.action === 'stop' && (
        <div className="stack tight">
          <div className="row">
            <button
              type="button"
              className="button"
              onClick={() => void take(askedMove(situation))}
            >
              {words.asked}
            </button>
          </div>
          <p className="small soft">{words.askedHelp}</p>
        </div>
      )}
      <details>
        <summary>{words.changes}</summary>
        <div className="stack tight">
          {said.changes.map((line) => (
            <p key={line}>{line}</p>
          ))}
          {advice.also.length > 0 && (
            <>
              <h3>{words.also}</h3>
              {advice.also.map((found) => (
                <p key={found.code}>{findingSeen(found)}</p>
              ))}
            </>
          )}
          <p className="small soft">{words.notAdvice}</p>
        </div>
      </details>
    </section>
  );
}
