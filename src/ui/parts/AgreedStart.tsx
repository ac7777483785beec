import { type MouseEvent, useEffect, useState } from 'react';
import { agreedStart as words } from '../../copy/agreed-start.ts';
import { timeOfDay } from '../../copy/times.ts';
import { agreedTime, usualStart } from '../../domain/session/agreed-time.ts';
import { useApp } from '../app-context.tsx';
import { Dialog } from './Dialog.tsx';
import { Field } from './Field.tsx';
import { useSecondTap } from './use-second-tap.ts';

/** Beside Start: a time at which several phones begin together. */
export function AgreedStart() {
  const [open, setOpen] = useState(false);
  return (
    <>
      <button
        type="button"
        className="text-button center"
        aria-haspopup="dialog"
        onClick={() => setOpen(true)}
      >
        {words.open}
      </button>
      {open && <AgreedStartSheet onClose={() => setOpen(false)} />}
    </>
  );
}

/** How often the sheet looks whether its time is still to come. */
const LOOK_MS = 5000;

function AgreedStartSheet({ onClose }: { onClose: () => void }) {
  const app = useApp();
  const secondTap = useSecondTap();
  const offsetAt = (utc: number): number => app.clock.zoneTime(utc).offsetMinutes;
  const clockOf = (utc: number): string => timeOfDay(utc, offsetAt(utc));
  const [now, setNow] = useState(() => app.clock.now());
  const [typed, setTyped] = useState<string>();
  useEffect(() => {
    const timer = setInterval(() => setNow(app.clock.now()), LOOK_MS);
    return () => clearInterval(timer);
  }, [app]);

  const time = typed ?? clockOf(usualStart(now));
  const found = agreedTime(time, now, offsetAt);
  // Inside the tap: looked at once more, because a minute may have passed since it was drawn.
  const wait = (event: MouseEvent): void => {
    secondTap.note(event);
    const tapped = app.clock.now();
    const start = agreedTime(typed ?? clockOf(usualStart(tapped)), tapped, offsetAt);
    if (start.ok) app.session.getState().start(start.at);
    else setNow(tapped);
  };
  return (
    <Dialog name={words.title} className="sheet" onLeave={onClose}>
      <div className="stack">
        <h1 tabIndex={-1} className="big">
          {words.title}
        </h1>
        <p>{words.how}</p>
        <Field
          name={words.time}
          help={words.timeHelp}
          wrong={found.ok ? undefined : words.problem[found.code]}
        >
          {(input) => (
            <input
              {...input}
              type="time"
              value={time}
              onChange={(event) => setTyped(event.target.value)}
            />
          )}
        </Field>
        <p className="small">{words.clocks}</p>
        <button
          type="button"
          className="button primary wide"
          aria-disabled={!found.ok}
          onClick={wait}
        >
          {words.wait(found.ok ? clockOf(found.at) : time)}
        </button>
        <button type="button" className="button wide" onClick={onClose}>
          {words.close}
        </button>
      </div>
    </Dialog>
  );
}
