import { running } from '../../copy/running.ts';
import { minuteOf, timeOfDay } from '../../copy/times.ts';
import { useApp, useSession } from '../app-context.tsx';
import { Dialog } from './Dialog.tsx';

/** The sound stood still for a while, or stands still yet: since when, and what to do about it. */
export function GapDialog() {
  const session = useApp().session;
  const gap = useSession((s) => s.view.gap);
  const wrong = useSession((s) => s.view.wrong);
  const silent = useSession((s) => s.view.state === 'interrupted' || s.view.state === 'stalled');
  if (gap === undefined || wrong) return null;
  const minute = minuteOf(gap.position);
  const title = silent ? running.gapStillTitle : running.gapTitle;
  const stopped = timeOfDay(gap.stoppedAt);
  const answer = (value: 'go-on' | 'catch-up') => () => session.getState().afterGap(value);
  return (
    <Dialog name={title} className="sheet" onLeave={answer('go-on')}>
      <div className="stack">
        <h1 tabIndex={-1}>{title}</h1>
        <p className="figures">
          {silent
            ? running.gapStill(stopped, minute)
            : running.gap(stopped, timeOfDay(gap.cameBackAt), minute)}
        </p>
        <button type="button" className="button primary wide" onClick={answer('go-on')}>
          {running.gapGoOn(minute)}
        </button>
        <button type="button" className="button wide" onClick={answer('catch-up')}>
          {running.gapCatchUp}
        </button>
      </div>
    </Dialog>
  );
}
