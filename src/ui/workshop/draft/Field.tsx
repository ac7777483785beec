import { useId } from 'react';

interface FieldProps {
  readonly name: string;
  readonly value: string;
  readonly onChange: (value: string) => void;
  readonly help?: string | undefined;
  /** What is wrong with it, in a sentence. */
  readonly problem?: string | undefined;
  readonly kind?: 'text' | 'number' | 'date';
}

/** One answer, with its help and what is wrong with it where a reader finds both. */
export function Field({ name, value, onChange, help, problem, kind = 'text' }: FieldProps) {
  const id = useId();
  const described = [help && `${id}-help`, problem && `${id}-wrong`].filter(Boolean).join(' ');
  return (
    <div className="field">
      <label htmlFor={id}>{name}</label>
      <input
        id={id}
        className={kind === 'number' ? 'line draft-number' : 'line'}
        type={kind === 'date' ? 'date' : 'text'}
        inputMode={kind === 'number' ? 'decimal' : undefined}
        autoComplete="off"
        value={value}
        aria-invalid={problem !== undefined}
        aria-describedby={described || undefined}
        onChange={(event) => onChange(event.target.value)}
      />
      {help !== undefined && (
        <p id={`${id}-help`} className="small soft">
          {help}
        </p>
      )}
      {problem !== undefined && (
        <p id={`${id}-wrong`} className="draft-wrong">
          {problem}
        </p>
      )}
    </div>
  );
}
