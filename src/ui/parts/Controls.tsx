import { useState } from 'react';
import { running } from '../../copy/running.ts';
import { useApp, useSession } from '../app-context.tsx';
import { useKeptFocus } from './KeptFocus.tsx';
import { RunSheet } from './RunSheet.tsx';
import { useSecondTap } from './use-second-tap.ts';

/** Three controls that stand out, an undo while it counts, and the way to the rest. */
export function Controls({ onWatch, onHear }: { onWatch?: () => void; onHear?: () => void }) {
  const session = useApp().session;
  const [open, setOpen] = useState(false);
  const hold = useSession((s) => s.view.offers.hold);
  const goOn = useSession((s) => s.view.offers.goOn);
  const act = () => session.getState();
  const group = useKeptFocus<HTMLElement>();
  const secondTap = useSecondTap();
  return (
    <section
      ref={group}
      className="controls"
      aria-label={running.controls}
      onClickCapture={secondTap.drop}
    >
      <Undo />
      <div className="controls-pair">
        {/* One button of two names: the focus stays on it when it is pressed by a key. */}
        {(goOn || hold) && (
          <button
            type="button"
            className={goOn ? 'button primary' : 'button'}
            onClick={() => (goOn ? act().goOn() : act().hold())}
          >
            {goOn ? running.goOn : running.hold}
          </button>
        )}
        <Fitting />
      </div>
      <div className="controls-pair uneven">
        <button type="button" className="button wrong" onClick={() => act().somethingIsWrong()}>
          {running.wrong}
        </button>
        <button
          type="button"
          className="button more"
          aria-haspopup="dialog"
          onClick={() => setOpen(true)}
        >
          {running.more}
        </button>
      </div>
      {open && (
        <RunSheet
          onClose={() => setOpen(false)}
          {...(onWatch ? { onWatch } : {})}
          {...(onHear ? { onHear } : {})}
        />
      )}
    </section>
  );
}

/** The control that fits the moment: to walk now, or to walk a minute more. */
function Fitting() {
  const session = useApp().session;
  const walkNow = useSession((s) => s.view.offers.walkNow);
  const oneMore = useSession((s) => s.view.offers.oneMore);
  if (walkNow)
    return (
      <button type="button" className="button" onClick={() => session.getState().walkNow()}>
        {running.walkNow}
      </button>
    );
  if (oneMore)
    return (
      <button type="button" className="button" onClick={() => session.getState().oneMore()}>
        {running.oneMore}
      </button>
    );
  return null;
}

function Undo() {
  const session = useApp().session;
  const undo = useSession((s) => s.view.offers.undo);
  if (undo === null) return null;
  return (
    <button type="button" className="button undo" onClick={() => session.getState().undo()}>
      {undo === 'skip' ? running.undoSkip : running.undoWalk}
    </button>
  );
}
