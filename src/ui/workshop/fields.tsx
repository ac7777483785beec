import { type ReactNode, useId, useState } from 'react';

interface LineProps {
  readonly name: string;
  readonly value: string;
  readonly onChange: (value: string) => void;
  readonly help?: ReactNode;
  readonly limit?: number;
  readonly type?: 'text' | 'date' | 'number';
  readonly onLeave?: () => void;
  readonly step?: string;
  readonly min?: string;
  /** A sentence: it may run over two lines, and is still one. */
  readonly sentence?: boolean;
}

/** A line of text, a date or a number, with its name above and its help below. */
export function LineField(props: LineProps) {
  const { name, value, onChange, help, limit, type = 'text', step, min, sentence, onLeave } = props;
  const id = useId();
  const common = {
    id,
    value,
    maxLength: limit,
    autoComplete: 'off',
    'aria-describedby': help === undefined ? undefined : `${id}-help`,
  };
  return (
    <div className="field">
      <label htmlFor={id}>{name}</label>
      {sentence ? (
        <textarea
          className="line sentence"
          rows={2}
          {...common}
          onChange={(event) => onChange(event.target.value.replace(/\s*\n\s*/g, ' '))}
        />
      ) : (
        <input
          className="line"
          type={type}
          step={step}
          min={min}
          {...common}
          onChange={(event) => onChange(event.target.value)}
          onBlur={onLeave}
        />
      )}
      {help !== undefined && (
        <div id={`${id}-help`} className="small soft">
          {help}
        </div>
      )}
    </div>
  );
}

interface SelectProps {
  readonly name: string;
  readonly value: string;
  readonly options: readonly (readonly [value: string, name: string])[];
  readonly onChange: (value: string) => void;
}

/** One of a few, as the phone's own list. */
export function SelectField({ name, value, options, onChange }: SelectProps) {
  const id = useId();
  return (
    <div className="field">
      <label htmlFor={id}>{name}</label>
      <select id={id} className="line" value={value} onChange={(e) => onChange(e.target.value)}>
        {options.map(([each, said]) => (
          <option key={each} value={each}>
            {said}
          </option>
        ))}
      </select>
    </div>
  );
}

interface DateProps {
  readonly name: string;
  readonly value: string;
  readonly onChange: (date: string) => void;
  readonly help?: ReactNode;
}

/** A day. It is taken when the field is left: while a year is typed, other years go by. */
export function DateField({ name, value, onChange, help }: DateProps) {
  const [typed, setTyped] = useState<string>();
  return (
    <LineField
      name={name}
      type="date"
      value={typed ?? value}
      onChange={setTyped}
      onLeave={() => {
        if (typed !== undefined && typed !== value) onChange(typed);
        setTyped(undefined);
      }}
      {...(help === undefined ? {} : { help })}
    />
  );
}
