import { felt } from '../../copy/felt.ts';
import { PLACE, SIDE } from '../../copy/words.ts';
import {
  type Feeling,
  NIGGLE_PLACES,
  type NigglePlace,
  type Severity,
} from '../../domain/log/entry.ts';
import { Choices } from './Choices.tsx';

/** What was answered about pain, half answers too; `niggleOf` says what of it is kept. */
export interface NiggleAnswer {
  readonly has?: 'no' | 'sore' | 'yes';
  readonly place?: NigglePlace;
  readonly side?: 'left' | 'right' | 'both';
  readonly severity?: Severity;
  /** Ordinary soreness beside a niggle. */
  readonly alsoSore?: boolean;
}

/** The answer that an entry's niggle and soreness come from. */
export function niggleAnswer({ niggle, soreness }: Feeling): NiggleAnswer {
  if (niggle !== undefined) return { has: 'yes', ...niggle, alsoSore: soreness === true };
  return soreness ? { has: 'sore' } : {};
}

/** What an answer says: a place without pain is no niggle, and soreness is never one. */
export function niggleOf(answer: NiggleAnswer): Pick<Feeling, 'niggle' | 'soreness'> {
  const { has, place, side, severity, alsoSore } = answer;
  const niggle = has === 'yes' && place !== undefined;
  return {
    ...(niggle
      ? {
          niggle: {
            place,
            ...(side === undefined ? {} : { side }),
            ...(severity === undefined ? {} : { severity }),
          },
        }
      : {}),
    ...(has === 'sore' || (has === 'yes' && alsoSore) ? { soreness: true as const } : {}),
  };
}

interface NiggleFieldProps {
  readonly value: NiggleAnswer;
  readonly onChange: (value: NiggleAnswer) => void;
}

const SIDES = ['left', 'right', 'both'] as const;
const SEVERITIES = ['1', '2', '3'] as const;

/** Pain in one place, told apart from ordinary soreness; where, which side, and how bad. */
export function NiggleField({ value, onChange }: NiggleFieldProps) {
  return (
    <section className="stack rule">
      <Choices
        legend={felt.niggle}
        list
        value={value.has}
        onChange={(has) => onChange(has === 'yes' ? { ...value, has } : { has })}
        options={[
          { value: 'no', name: felt.niggleNo },
          { value: 'sore', name: felt.onlySore, help: felt.onlySoreHelp },
          { value: 'yes', name: felt.niggleYes, help: felt.niggleYesHelp },
        ]}
      />
      {value.has === 'yes' && <Niggle value={value} onChange={onChange} />}
    </section>
  );
}

function Niggle({ value, onChange }: NiggleFieldProps) {
  return (
    <>
      <Choices
        legend={felt.where}
        value={value.place}
        onChange={(place) => onChange({ ...value, place })}
        options={NIGGLE_PLACES.map((place) => ({ value: place, name: PLACE[place] }))}
      />
      <Choices
        legend={felt.side}
        value={value.side}
        onChange={(side) => onChange({ ...value, side })}
        options={SIDES.map((side) => ({ value: side, name: SIDE[side] }))}
      />
      <Choices
        legend={felt.severity}
        list
        value={value.severity === undefined ? undefined : (`${value.severity}` as const)}
        onChange={(text) => onChange({ ...value, severity: Number(text) as Severity })}
        options={SEVERITIES.map((text) => {
          const [name, help] = felt.severities[text];
          return { value: text, name, help };
        })}
      />
      <label className="choice">
        <input
          type="checkbox"
          checked={value.alsoSore ?? false}
          onChange={(event) => onChange({ ...value, alsoSore: event.target.checked })}
        />
        <span>{felt.alsoSore}</span>
      </label>
      <p className="notice">{value.severity === 3 ? felt.niggleStop : felt.niggleDo}</p>
    </>
  );
}
