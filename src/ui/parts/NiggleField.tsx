import { felt } from '../../copy/felt.ts';
import { PLACE, SIDE } from '../../copy/words.ts';
import { NIGGLE_PLACES, type NigglePlace } from '../../domain/log/entry.ts';
import { Choices } from './Choices.tsx';

export interface NiggleAnswer {
  readonly has?: 'yes' | 'no';
  readonly place?: NigglePlace;
  readonly side?: 'left' | 'right' | 'both';
}

interface NiggleFieldProps {
  readonly value: NiggleAnswer;
  readonly onChange: (value: NiggleAnswer) => void;
}

const SIDES = ['left', 'right', 'both'] as const;

/** Pain in one place, told apart from ordinary soreness; where, and on which side. */
export function NiggleField({ value, onChange }: NiggleFieldProps) {
  return (
    <section className="stack rule">
      <Choices
        legend={felt.niggle}
        list
        value={value.has}
        onChange={(has) => onChange(has === 'no' ? { has } : { ...value, has })}
        options={[
          { value: 'no', name: felt.niggleNo, help: felt.niggleNoHelp },
          { value: 'yes', name: felt.niggleYes, help: felt.niggleYesHelp },
        ]}
      />
      {value.has === 'yes' && (
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
          <p className="notice">{felt.niggleDo}</p>
        </>
      )}
    </section>
  );
}
