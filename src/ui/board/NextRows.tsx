import { nextWords } from '../../copy/board-next.ts';
import { nextPage as words } from '../../copy/next-page.ts';
import { stripInWords } from '../../copy/words.ts';
import type { Way } from '../../domain/board/next-week.ts';
import { type Ms, ms } from '../../domain/units.ts';
import { planOf } from '../parts/plan-of.ts';
import { timelineOf } from '../parts/plans.ts';
import { Strip } from '../parts/Strip.tsx';
import type { Standing } from './next-standing.ts';

/** Each session of the week to decide as it was sent and as it would be, in one measure. */
export function NextRows({ standing, way }: { standing: Standing; way: Way }) {
  const { sent, ways, is, pinned } = standing;
  const after = ways[way];
  const count = Math.max(sent.length, after.length);
  const longest = longestOf([...sent, ...after]);
  return (
    <ul className="next-rows">
      {Array.from({ length: count }, (_, n) => {
        const [was, will] = [sent[n], after[n]];
        return (
          // biome-ignore lint/suspicious/noArrayIndexKey: a session of a week is its number
          <li key={n} className="stack tight">
            {count > 1 && <h3>{words.session(n + 1)}</h3>}
            {was !== undefined && was === will ? (
              <Session label={words.same} text={was} longest={longest} />
            ) : (
              <div className="next-pair">
                <Session label={words.before} text={was} none={words.more} longest={longest} />
                <Session
                  label={way === is ? words.now : words.after}
                  text={will}
                  none={words.fewer}
                  longest={longest}
                />
              </div>
            )}
            {pinned.includes(n) && <p className="small">{nextWords.pinned}</p>}
          </li>
        );
      })}
    </ul>
  );
}

function longestOf(texts: readonly string[]): Ms {
  const totals = texts.flatMap((text) => {
    const plan = planOf(text);
    return plan === undefined ? [] : [timelineOf(plan).total];
  });
  return ms(Math.max(1, ...totals));
}

interface SessionProps {
  readonly label: string;
  /** Nothing: there is no such session. */
  readonly text: string | undefined;
  readonly none?: string;
  readonly longest: Ms;
}

function Session({ label, text, none = '', longest }: SessionProps) {
  const plan = text === undefined ? undefined : planOf(text);
  return (
    <div className="stack tight">
      <p className="small soft">{text === undefined ? none : label}</p>
      {plan !== undefined && (
        <Strip
          timeline={timelineOf(plan)}
          height={48}
          of={longest}
          label={words.strip(label, stripInWords(plan))}
        />
      )}
      {text !== undefined && <p className="small next-text">{text}</p>}
    </div>
  );
}
