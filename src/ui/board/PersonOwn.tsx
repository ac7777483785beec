import { type ReactNode, useId, useState } from 'react';
import { calledOf } from '../../copy/board.ts';
import { personPage as words } from '../../copy/board-page.ts';
import type { BoardInput, PersonRow } from '../../domain/board/board.ts';
import { type Heard, isByHand } from '../../domain/board/heard.ts';
import type { Result } from '../../domain/result.ts';
import { Pick } from '../parts/Pick.tsx';
import { useBoardStore } from './board-context.tsx';

interface PartProps {
  readonly input: BoardInput;
  readonly row: PersonRow;
}

/** Runs something that is kept, and says how it went. */
export function useKept(done: string) {
  const [said, setSaid] = useState('');
  const run = async (job: Promise<Result<unknown, unknown>>): Promise<boolean> => {
    setSaid('');
    const kept = await job;
    setSaid(kept.ok ? done : words.failed);
    return kept.ok;
  };
  return { said, run };
}

const Said = ({ said }: { said: string }) => (
  <p role="status" className="small">
    {said}
  </p>
);

const heardOf = ({ heard }: BoardInput, person: string): Heard | undefined =>
  heard.find((each) => each.person === person);

/** What the leader calls a person, and where they belong. */
export function PersonOwn({ input, row }: PartProps) {
  const { programme } = input;
  const store = useBoardStore();
  const told = heardOf(input, row.person)?.told;
  const [name, setName] = useState(row.name ?? '');
  const [group, setGroup] = useState(row.group);
  const kept = useKept(words.saved);
  const id = useId();
  const groups = programme.groups.map(({ id: each, name: said }) => [each, said] as const);
  const isGone = !programme.groups.some(({ id: each }) => each === row.group);
  const toldGroup = programme.groups.find((each) => each.id === told?.group)?.name;
  const save = () => {
    const trimmed = name.trim();
    void kept.run(
      store.getState().describe(programme.id, row.person, {
        // What they call themselves is not made the leader's own word by saving the group.
        ...(trimmed === (row.name ?? '') ? {} : { name: trimmed }),
        ...(group === row.group ? {} : { group }),
      }),
    );
  };
  return (
    <form
      className="stack rule"
      onSubmit={(event) => {
        event.preventDefault();
        save();
      }}
    >
      <h2>{words.own}</h2>
      <div className="field">
        <label htmlFor={id}>{words.name}</label>
        <input
          id={id}
          className="line"
          autoComplete="off"
          maxLength={60}
          value={name}
          aria-describedby={`${id}-help`}
          onChange={(event) => setName(event.target.value)}
        />
        <p id={`${id}-help`} className="small soft">
          {words.nameHelp(told?.name)}
        </p>
      </div>
      <Pick
        name={words.group}
        value={group}
        options={isGone ? [[row.group, row.group] as const, ...groups] : groups}
        onChange={setGroup}
      />
      {toldGroup !== undefined && <p className="small soft">{words.groupHelp(toldGroup)}</p>}
      <div>
        <button type="submit" className="button">
          {words.save}
        </button>
      </div>
      <Said said={kept.said} />
    </form>
  );
}

/** Somebody who was written in by hand has told since: who of those is it? */
export function PersonSame({ input, row, people }: PartProps & { people: readonly PersonRow[] }) {
  const store = useBoardStore();
  const [who, setWho] = useState('');
  const kept = useKept(words.saved);
  const { id } = input.programme;
  if (!row.byHand) return <Joined input={input} row={row} />;
  const told = people.filter(({ byHand }) => !byHand);
  return (
    <section className="stack rule">
      <h2>{words.same}</h2>
      <p>{words.sameHelp}</p>
      {told.length === 0 ? (
        <p className="soft">{words.sameNone}</p>
      ) : (
        <>
          <Pick
            name={words.sameWho}
            value={who}
            options={[
              ['', words.sameNobody],
              ...told.map((each) => [each.person, calledOf(each)] as const),
            ]}
            onChange={setWho}
          />
          <div>
            <button
              type="button"
              className="button"
              disabled={who === ''}
              onClick={() => void kept.run(store.getState().isSame(id, row.person, who))}
            >
              {words.sameSave}
            </button>
          </div>
        </>
      )}
      <Said said={kept.said} />
    </section>
  );
}

/** Those who were written in and turned out to be this person; each can be told apart again. */
function Joined({ input, row }: PartProps): ReactNode {
  const store = useBoardStore();
  const kept = useKept(words.saved);
  const { id } = input.programme;
  const joined = input.heard.filter((each) => isByHand(each) && each.known?.same === row.person);
  if (joined.length === 0) return null;
  return (
    <section className="stack rule">
      <h2>{words.same}</h2>
      {joined.map(({ person, known }) => {
        const name = calledOf({
          person,
          ...(known?.name === undefined ? {} : { name: known.name }),
        });
        return (
          <div key={person} className="stack tight">
            <p>{words.sameIs(name)}</p>
            <div>
              <button
                type="button"
                className="button"
                onClick={() => void kept.run(store.getState().isSame(id, person, undefined))}
              >
                {words.sameUndo(name)}
              </button>
            </div>
          </div>
        );
      })}
      <Said said={kept.said} />
    </section>
  );
}
