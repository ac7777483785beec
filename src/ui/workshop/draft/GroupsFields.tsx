import { useRef, useState } from 'react';
import { draftForm as words } from '../../../copy/draft-form.ts';
import { WISH } from '../../../domain/draft/wish.ts';
import { type GroupAnswers, withGroup } from './answers.ts';
import { GroupFields } from './GroupFields.tsx';
import type { PartProps } from './TimeFields.tsx';

/** All groups, which come and go. */
export function GroupsFields({ answers, onAnswers, problem }: PartProps) {
  const [said, setSaid] = useState('');
  const list = useRef<HTMLDivElement>(null);
  const { groups } = answers;
  const put = (next: readonly GroupAnswers[]) => onAnswers({ ...answers, groups: next });
  const add = () => {
    const name = words.group(groups.length + 1);
    onAnswers(withGroup(answers, name));
    setSaid(words.added(name));
  };
  const remove = (n: number, name: string) => {
    put(groups.toSpliced(n, 1));
    setSaid(words.removed(name));
    // The button that was pressed is gone: the group that took its place is next.
    const fields = list.current?.querySelectorAll<HTMLElement>('fieldset.draft-group');
    fields?.[n === 0 ? 1 : n - 1]?.querySelector<HTMLElement>('input')?.focus();
  };
  return (
    <section className="stack rule">
      <h2>{words.groupsTitle}</h2>
      <p>{words.groupsHelp}</p>
      {problem('groups') !== undefined && <p className="draft-wrong">{problem('groups')}</p>}
      <div className="draft-groups" ref={list}>
        {groups.map((group, n) => (
          <GroupFields
            key={group.id}
            n={n + 1}
            group={group}
            problem={problem}
            onChange={(change) => put(groups.with(n, { ...group, ...change }))}
            onRemove={
              groups.length > WISH.groups.min
                ? () => remove(n, group.name.trim() || words.group(n + 1))
                : undefined
            }
          />
        ))}
      </div>
      <p role="status" className="for-readers">
        {said}
      </p>
      {groups.length < WISH.groups.max && (
        <div>
          <button type="button" className="button" onClick={add}>
            {words.add}
          </button>
        </div>
      )}
    </section>
  );
}
