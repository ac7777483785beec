import { useState } from 'react';
import { pieces } from '../../../copy/pieces.ts';
import { NOTE_MAX } from '../../../domain/programme/bounds.ts';
import { DEFAULT_EFFORT } from '../../../domain/programme/plan.ts';
import { changeStep } from '../../../domain/workshop/plan-edits.ts';
import { cleanNote } from '../../../domain/workshop/step-change.ts';
import type { StepRowProps } from './StepRow.tsx';

const TENS = [10, 20, 30, 40, 50, 60, 70, 80, 90, 100];
const USUAL = 'usual';

/** What only some steps need: an effort of their own, and a note. */
export function StepMore({ step, at, number, hand }: StepRowProps) {
  const what = pieces.step(number);
  const { effort } = step;
  const efforts = effort === undefined || TENS.includes(effort) ? TENS : [effort, ...TENS];
  return (
    <>
      <label className="piece-field">
        <span>{pieces.effort}</span>
        <select
          value={effort ?? USUAL}
          aria-label={pieces.effortOf(what)}
          onChange={({ target: { value } }) =>
            hand.apply(
              changeStep(hand.plan, at, { effort: value === USUAL ? USUAL : Number(value) }),
            )
          }
        >
          <option value={USUAL}>{pieces.usual(DEFAULT_EFFORT[step.activity])}</option>
          {[...efforts]
            .sort((a, b) => a - b)
            .map((percent) => (
              <option key={percent} value={percent}>
                {pieces.percent(percent)}
              </option>
            ))}
        </select>
      </label>
      <NoteField step={step} at={at} number={number} hand={hand} />
    </>
  );
}

/** Taken over with every letter. What is typed stays as it is, the space at its end too. */
function NoteField({ step, at, number, hand }: StepRowProps) {
  const note = step.note ?? '';
  const [typed, setTyped] = useState(note);
  const shown = cleanNote(typed) === note ? typed : note;
  return (
    <label className="piece-field">
      <span>{pieces.note}</span>
      <input
        className="line"
        value={shown}
        maxLength={NOTE_MAX}
        aria-label={pieces.noteOf(pieces.step(number))}
        onChange={(event) => {
          setTyped(event.target.value);
          hand.apply(changeStep(hand.plan, at, { note: event.target.value }));
        }}
      />
    </label>
  );
}
