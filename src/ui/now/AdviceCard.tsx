import { adviceSaid, findingSeen, advice as words } from '../../copy/advice.ts';
import type { Advice } from '../../domain/advice/advice.ts';
import { decide, followingOf, undecide } from '../../domain/advice/decide.ts';
import { askedMove, type Move } from '../../domain/advice/moves.ts';
import type { Situation } from '../../domain/advice/situation.ts';
import type { Decision } from '../../domain/log/following.ts';
import { useApp } from '../app-context.tsx';

interface AdviceProps {
  readonly situation: Situation;
  readonly advice: Advice;
  /** Why is said elsewhere on the page. */
  readonly brief?: boolean;
  /** Something was decided: what was pressed may be gone. */
  readonly onDecided: () => void;
}

/** What a good leader would say, why, and what would change it. The person decides. */
export function AdviceCard({ situation, advice, brief = false, onDecided }: AdviceProps) {
  const { following, programmes } = useApp();
  const { programme, group } = situation;
  const { groups } = programme;
  const said = adviceSaid(advice, groups);
  const { move, decided, because } = advice;
  const take = async (wanted: Move) => {
    const before = situation.following ?? followingOf(programme.id);
    await following.getState().change(decide(before, wanted));
    if (wanted.group !== group) await programmes.getState().chooseGroup(programme.id, wanted.group);
    onDecided();
  };
  const isTaken =
    decided?.why === move?.why && decided?.week === move?.week && decided?.group === move?.group;
  const takeBack = async (was: Decision) => {
    const before = situation.following ?? followingOf(programme.id);
    await following.getState().change(undecide(before, was));
    onDecided();
  };
  const nameOf = (id: string): string => groups.find((each) => each.id === id)?.name ?? id;
  return (
    <section className="stack rule" aria-labelledby="advice">
      <h2 id="advice">{said.title}</h2>
      {!brief && said.why.map((line) => <p key={line}>{line}</p>)}
      {decided !== undefined && (
        <>
          <p>{words.decided(decided.on, decided.week, nameOf(decided.group))}</p>
          <div className="row">
            <button type="button" className="button" onClick={() => void takeBack(decided)}>
              {words.takeBack}
            </button>
          </div>
        </>
      )}
      {move !== undefined && !isTaken && (
        <>
          <p className="soft">{words.decide}</p>
          <div className="row">
            <button type="button" className="button" onClick={() => void take(move)}>
              {because.code === 'away' ? words.comeBack(move.week) : words.yes[advice.action]}
            </button>
          </div>
        </>
      )}
      {advice.action === 'stop' && (
        <Asked
          // A yes holds from the day after: on the day itself it would change nothing.
          isToday={advice.because.detail.date === situation.today}
          onAsked={() => void take(askedMove(situation))}
        />
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

/** The way on after a warning sign or a niggle that keeps coming back. */
function Asked({ isToday, onAsked }: { isToday: boolean; onAsked: () => void }) {
  if (isToday) return <p className="soft">{words.askedTomorrow}</p>;
  return (
    <div className="stack tight">
      <p className="soft">{words.askedHelp}</p>
      <div className="row">
        <button type="button" className="button" onClick={onAsked}>
          {words.asked}
        </button>
      </div>
    </div>
  );
}
