import { useLocation } from 'wouter';
import type { Unfinished } from '../../app/session-contract.ts';
import { agreedStart as words } from '../../copy/agreed-start.ts';
import { timeOfDay } from '../../copy/times.ts';
import { useApp } from '../app-context.tsx';

/** The app was closed or killed while a start was waited for. */
export function AgreedStartCutOff({
  unfinished,
}: {
  unfinished: Unfinished;
}): React.JSX.Element | null {
  const { clock, session } = useApp();
  const [, go] = useLocation();
  const { startedAt } = unfinished;
  const time = timeOfDay(startedAt, clock.zoneTime(startedAt).offsetMinutes);
  const missed = clock.now() >= startedAt;
  const goOn = (): void => {
    void session.getState().recover('go-on');
    go('/run');
  };
  return (
    <section className="notice" aria-label={words.cutOffTitle}>
      <p>
        <strong>{words.cutOffTitle}.</strong> {(missed ? words.cutOffMissed : words.cutOff)(time)}
      </p>
      <div className="row">
        <button type="button" className="button primary" onClick={goOn}>
          {missed ? words.goOnMissed : words.goOn}
        </button>
        <button
          type="button"
          className="button"
          onClick={() => void session.getState().recover('keep')}
        >
          {words.letGo}
        </button>
      </div>
    </section>
  );
}
