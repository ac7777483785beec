import { useState } from 'react';
import { nowCopy as words } from '../../copy/now.ts';
import { followingOf, pause, resume, startOn } from '../../domain/advice/decide.ts';
import type { Now } from '../../domain/advice/now.ts';
import type { Situation } from '../../domain/advice/situation.ts';
import type { Following, Pause } from '../../domain/log/following.ts';
import { isoDate, mondayOf } from '../../domain/programme/calendar.ts';
import { dayOf } from '../../domain/programme/dates.ts';
import { useApp } from '../app-context.tsx';
import { Choices } from '../parts/Choices.tsx';

const WHY = ['holiday', 'illness', 'other'] as const;

/** A pause for a holiday or an illness, the way back, and a start of one's own. */
export function Pauses({ situation, now }: { situation: Situation; now: Now }) {
  const store = useApp().following;
  const { programme, today } = situation;
  const before = situation.following ?? followingOf(programme.id);
  const change = (next: Following) => void store.getState().change(next);
  if (now.pause !== undefined)
    return (
      <div>
        <button type="button" className="button" onClick={() => change(resume(before, today))}>
          {words.resume}
        </button>
      </div>
    );
  if (now.stage === 'through') return null;
  return (
    <>
      {(now.late !== undefined || now.start !== undefined) && (
        <div>
          <button
            type="button"
            className="button"
            onClick={() => change(startOn(before, isoDate(mondayOf(dayOf(today) ?? 0))))}
          >
            {words.startNow}
          </button>
        </div>
      )}
      <TakePause today={today} onPause={(made) => change(pause(before, made))} />
    </>
  );
}

interface TakeProps {
  readonly today: string;
  readonly onPause: (made: Pause) => void;
}

function TakePause({ today, onPause }: TakeProps) {
  const [why, setWhy] = useState<Pause['why']>('holiday');
  const [until, setUntil] = useState('');
  return (
    <details>
      <summary>{words.pause}</summary>
      <form
        className="stack"
        onSubmit={(event) => {
          event.preventDefault();
          const isLater = until !== '' && until >= today;
          onPause({ from: today, why, ...(isLater && { to: until }) });
        }}
      >
        <Choices
          legend={words.pauseWhyTitle}
          options={WHY.map((value) => ({ value, name: words.pauseWhy[value] }))}
          value={why}
          onChange={setWhy}
        />
        <label className="field">
          {words.pauseUntil}
          <input
            className="line"
            type="date"
            min={today}
            value={until}
            onChange={(event) => setUntil(event.target.value)}
          />
          <span className="small soft">{words.pauseUntilHelp}</span>
        </label>
        <div>
          <button type="submit" className="button">
            {words.pause}
          </button>
        </div>
      </form>
    </details>
  );
}
