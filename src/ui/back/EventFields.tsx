import { useId } from 'react';
import { event } from '../../copy/event.ts';
import { Pick } from '../parts/Pick.tsx';
import type { Given } from './reckon.ts';

/** Paces in steps of a quarter of a minute, seconds for a kilometre. */
const stepsBetween = (from: number, to: number): readonly number[] =>
  Array.from({ length: (to - from) / 15 + 1 }, (_, n) => from + n * 15);
const WALKS = stepsBetween(480, 1200);
const RUNS = stepsBetween(240, 720);

interface FieldsProps {
  readonly given: Given;
  readonly onChange: (part: Partial<Given>) => void;
}

/** A group that only walks is not asked how fast it runs. */
export function OwnPaces({ given, onChange, runs }: FieldsProps & { readonly runs: boolean }) {
  return (
    <>
      <Pace
        name={event.walkPace}
        paces={WALKS}
        value={given.walk}
        onChange={(walk) => onChange({ walk })}
      />
      {runs && (
        <Pace
          name={event.runPace}
          paces={RUNS}
          value={given.run}
          onChange={(run) => onChange({ run })}
        />
      )}
    </>
  );
}

interface PaceProps {
  readonly name: string;
  readonly paces: readonly number[];
  readonly value: number;
  readonly onChange: (pace: number) => void;
}

const Pace = ({ name, paces, value, onChange }: PaceProps) => (
  <Pick
    name={name}
    value={String(value)}
    options={paces.map((pace) => [String(pace), event.pace(pace)])}
    onChange={(pace) => onChange(Number(pace))}
  />
);

/** Two fields, metres and the time they took, as typed: `reckon` reads them, or asks for them. */
export function Trial({ given, onChange }: FieldsProps) {
  const id = useId();
  return (
    <>
      <div className="field">
        <label htmlFor={`${id}-metres`}>{event.trialMetres}</label>
        <input
          id={`${id}-metres`}
          className="line short figures"
          inputMode="decimal"
          autoComplete="off"
          value={given.trialMetres}
          onChange={({ target }) => onChange({ trialMetres: target.value })}
        />
      </div>
      <div className="field">
        <label htmlFor={`${id}-time`}>{event.trialTime}</label>
        <input
          id={`${id}-time`}
          className="line short figures"
          autoComplete="off"
          aria-describedby={`${id}-help`}
          value={given.trialTime}
          onChange={({ target }) => onChange({ trialTime: target.value })}
        />
        <p className="small soft" id={`${id}-help`}>
          {event.trialTimeHelp}
        </p>
      </div>
    </>
  );
}
