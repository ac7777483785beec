import type { ReactNode } from 'react';
import { HELP, STOP_SIGNS } from '../../copy/cautions.ts';
import { wrong } from '../../copy/running.ts';
import { useApp, useSession } from '../app-context.tsx';
import { Dialog } from './Dialog.tsx';

interface WrongCoverProps {
  readonly words: { readonly held: string; readonly signs: string };
  /** What to do besides getting help. */
  readonly besides: readonly string[];
  /** The ways on. */
  readonly children: ReactNode;
}

/** Over everything once something is wrong: when to get help, and how. */
export function WrongCover({ words, besides, children }: WrongCoverProps) {
  const session = useApp().session;
  const open = useSession((s) => s.view.wrong);
  if (!open) return null;
  return (
    <Dialog name={wrong.title} className="cover" onLeave={() => session.getState().allRight()}>
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
          {besides.map((line) => (
            <p key={line}>{line}</p>
          ))}
        </section>
      </div>
      <div className="foot">{children}</div>
    </Dialog>
  );
}
