import { type ReactNode, useId } from 'react';

interface TickProps {
  readonly checked: boolean;
  readonly name: ReactNode;
  readonly help?: ReactNode;
  readonly onChange: (checked: boolean) => void;
}

/** One thing that goes along or stays here. */
export function Tick({ checked, name, help, onChange }: TickProps) {
  const id = useId();
  return (
    <label className="choice start">
      <input
        type="checkbox"
        checked={checked}
        // The help is inside the label for the finger, and only described for the ear.
        aria-labelledby={`${id}-name`}
        aria-describedby={help === undefined ? undefined : `${id}-help`}
        onChange={(event) => onChange(event.target.checked)}
      />
      <span>
        <span id={`${id}-name`}>{name}</span>
        {help !== undefined && <small id={`${id}-help`}>{help}</small>}
      </span>
    </label>
  );
}
