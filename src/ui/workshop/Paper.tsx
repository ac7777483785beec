import '../styles/paper.css';
import { useState } from 'react';
import type { Sending } from '../../app/exchange-contract.ts';
import { paper } from '../../copy/paper.ts';
import type { Programme } from '../../domain/programme/programme.ts';
import { Screen } from '../parts/Screen.tsx';
import { PaperWeek } from './PaperWeek.tsx';

/** What is printed of a programme, in writing or published. */
export interface Printed {
  readonly outline: Pick<Programme, 'groups' | 'weeks' | 'goal' | 'startDate'>;
  readonly title: string;
  /** The leader's name; may be empty. */
  readonly leader: string;
  /** What it goes out as; without it there is no code on the pages. */
  readonly sending?: Sending | undefined;
}

interface PaperProps extends Printed {
  readonly back: { readonly href: string; readonly name: string };
}

const WHOLE = 'whole';

/** A preview of the pages, and the button that prints them and nothing else. */
export function Paper({ back, ...printed }: PaperProps) {
  const [chosen, setChosen] = useState(WHOLE);
  const { weeks } = printed.outline;
  const numbers = weeks.map((_, i) => i + 1);
  const shown = chosen === WHOLE ? numbers : numbers.filter((n) => String(n) === chosen);
  return (
    <Screen title={paper.title(printed.title)} sub={paper.sub} back={back}>
      {weeks.length === 0 ? (
        <p>{paper.nothing}</p>
      ) : (
        <>
          <label className="field">
            {paper.what}
            <select
              className="paper-what"
              value={chosen}
              onChange={(event) => setChosen(event.target.value)}
            >
              <option value={WHOLE}>{paper.whole(weeks.length)}</option>
              {weeks.map(({ focus }, i) => (
                // biome-ignore lint/suspicious/noArrayIndexKey: a week is its number
                <option key={i} value={i + 1}>
                  {paper.one(i + 1, focus)}
                </option>
              ))}
            </select>
          </label>
          <Missing sending={printed.sending} />
          <div className="stack tight">
            <button type="button" className="button primary" onClick={() => window.print()}>
              {paper.print}
            </button>
            <p className="small soft">{paper.help}</p>
          </div>
          <div className="paper">
            {shown.map((number) => (
              <PaperWeek key={number} number={number} {...printed} />
            ))}
          </div>
        </>
      )}
    </Screen>
  );
}

function Missing({ sending }: { sending: Sending | undefined }) {
  if (sending === undefined) return <p>{paper.noSending}</p>;
  return sending.codes.length === 0 ? <p>{paper.noCode}</p> : null;
}
