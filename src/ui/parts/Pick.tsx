import { useId } from 'react';

interface PickProps<T extends string> {
  readonly name: string;
  readonly value: T;
  readonly options: readonly (readonly [T, string])[];
  readonly onChange: (value: T) => void;
}

/** One of several, where a row of radio buttons would fill a phone. */
export function Pick<T extends string>({ name, value, options, onChange }: PickProps<T>) {
  const id = useId();
  return (
    <div className="field">
      <label htmlFor={id}>{name}</label>
      <select
        id={id}
        className="line figures"
        value={value}
        onChange={(event) => onChange(event.target.value as T)}
      >
        {options.map(([each, said]) => (
          <option key={each} value={each}>
            {said}
          </option>
        ))}
      </select>
    </div>
  );
}
