import { nowCopy as words } from '../../copy/now.ts';
import { followingOf, pause, resume, startOn } from '../../domain/advice/decide.ts';
import type { Now } from '../../domain/advice/now.ts';
import type { Situation } from '../../domain/advice/situation.ts';
import type { Following } from '../../domain/log/following.ts';
import { isoDate, mondayOf } from '../../domain/programme/calendar.ts';
import { dayOf } from '../../domain/programme/dates.ts';
import { useApp } from '../app-context.tsx';
import { TakePause } from './TakePause.tsx';

interface PausesProps {
  readonly situation: Situation;
  readonly now: Now;
  /** Something was decided: what was pressed may be gone. */
  readonly onDecided: () => void;
}

/** A pause for a holiday or an illness, the way back, and a start of one's own. */
export function Pauses({ situation, now, onDecided }: PausesProps) {
  const store = useApp().following;
  const { programme, today } = situation;
  const before = situation.following ?? followingOf(programme.id);
  const change = async (next: Following) => {
    await store.getState().change(next);
    onDecided();
  };
  if (now.pause !== undefined)
    return <Act name={words.resume} onAct={() => void change(resume(before, today))} />;
  if (now.stage === 'through') return null;
  const mayBegin = now.care === undefined && (now.late !== undefined || now.start !== undefined);
  const monday = isoDate(mondayOf(dayOf(today) ?? 0));
  return (
    <>
      {mayBegin && <Act name={words.startNow} onAct={() => void change(startOn(before, monday))} />}
      <TakePause today={today} onPause={(made) => void change(pause(before, made))} />
    </>
  );
}

function Act({ name, onAct }: { name: string; onAct: () => void }) {
  return (
    <div>
      <button type="button" className="button" onClick={onAct}>
        {name}
      </button>
    </div>
  );
}
