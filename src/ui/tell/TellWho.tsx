import { useId } from 'react';
import { tell } from '../../copy/tell.ts';
import { RESPONSE_LIMITS } from '../../domain/exchange/response.ts';
import type { Choosing } from './choices.ts';
import { Tick } from './Tick.tsx';

/** Name and age: younger than 16, somebody grown up says yes first. */
export function TellWho({ choosing }: { choosing: Choosing }) {
  const { nameAlong, name, under16, guardian, change } = choosing;
  const id = useId();
  return (
    <section className="rule">
      <fieldset className="stack">
        <legend>{tell.who}</legend>
        <div className="choices list">
          <Tick
            checked={nameAlong}
            name={tell.nameAlong}
            help={tell.nameAlongHelp}
            onChange={(isOn) => change({ nameAlong: isOn })}
          />
        </div>
        {nameAlong && (
          <div className="field">
            <label htmlFor={id}>{tell.name}</label>
            <input
              id={id}
              className="line"
              type="text"
              autoComplete="off"
              maxLength={RESPONSE_LIMITS.name}
              value={name}
              aria-describedby={`${id}-help`}
              onChange={(event) => change({ name: event.target.value })}
            />
            <p id={`${id}-help`} className="small soft">
              {tell.nameHelp}
            </p>
          </div>
        )}
        <div className="choices list">
          <Tick
            checked={under16}
            name={tell.under16}
            help={tell.under16Help}
            onChange={(isOn) => change({ under16: isOn })}
          />
          {under16 && (
            <Tick
              checked={guardian}
              name={tell.guardian}
              onChange={(isOn) => change({ guardian: isOn })}
            />
          )}
        </div>
      </fieldset>
    </section>
  );
}
