import { before } from '../../copy/before.ts';
import { leadDay as words } from '../../copy/lead-day.ts';
import { useApp } from '../app-context.tsx';
import { Tick } from '../tell/Tick.tsx';
import type { ChoiceProps } from './ChooseSession.tsx';

interface SoundFieldsProps extends ChoiceProps {
  readonly silent: boolean;
  readonly onSilent: (silent: boolean) => void;
}

/** What the loudspeaker needs, or that there is none. */
export function SoundFields({ choice, onChange, silent, onSilent }: SoundFieldsProps) {
  const session = useApp().session;
  return (
    <section className="stack rule">
      <h2>{words.sound}</h2>
      <p>{silent ? words.silentWords : words.soundWords}</p>
      {!silent && (
        <Tick
          checked={choice.tick}
          name={words.tick}
          help={words.tickHelp}
          onChange={(tick) => onChange({ ...choice, tick })}
        />
      )}
      <div className="row">
        {!silent && (
          <button
            type="button"
            className="button"
            title={before.playCueHelp}
            onClick={() => session.getState().playCueNow()}
          >
            {before.playCue}
          </button>
        )}
        <button type="button" className="text-button" onClick={() => onSilent(!silent)}>
          {silent ? words.goSound : words.goSilent}
        </button>
      </div>
    </section>
  );
}
