import { byHand } from '../../copy/by-hand.ts';
import type { Amount } from '../../domain/log/by-hand.ts';
import { type FieldCode, readMinutes } from '../../domain/log/fields.ts';
import { ok, type Result } from '../../domain/result.ts';
import { Choices } from './Choices.tsx';
import { Field } from './Field.tsx';

/** How much was done, as answered. `minutes` is the text as typed and counts only for `part`. */
export interface AmountAnswer {
  readonly what: 'keep' | 'all' | 'part';
  readonly minutes: string;
}

/** What the answer comes to: nothing leaves it as it was. */
export const amountOf = ({ what, minutes }: AmountAnswer): Result<Amount | undefined, FieldCode> =>
  what === 'keep' ? ok(undefined) : what === 'all' ? ok('all') : readMinutes(minutes);

interface AmountFieldProps {
  readonly value: AmountAnswer;
  readonly onChange: (value: AmountAnswer) => void;
  readonly problem: FieldCode | undefined;
  /** How long the plan is, in words. */
  readonly planned: string;
  /** How much was counted, in words; nothing for a session that is new. */
  readonly counted?: string;
}

/** How much of a session was done. */
export function AmountField(props: AmountFieldProps) {
  const { value, onChange, problem, planned, counted } = props;
  const keep = { value: 'keep', name: byHand.keep, help: counted ?? '' } as const;
  return (
    <>
      <Choices
        legend={byHand.amount}
        list
        value={value.what}
        onChange={(what) => onChange({ ...value, what })}
        options={[
          ...(counted === undefined ? [] : [keep]),
          { value: 'all', name: byHand.all, help: planned },
          { value: 'part', name: byHand.part, help: byHand.partHelp },
        ]}
      />
      {value.what === 'part' && (
        <Field name={byHand.minutes} help={byHand.minutesHelp} problem={problem}>
          {(input) => (
            <input
              {...input}
              className="short"
              inputMode="decimal"
              autoComplete="off"
              value={value.minutes}
              onChange={(event) => onChange({ ...value, minutes: event.target.value })}
            />
          )}
        </Field>
      )}
    </>
  );
}
