import { useState } from 'react';
import { attendance as words } from '../../copy/attendance.ts';
import { boardProblem } from '../../copy/keep.ts';
import { RESPONSE_LIMITS } from '../../domain/exchange/response.ts';
import type { Programme } from '../../domain/programme/programme.ts';
import { Dialog } from '../parts/Dialog.tsx';
import { Field } from '../parts/Field.tsx';
import { useOneAtATime } from '../parts/use-one-at-a-time.ts';
import { SelectField } from '../workshop/fields.tsx';
import { useBoardStore } from './board-context.tsx';
import type { ListedGroup } from './list-people.ts';

interface AddProps {
  readonly programme: Programme;
  readonly groups: readonly ListedGroup[];
  readonly onAdded: (person: string) => void;
  readonly onClose: () => void;
}

/** Somebody who is not on the list yet, with their group; added and ticked in one go. */
export function ListAdd({ programme, groups, onAdded, onClose }: AddProps) {
  const store = useBoardStore();
  const [name, setName] = useState('');
  const [group, setGroup] = useState(programme.groups[0]?.id ?? '');
  const [wrong, setWrong] = useState<string>();
  const [added, setAdded] = useState('');
  const known = knownAs(groups, name);
  const add = useOneAtATime(async () => {
    const said = name.trim();
    if (said === '') return setWrong(words.nameNeeded);
    const made = await store.getState().addPerson(programme.id, { name: said, group });
    if (!made.ok) return setWrong(boardProblem(made.error));
    setWrong(undefined);
    setAdded(said);
    setName('');
    onAdded(made.value);
  });
  return (
    <Dialog name={words.addTitle} className="sheet" onLeave={onClose}>
      <form
        className="stack"
        onSubmit={(event) => {
          event.preventDefault();
          void add();
        }}
      >
        <h1 tabIndex={-1}>{words.addTitle}</h1>
        <Field name={words.name} help={words.nameHelp} wrong={wrong}>
          {(input) => (
            <input
              {...input}
              className="line"
              value={name}
              maxLength={RESPONSE_LIMITS.name}
              autoComplete="off"
              onChange={(event) => {
                setName(event.target.value);
                setWrong(undefined);
              }}
            />
          )}
        </Field>
        <p role="status">
          {known !== undefined ? known : added !== '' && name === '' ? words.added(added) : ''}
        </p>
        <SelectField
          name={words.group}
          value={group}
          options={programme.groups.map((each) => [each.id, each.name])}
          onChange={setGroup}
        />
        <div className="pair">
          <button type="submit" className="button primary">
            {words.addYes}
          </button>
          <button type="button" className="button" onClick={onClose}>
            {added === '' ? words.addNo : words.addDone}
          </button>
        </div>
      </form>
    </Dialog>
  );
}

/** Whether somebody of that name is on the list, in a sentence. */
function knownAs(groups: readonly ListedGroup[], name: string): string | undefined {
  const said = name.trim().toLocaleLowerCase();
  if (said === '') return undefined;
  for (const group of groups) {
    const same = group.people.find((each) => each.name?.toLocaleLowerCase() === said);
    if (same?.name !== undefined) return words.known(same.name, group.name);
  }
  return undefined;
}
