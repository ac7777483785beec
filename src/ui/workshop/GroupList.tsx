import { useRef, useState } from 'react';
import { details as words } from '../../copy/workshop.ts';
import type { Group } from '../../domain/programme/programme.ts';
import { LIMITS } from '../../domain/programme/shape.ts';
import { LineField } from './fields.tsx';
import { useEdit } from './workshop-context.tsx';

/** The groups in their order, which is also the order in which the voice numbers them. */
export function GroupList({ groups }: { groups: readonly Group[] }) {
  const edit = useEdit();
  const list = useRef<HTMLUListElement>(null);
  const remove = (id: string, n: number) => {
    edit({ kind: 'remove-group', id });
    // The button that was pressed is gone: the group beside it is next.
    const beside = list.current?.children[n === 0 ? 1 : n - 1];
    beside?.querySelector<HTMLElement>('input')?.focus();
  };
  return (
    <section className="stack rule">
      <h2>{words.groups}</h2>
      <p className="soft">{words.groupsHelp}</p>
      <ul className="stack" ref={list}>
        {groups.map(({ id, name, for: who }, n) => (
          <li key={id} className="card">
            <LineField
              name={words.groupName(n + 1)}
              value={name}
              limit={LIMITS.name}
              onChange={(value) => edit({ kind: 'group', id, change: { name: value } })}
            />
            <LineField
              name={words.groupFor(n + 1)}
              value={who}
              limit={LIMITS.sentence}
              sentence
              onChange={(value) => edit({ kind: 'group', id, change: { for: value } })}
            />
            <div className="row">
              {n > 0 && (
                <button
                  type="button"
                  className="text-button"
                  onClick={() => edit({ kind: 'move-group', id, to: n - 1 })}
                >
                  {words.up(name)}
                </button>
              )}
              {n < groups.length - 1 && (
                <button
                  type="button"
                  className="text-button"
                  onClick={() => edit({ kind: 'move-group', id, to: n + 1 })}
                >
                  {words.down(name)}
                </button>
              )}
              {groups.length > 1 && (
                <button type="button" className="text-button" onClick={() => remove(id, n)}>
                  {words.remove(name)}
                </button>
              )}
            </div>
          </li>
        ))}
      </ul>
      {groups.length < LIMITS.groups && <NewGroup />}
    </section>
  );
}

function NewGroup() {
  const edit = useEdit();
  const [name, setName] = useState('');
  const [who, setWho] = useState('');
  return (
    <form
      className="stack"
      onSubmit={(event) => {
        event.preventDefault();
        if (name.trim() === '') return;
        edit({ kind: 'add-group', name: name.trim(), for: who.trim() });
        setName('');
        setWho('');
      }}
    >
      <LineField name={words.newName} value={name} limit={LIMITS.name} onChange={setName} />
      <LineField name={words.newFor} value={who} limit={LIMITS.sentence} onChange={setWho} />
      <div>
        <button type="submit" className="button">
          {words.add}
        </button>
      </div>
    </form>
  );
}
