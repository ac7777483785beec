import { useState } from 'react';
import { noLength, pieces } from '../../../copy/pieces.ts';
import { planProblem } from '../../../copy/plan.ts';
import { length } from '../../../copy/times.ts';
import type { Activity, Step } from '../../../domain/programme/plan.ts';
import { ACTIVITIES } from '../../../domain/programme/plan.ts';
import type { PiecePlace } from '../../../domain/workshop/pieces.ts';
import { changeLength, changeStep } from '../../../domain/workshop/plan-edits.ts';
import { readLength } from '../../../domain/workshop/read-length.ts';
import { type Hand, keyOf } from './hand.ts';
import { MoreButton, PieceMore } from './PieceMore.tsx';
import { StepMore } from './StepMore.tsx';

/** A step, where it lies in its plan, and its number as it is called, from 1. */
export interface StepRowProps {
  readonly step: Step;
  readonly at: PiecePlace;
  readonly number: number;
  readonly hand: Hand;
}

/** A step: how long, what, and what is seldom needed behind a button. */
export function StepRow({ step, at, number, hand }: StepRowProps) {
  const what = pieces.step(number);
  const control = (name: string): string => `${keyOf(at)} ${name}`;
  const { plan, apply } = hand;
  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset cannot be laid out in a row everywhere
    <div className="piece" role="group" aria-label={what}>
      <div className="piece-line">
        <div className="piece-amount">
          <button
            type="button"
            className="button"
            data-control={control('shorter')}
            aria-label={pieces.shorter(number, step)}
            onClick={() => apply(changeLength(plan, at, -1))}
          >
            −
          </button>
          <LengthField step={step} at={at} number={number} hand={hand} />
          <button
            type="button"
            className="button"
            data-control={control('longer')}
            aria-label={pieces.longer(number, step)}
            onClick={() => apply(changeLength(plan, at, 1))}
          >
            +
          </button>
        </div>
        <select
          value={step.activity}
          data-control={control('activity')}
          aria-label={pieces.activity(number)}
          onChange={(event) =>
            apply(changeStep(plan, at, { activity: event.target.value as Activity }))
          }
        >
          {ACTIVITIES.map((activity) => (
            <option key={activity}>{activity}</option>
          ))}
        </select>
        <MoreButton what={what} at={at} hand={hand} />
      </div>
      <PieceMore what={what} at={at} hand={hand}>
        <StepMore step={step} at={at} number={number} hand={hand} />
      </PieceMore>
    </div>
  );
}

/** A length as text: taken over when the hand leaves it, since `1` is on the way to `15 min`. */
function LengthField({ step, at, number, hand }: StepRowProps) {
  const [typed, setTyped] = useState<{ text: string; of: number }>();
  const [wrong, setWrong] = useState(false);
  const mine = typed !== undefined && typed.of === step.duration;
  const take = () => {
    if (!mine) return;
    const read = readLength(typed.text);
    setWrong(!read.ok);
    if (read.ok) {
      setTyped(undefined);
      if (read.value !== step.duration)
        hand.apply(changeStep(hand.plan, at, { duration: read.value }));
    } else hand.refuse(read.error === undefined ? noLength : planProblem(read.error));
  };
  return (
    <input
      value={mine ? typed.text : length(step.duration)}
      aria-label={pieces.length(number, step)}
      aria-invalid={mine && wrong}
      autoComplete="off"
      spellCheck={false}
      onChange={(event) => setTyped({ text: event.target.value, of: step.duration })}
      onFocus={(event) => event.target.select()}
      onBlur={take}
      onKeyDown={(event) => {
        if (event.key === 'Enter') take();
        if (event.key === 'Escape') setTyped(undefined);
      }}
    />
  );
}
