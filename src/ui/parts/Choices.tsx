import { type ReactNode, useId } from 'react';

/** One radio button: its name, and a line of help below it. */
export interface Option<T extends string> {
  readonly value: T;
  readonly name: ReactNode;
  readonly help?: string;
}

interface ChoicesProps<T extends string> {
  readonly legend: ReactNode;
  readonly options: readonly Option<T>[];
  readonly value: T | undefined;
  readonly onChange: (value: T) => void;
  /** One below the other, with room for a line of help each. */
  readonly list?: boolean;
}

/** One of several, as radio buttons with names. */
export function Choices<T extends string>(props: ChoicesProps<T>) {
  const name = useId();
  return (
    <fieldset className="stack">
      <legend>{props.legend}</legend>
      <div className={props.list ? 'choices list' : 'choices'}>
        {props.options.map((option) => (
          <label key={option.value} className={option.help ? 'choice start' : 'choice'}>
            <input
              type="radio"
              name={name}
              checked={props.value === option.value}
              onChange={() => props.onChange(option.value)}
            />
            <span>
              {option.name}
              {option.help !== undefined && option.help !== '' && <small>{option.help}</small>}
            </span>
          </label>
        ))}
      </div>
    </fieldset>
  );
}
