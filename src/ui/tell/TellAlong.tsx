import { tell } from '../../copy/tell.ts';
import type { Choosing } from './choices.ts';
import { Tick } from './Tick.tsx';

/** What goes along with the sessions. Only what one of them has is asked for. */
export function TellAlong({ choosing }: { choosing: Choosing }) {
  const { has, change } = choosing;
  const hasSome = has.niggles || has.warningSigns || has.notes;
  return (
    <section className="rule">
      <fieldset className="stack">
        <legend>{tell.more}</legend>
        {!hasSome && <p className="soft">{tell.nothingMore}</p>}
        <div className="choices list">
          {has.warningSigns && (
            <Tick
              checked={choosing.warningSigns}
              name={tell.warningSigns}
              help={tell.warningSignsHelp}
              onChange={(warningSigns) => change({ warningSigns })}
            />
          )}
          {has.niggles && (
            <Tick
              checked={choosing.niggles}
              name={tell.niggles}
              help={tell.nigglesHelp}
              onChange={(niggles) => change({ niggles })}
            />
          )}
          {has.notes && (
            <Tick
              checked={choosing.notes}
              name={tell.notes}
              help={tell.notesHelp}
              onChange={(notes) => change({ notes })}
            />
          )}
        </div>
      </fieldset>
    </section>
  );
}
