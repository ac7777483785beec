import { useState } from 'react';
import { Link } from 'wouter';
import { nextWords, suggestionSaid, WAY, WAY_DOES } from '../../copy/board-next.ts';
import { nextPage as words } from '../../copy/next-page.ts';
import { type Suggestion, WAYS, type Way } from '../../domain/board/next-week.ts';
import type { Programme } from '../../domain/programme/programme.ts';
import { Choices } from '../parts/Choices.tsx';
import { KeptFocus } from '../parts/KeptFocus.tsx';
import { cellAt } from '../workshop/addresses.ts';
import { NextRows } from './NextRows.tsx';
import type { useNextSheet } from './next-sheet.ts';
import { changesNothing, type Standing, type Texts } from './next-standing.ts';

interface GroupProps {
  readonly programme: Programme;
  readonly suggestion: Suggestion;
  /** Nothing: the sheet has no such group or week. */
  readonly standing: Standing | undefined;
  readonly writing: ReturnType<typeof useNextSheet>;
}

/** One group: what is suggested and why, what it would change, and the tap that does it. */
export function NextGroup({ programme, suggestion, standing, writing }: GroupProps) {
  const { group, next, looked } = suggestion;
  const name = programme.groups.find(({ id }) => id === group)?.name ?? group;
  const said = suggestionSaid(suggestion);
  return (
    <section className="stack rule">
      <h2>{name}</h2>
      <div className="stack tight">
        <p className="big">
          <strong>{said.title}</strong>
        </p>
        <p>{said.why}</p>
        <details>
          <summary>
            {words.numbers}
            <span className="for-readers">, {name}</span>
          </summary>
          <ul className="bullets">
            {said.numbers.map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ul>
        </details>
      </div>
      {standing === undefined ? (
        <p className="notice">{words.gone(next, name)}</p>
      ) : (
        <KeptFocus>
          <Decide
            key={looked}
            name={name}
            suggestion={suggestion}
            standing={standing}
            writing={writing}
          />
        </KeptFocus>
      )}
    </section>
  );
}

interface DecideProps {
  readonly name: string;
  readonly suggestion: Suggestion;
  readonly standing: Standing;
  readonly writing: GroupProps['writing'];
}

function Decide({ name, suggestion, standing, writing }: DecideProps) {
  const { group, looked, next, way: suggested } = suggestion;
  const [chosen, setChosen] = useState<Way>();
  const [said, setSaid] = useState('');
  const { is } = standing;
  const way = chosen ?? (is === 'by-hand' || is === 'go-on' ? suggested : is);
  const write = async (texts: Texts, done: string) => {
    const problem = await writing.write({ group, next }, texts);
    setSaid(problem === '' ? done : problem);
    setChosen(undefined);
  };
  const isNothing = changesNothing(standing, way);
  return (
    <>
      <Now name={name} next={next} standing={standing} writing={writing} group={group}>
        <button
          type="button"
          className="button"
          onClick={() => void write(standing.sent, words.undone(next, name))}
        >
          {words.undo(name)}
        </button>
      </Now>
      <p>{WAY_DOES[way](looked, next)}</p>
      {isNothing && way !== 'go-on' ? (
        <p>{nextWords.unchanged}</p>
      ) : (
        <NextRows standing={standing} way={way} />
      )}
      <p role="status" className="next-said">
        {said}
      </p>
      {way !== is && !(isNothing && is === 'go-on') && (
        <div>
          <button
            type="button"
            className="button"
            onClick={() => void write(standing.ways[way], '')}
          >
            {words.take(next, name)}
          </button>
        </div>
      )}
      <details>
        <summary>
          {words.other}
          <span className="for-readers">, {name}</span>
        </summary>
        <Choices
          list
          legend={words.ways(name, next)}
          value={way}
          options={WAYS.map((each) => ({
            value: each,
            name: each === suggested ? `${WAY[each]} (${words.suggested})` : WAY[each],
            help: WAY_DOES[each](looked, next),
          }))}
          onChange={setChosen}
        />
      </details>
    </>
  );
}

interface NowProps {
  readonly name: string;
  readonly group: string;
  readonly next: number;
  readonly standing: Standing;
  readonly writing: GroupProps['writing'];
  readonly children: React.ReactNode;
}

/** What was decided already, with the way to the desk and the way back. */
function Now({ name, group, next, standing, writing, children }: NowProps) {
  const { is } = standing;
  if (is === 'go-on') return null;
  return (
    <div className="notice" role="status">
      <p>
        {is === 'by-hand' ? words.byHand(next, name) : words.inIt(WAY[is], next, name)}{' '}
        {words.notSent}
      </p>
      <div className="row">
        {writing.key !== undefined && (
          <Link
            href={cellAt(writing.key, { week: next - 1, group, session: 0 })}
            className="button"
          >
            {words.toDesk(name)}
          </Link>
        )}
        {children}
      </div>
    </div>
  );
}
