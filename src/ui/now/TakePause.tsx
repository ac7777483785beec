import { useState } from 'react';
import { nowCopy as words } from '../../copy/now.ts';
import type { Pause } from '../../domain/log/following.ts';
import { dayOf } from '../../domain/programme/dates.ts';
import { Choices } from '../parts/Choices.tsx';
import { Field, toFirstProblem } from '../parts/Field.tsx';

const WHY = ['holiday', 'illness', 'other'] as const;

interface TakeProps {
  /** ISO 8601 */
  readonly today: string;
  readonly onPause: (made: Pause) => void;
}

/** A pause that began today or before, until a day that is known or not. */
export function TakePause({ today, onPause }: TakeProps) {
  const [why, setWhy] = useState<Pause['why']>('holiday');
  const [since, setSince] = useState<string>();
  const [until, setUntil] = useState('');
  const from = since ?? today;
  const wrongSince = dayOf(from) === undefined || from > today ? words.pauseSinceWrong : undefined;
  const wrongUntil = until !== '' && until < today ? words.pauseUntilWrong : undefined;
  const take = () => {
    if (wrongSince !== undefined || wrongUntil !== undefined) toFirstProblem();
    else onPause({ from, why, ...(until !== '' && { to: until }) });
  };
  return (
    <details>
      <summary>{words.pause}</summary>
      <form
        className="stack"
        noValidate
        onSubmit={(event) => {
          event.preventDefault();
          take();
        }}
      >
        <Choices
          legend={words.pauseWhyTitle}
          options={WHY.map((value) => ({ value, name: words.pauseWhy[value] }))}
          value={why}
          onChange={setWhy}
        />
        <Field name={words.pauseSince} wrong={wrongSince}>
          {(input) => (
            <input
              {...input}
              type="date"
              max={today}
              value={from}
              onChange={(event) => setSince(event.target.value)}
            />
          )}
        </Field>
        <Field name={words.pauseUntil} help={words.pauseUntilHelp} wrong={wrongUntil}>
          {(input) => (
            <input
              {...input}
              type="date"
              min={today}
              value={until}
              onChange={(event) => setUntil(event.target.value)}
            />
          )}
        </Field>
        <div>
          <button type="submit" className="button">
            {words.pauseBegin}
          </button>
        </div>
      </form>
    </details>
  );
}
