import '../styles/attendance.css';
import { useState } from 'react';
import { useParams } from 'wouter';
import { attendance as words } from '../../copy/attendance.ts';
import type { BoardInput } from '../../domain/board/board.ts';
import { dayOf } from '../../domain/programme/dates.ts';
import { Screen } from '../parts/Screen.tsx';
import { LineField } from '../workshop/fields.tsx';
import { boardAt } from './addresses.ts';
import { useBoard } from './board-context.tsx';
import { ListAdd } from './ListAdd.tsx';
import { Earlier, WhichFields } from './ListDay.tsx';
import { ListGroup } from './ListGroup.tsx';
import { ListPaper } from './ListPaper.tsx';
import { type Which, whichOn } from './list-day.ts';
import { useMarks } from './list-marks.ts';
import { type ListedGroup, listedBy, matching } from './list-people.ts';

/** Who came: a tick for each, kept at once; and the same list on paper. */
export function ListPage() {
  const { id = '' } = useParams();
  const input = useBoard(id)?.input;
  return input === undefined ? null : <List input={input} />;
}

function List({ input }: { input: BoardInput }) {
  const { programme } = input;
  const [date, setDate] = useState(input.today);
  const [picked, setPicked] = useState<Which>();
  const [search, setSearch] = useState('');
  const [isAdding, setAdding] = useState(false);
  const day = input.days.find((each) => each.date === date);
  const which = picked ?? whichOn(input, date, day);
  const marks = useMarks(programme.id, date, which, day);
  const groups = listedBy(input);
  const everybody = groups.flatMap(({ people }) => people);
  const there = everybody.filter(marks.isThere).length;
  const shown = matching(groups, search);
  const choose = (to: Which) => {
    setPicked(to);
    marks.said(to);
  };
  return (
    <Screen
      title={words.title}
      sub={programme.title}
      back={{ href: boardAt(programme.id), name: words.back }}
      foot={
        <div className="attendance-foot">
          <p className="big figures" role="status">
            {words.there(there)}
          </p>
          <button type="button" className="button primary" onClick={() => setAdding(true)}>
            {words.add}
          </button>
        </div>
      }
    >
      <div className="stack">
        <LineField
          name={words.day}
          type="date"
          value={date}
          onChange={(typed) => {
            if (dayOf(typed) === undefined) return;
            setDate(typed);
            setPicked(undefined);
          }}
        />
        <WhichFields input={input} which={which} onChoose={choose} />
        <p className="small soft">{words.help}</p>
      </div>
      <div role="alert">{marks.problem !== '' && <p className="notice">{marks.problem}</p>}</div>
      {everybody.length === 0 && <p>{words.nobody}</p>}
      {everybody.length > SEARCHED && (
        <LineField name={words.search} value={search} onChange={setSearch} />
      )}
      {search !== '' && shown.length === 0 && <p role="status">{words.noneFound}</p>}
      {shown.map((group) => (
        <ListGroup key={group.id} group={group} whole={wholeOf(groups, group)} marks={marks} />
      ))}
      <Earlier
        input={input}
        date={date}
        onOpen={(to) => {
          setDate(to);
          setPicked(undefined);
        }}
      />
      <section className="stack rule">
        <div>
          <button type="button" className="button" onClick={() => window.print()}>
            {words.print}
          </button>
        </div>
        <p className="small soft">{words.printHelp}</p>
      </section>
      <ListPaper programme={programme} date={date} which={which} groups={groups} marks={marks} />
      {isAdding && (
        <ListAdd
          programme={programme}
          groups={groups}
          onAdded={(person) => marks.tick({ person, ids: [person] }, true)}
          onClose={() => setAdding(false)}
        />
      )}
    </Screen>
  );
}

/** A list of more names than fit on a screen or two is searched. */
const SEARCHED = 16;

const wholeOf = (groups: readonly ListedGroup[], { id }: ListedGroup): ListedGroup | undefined =>
  groups.find((each) => each.id === id);
