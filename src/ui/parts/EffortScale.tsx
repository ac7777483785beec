import { useId } from 'react';
import { effortWords } from '../../copy/effort.ts';
import { felt } from '../../copy/felt.ts';
import { sentence } from '../../copy/times.ts';
import type { Percent } from '../../domain/units.ts';

/** Ratings that share their words stand on one line. */
const LINES: readonly (readonly number[])[] = [[0], [1, 2], [3, 4], [5, 6], [7, 8], [9], [10]];

interface EffortScaleProps {
  readonly value: number | undefined;
  /** What the week meant, in percent. */
  readonly target: Percent;
  readonly onChange: (value: number | undefined) => void;
}

/** 0 to 10 in our own words, harder further up, as on the strip; beside it what was meant. */
export function EffortScale({ value, target: percent, onChange }: EffortScaleProps) {
  const name = useId();
  const target = Math.round(percent / 10);
  return (
    <fieldset className="stack">
      <legend className="for-readers">{felt.effort}</legend>
      <p>{sentence(felt.target(target, effortWords(target)))}</p>
      <div className="scale">
        {[...LINES].reverse().map((line) => (
          <div key={line[0]} className="scale-line" data-target={line.includes(target)}>
            {/* Each number says these words itself. */}
            <span className="scale-words" aria-hidden="true">
              {effortWords(line[0] ?? 0)}
            </span>
            <span className="scale-numbers">
              {line.map((n) => (
                <label key={n} className="scale-number">
                  <input
                    type="radio"
                    name={name}
                    className="for-readers"
                    checked={value === n}
                    onChange={() => onChange(n)}
                    aria-label={`${n}: ${effortWords(n)}`}
                  />
                  <span aria-hidden="true">{n}</span>
                </label>
              ))}
            </span>
          </div>
        ))}
      </div>
      <p role="status" className="compare">
        {value !== undefined && comparison(value, percent)}
      </p>
    </fieldset>
  );
}

/** What a rating says beside its target. A step off is ordinary: runners rated easy days 1 above their coach (Barnes 2017, Sports Med Open 3:38). */
export function comparison(effort: number, target: Percent): string {
  // By the target itself, not as it is shown: the advice and the plots judge by that.
  const by = (effort * 10 - target) / 10;
  if (Math.abs(by) < 1) return felt.same;
  return by > 0 ? felt.harder(by) : felt.easier(-by);
}
