import { useId } from 'react';
import { felt } from '../../copy/felt.ts';
import { useDetour } from './came-from.ts';

/** A stop sign that was felt: a field of its own, answered with what to do and nothing else. */
export function WarningField({
  value,
  onChange,
}: {
  value: boolean;
  onChange: (value: boolean) => void;
}) {
  const detour = useDetour();
  const help = useId();
  return (
    <section className="stack rule" aria-label={felt.warning}>
      <h2>{felt.warning}</h2>
      <label className="choice start">
        <input
          type="checkbox"
          checked={value}
          aria-describedby={help}
          onChange={(event) => onChange(event.target.checked)}
        />
        <span>
          {felt.warningBox}
          <small id={help}>{felt.warningHelp}</small>
        </span>
      </label>
      <div role="alert">
        {value && (
          <div className="notice alarm">
            <h3>{felt.warningDoTitle}</h3>
            <ul className="bullets">
              {felt.warningDo.map((line) => (
                <li key={line}>{line}</li>
              ))}
            </ul>
          </div>
        )}
      </div>
      <button type="button" className="text-button" onClick={() => detour('/cautions')}>
        {felt.warningSigns}
      </button>
    </section>
  );
}
