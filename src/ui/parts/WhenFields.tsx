import { byHand } from '../../copy/by-hand.ts';
import type { FieldCode } from '../../domain/log/fields.ts';
import { Field } from './Field.tsx';

/** When a session began, as it stands in the two fields. */
export interface WhenAnswer {
  /** ISO 8601, or empty. */
  readonly date: string;
  /** `HH:MM`, or empty. */
  readonly time: string;
}

interface WhenFieldsProps {
  readonly value: WhenAnswer;
  readonly onChange: (value: WhenAnswer) => void;
  readonly problem: FieldCode | undefined;
  /** The latest day that can be chosen, ISO 8601. */
  readonly today: string;
  /** Said when it is not the zone of the phone. */
  readonly zone: string | undefined;
}

/** Day and time, by the clocks of the place where the session began. */
export function WhenFields({ value, onChange, problem, today, zone }: WhenFieldsProps) {
  const isOfDate = problem?.startsWith('date') ?? false;
  return (
    <div className="fields">
      <Field name={byHand.date} problem={isOfDate ? problem : undefined}>
        {(input) => (
          <input
            {...input}
            type="date"
            value={value.date}
            max={today}
            onChange={(event) => onChange({ ...value, date: event.target.value })}
          />
        )}
      </Field>
      <Field
        name={byHand.time}
        problem={isOfDate ? undefined : problem}
        {...(zone === undefined ? {} : { help: byHand.zone(zone) })}
      >
        {(input) => (
          <input
            {...input}
            type="time"
            value={value.time}
            onChange={(event) => onChange({ ...value, time: event.target.value })}
          />
        )}
      </Field>
    </div>
  );
}
