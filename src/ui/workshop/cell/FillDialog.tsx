import { useId, useState } from 'react';
import { type Along, fill } from '../../../copy/cell-fill.ts';
import { length } from '../../../copy/times.ts';
import type { Plan } from '../../../domain/programme/plan.ts';
import { ms, msOfSeconds } from '../../../domain/units.ts';
import type { Edit, StepUp } from '../../../domain/workshop/edit.ts';
import type { CellPlace, Sheet } from '../../../domain/workshop/sheet.ts';
import { Choices } from '../../parts/Choices.tsx';
import { Dialog } from '../../parts/Dialog.tsx';
import { type PlaceAfter, placesAfter } from './places-after.ts';
import { WhatHappens } from './WhatHappens.tsx';

interface FillDialogProps {
  readonly at: CellPlace;
  readonly sheet: Sheet;
  readonly plan: Plan;
  readonly along: Along;
  readonly onEdit: (edit: Edit) => void;
  readonly onLeave: () => void;
}

type Kind = StepUp['kind'];

/** Seconds that a step up may be; below 0 for what gets shorter. */
const BY = { hard: [15, 30, 60], easy: [-15, -30] } as const;

const stepOf = (kind: Kind, seconds: number): StepUp => {
  if (kind === 'same') return { kind };
  return kind === 'sets' ? { kind, by: 1 } : { kind, by: msOfSeconds(seconds) };
};

/** Copies a session onwards: how it grows from one place to the next, how far, and what that does. */
export function FillDialog({ at, sheet, plan, along, onEdit, onLeave }: FillDialogProps) {
  const places = placesAfter(sheet, at, along);
  const [kind, setKind] = useState<Kind>('same');
  const [by, setBy] = useState({ hard: 30, easy: -15 });
  const [count, setCount] = useState(places.length);
  const step = stepOf(kind, kind === 'easy' ? by.easy : by.hard);
  return (
    <Dialog name={fill.title[along]} className="cell-sheet" onLeave={onLeave}>
      <div className="stack">
        <h1 tabIndex={-1}>{fill.title[along]}</h1>
        <Choices
          legend={fill.step}
          value={kind}
          onChange={setKind}
          options={(['same', 'hard', 'easy', 'sets'] as const).map((value) => ({
            value,
            name: fill.steps[value],
          }))}
        />
        {(kind === 'hard' || kind === 'easy') && (
          <Choices
            legend={fill.by}
            value={String(by[kind])}
            onChange={(value) => setBy({ ...by, [kind]: Number(value) })}
            options={BY[kind].map((seconds) => ({
              value: String(seconds),
              name: length(ms(Math.abs(seconds) * 1000)),
            }))}
          />
        )}
        <HowFar places={places} count={count} onCount={setCount} />
        <WhatHappens plan={plan} places={places.slice(0, count)} step={step} along={along} />
        <div className="pair">
          <button
            type="button"
            className="button"
            onClick={() => {
              onEdit({ kind: 'fill', from: at, along, count, step });
              onLeave();
            }}
          >
            {fill.copy}
          </button>
          <button type="button" className="button" onClick={onLeave}>
            {fill.cancel}
          </button>
        </div>
      </div>
    </Dialog>
  );
}

interface HowFarProps {
  readonly places: readonly PlaceAfter[];
  readonly count: number;
  readonly onCount: (count: number) => void;
}

function HowFar({ places, count, onCount }: HowFarProps) {
  const id = useId();
  return (
    <div className="field">
      <label htmlFor={id}>
        <strong>{fill.howFar}</strong>
      </label>
      <select id={id} value={count} onChange={(event) => onCount(Number(event.target.value))}>
        {places.map(({ name }, n) => (
          <option key={name} value={n + 1}>
            {fill.upTo(name, n + 1)}
          </option>
        ))}
      </select>
    </div>
  );
}
