import { leading as words } from '../../copy/lead-day.ts';
import { running } from '../../copy/running.ts';
import { useApp, useSession } from '../app-context.tsx';
import { useSecondTap } from '../parts/use-second-tap.ts';

/** The two that stand out: everyone stands still, or somebody needs help. */
export function LeadControls() {
  const session = useApp().session;
  const goOn = useSession((s) => s.view.offers.goOn);
  const act = () => session.getState();
  const secondTap = useSecondTap();
  return (
    <section
      className="controls lead-controls"
      aria-label={running.controls}
      onClickCapture={secondTap.drop}
    >
      <div className="controls-pair">
        {goOn ? (
          <button type="button" className="button primary" onClick={() => act().goOn()}>
            {words.goOn}
          </button>
        ) : (
          <button type="button" className="button" onClick={() => act().hold()}>
            {words.holdAll}
          </button>
        )}
        <button type="button" className="button wrong" onClick={() => act().somethingIsWrong()}>
          {words.wrong}
        </button>
      </div>
    </section>
  );
}
