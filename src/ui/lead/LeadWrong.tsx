import { HELP, STOP_SIGNS } from '../../copy/cautions.ts';
import { leading, leadWrong as words } from '../../copy/lead-day.ts';
import { wrong } from '../../copy/running.ts';
import { useApp, useSession } from '../app-context.tsx';
import { Dialog } from '../parts/Dialog.tsx';
import { EndRow } from '../parts/RunSheet.tsx';

/** "Something is wrong" with somebody of a group: all are on hold; when to get help, and how. */
export function LeadWrong() {
  const session = useApp().session;
  const open = useSession((s) => s.view.wrong);
  if (!open) return null;
  const act = () => session.getState();
  return (
    <Dialog name={wrong.title} className="cover" onLeave={() => act().allRight()}>
      <div className="stack">
        <h1 tabIndex={-1}>{wrong.title}</h1>
        <p>{words.held}</p>
        <section className="notice alarm">
          <h2>{words.signs}</h2>
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
          <p>{words.others}</p>
          <p>{words.pain}</p>
        </section>
      </div>
      <div className="foot">
        <button type="button" className="button wide" onClick={() => act().allRight()}>
          {wrong.alright}
        </button>
        <EndRow words={leading} onEnd={() => act().end()} />
      </div>
    </Dialog>
  );
}
