import { ARRIVE } from '../../../copy/draft.ts';
import { draftForm as words } from '../../../copy/draft-form.ts';
import { ARRIVALS, type WishField } from '../../../domain/draft/wish.ts';
import { Choices } from '../../parts/Choices.tsx';
import type { GroupAnswers } from './answers.ts';
import { Field } from './Field.tsx';

interface GroupFieldsProps {
  readonly n: number;
  readonly group: GroupAnswers;
  readonly problem: (field: WishField, group: string) => string | undefined;
  readonly onChange: (change: Partial<GroupAnswers>) => void;
  /** Left out for the last one that is left. */
  readonly onRemove?: (() => void) | undefined;
}

/** What one group can do today and where it should arrive. */
export function GroupFields({ n, group, problem, onChange, onRemove }: GroupFieldsProps) {
  const name = group.name.trim() || words.group(n);
  const wrong = (field: WishField) => problem(field, group.id);
  return (
    <fieldset className="draft-group">
      <legend>{words.group(n)}</legend>
      <Field
        name={words.name}
        value={group.name}
        problem={wrong('name')}
        onChange={(value) => onChange({ name: value })}
      />
      <div className="draft-pair">
        <Field
          kind="number"
          name={words.walk}
          value={group.walk}
          problem={wrong('walk')}
          onChange={(walk) => onChange({ walk })}
        />
        <Field
          kind="number"
          name={words.run}
          help={words.runHelp}
          value={group.run}
          problem={wrong('run')}
          onChange={(run) => onChange({ run })}
        />
      </div>
      <Choices
        legend={words.arrive}
        value={group.arrive}
        onChange={(arrive) => onChange({ arrive })}
        options={ARRIVALS.map((value) => {
          const [option, help] = ARRIVE[value];
          return { value, name: option, help };
        })}
      />
      {onRemove !== undefined && (
        <button type="button" className="text-button" onClick={onRemove}>
          {words.remove(name)}
        </button>
      )}
    </fieldset>
  );
}
