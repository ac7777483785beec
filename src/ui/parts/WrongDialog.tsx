import { HELP, STOP_SIGNS } from '../../copy/cautions.ts';
import { wrong } from '../../copy/running.ts';
import { useApp, useSession } from '../app-context.tsx';
import { Dialog } from './Dialog.tsx';
import { EndRow } from './RunSheet.tsx';

/** "Something is wrong": the session is on hold; when to get help, and how. */
export function WrongDialog() {
  const session = useApp().session;
  const open = useSession((s) => s.view.wrong);
  const coolDown = useSession((s) => s.view.offers.coolDown);
  if (!open) return null;
  const act = () => session.getState();
  return (
    <Dialog name={wrong.title} className="cover" onLeave={() => act().allRight()}>
      <div className="stack">
        <h1 tabIndex={-1}>{wrong.title}</h1>
        <p>{wrong.held}</p>
        <section className="notice alarm">
          <h2>{wrong.signs}</h2>
          <ul className="bullets">
            {STOP_SIGNS.map((sign) => (
              <li key={sign}>{sign}</li>
            ))}
          </ul>
        </section>
        <section className="stack">
          <h2>{wrong.help}</h2>
          <ol className="steps">
            {HELP.map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ol>
          <p>{wrong.pain}</p>
        </section>
      </div>
      <div className="foot">
        <div className="pair">
          <button type="button" className="button" onClick={() => act().allRight()}>
            {wrong.alright}
          </button>
          {coolDown !== null && (
            <button
              type="button"
              className="button"
              onClick={() => {
                act().allRight();
                act().toCoolDown();
              }}
            >
              {wrong.coolDown}
            </button>
          )}
        </div>
        <EndRow onEnd={() => act().end()} />
      </div>
    </Dialog>
  );
}
