import { useState } from 'react';
import type { Code, Sending } from '../../app/exchange-contract.ts';
import { sending as words } from '../../copy/lead.ts';
import { useApp } from '../app-context.tsx';
import { CodeFigure } from './CodeFigure.tsx';
import { CopyText } from './CopyText.tsx';
import { Screen } from './Screen.tsx';
import { Written } from './Written.tsx';

interface SheetProps {
  readonly sending: Sending;
  readonly back: { readonly href: string; readonly name: string };
}

/** Everything that a programme can be sent as; printed, only the title, the code and the link. */
export function SendSheet({ sending, back }: SheetProps) {
  const store = useApp().publishing;
  return (
    <Screen
      title={sending.title}
      sub={words.sheetSub(sending.revision, sending.signed)}
      back={back}
    >
      <section className="stack rule">
        <h2>{words.linkTitle}</h2>
        {sending.linkIsLocal && <p className="notice">{words.local}</p>}
        <Written name={words.linkTitle} text={sending.link} />
        <CopyText text={sending.link} name={words.link} done={words.linkCopied} />
      </section>
      <Codes codes={sending.codes} title={sending.title} />
      <section className="stack rule not-printed">
        <h2>{words.fileTitle}</h2>
        <div>
          <button
            type="button"
            className="button"
            onClick={() => void store.getState().give(sending)}
          >
            {words.file}
          </button>
        </div>
      </section>
      <section className="stack rule not-printed">
        <h2>{words.messageTitle}</h2>
        <Written name={words.messageTitle} text={sending.message} />
        <CopyText text={sending.message} name={words.message} done={words.messageCopied} />
        <CopyText text={sending.text} name={words.whole} done={words.messageCopied} />
      </section>
    </Screen>
  );
}

/** One part at a time on the screen, as large as it can be; on paper all of them. */
function Codes({ codes, title }: { codes: readonly Code[]; title: string }) {
  const [shown, setShown] = useState(0);
  return (
    <section className="stack rule">
      <h2>{words.codeTitle}</h2>
      {codes.length === 0 ? (
        <p>{words.noCode}</p>
      ) : (
        <p className="soft not-printed">{words.codeHelp}</p>
      )}
      {codes.map((code, n) => {
        const name = words.part(n + 1, codes.length);
        return <CodeFigure key={name} code={code} title={title} name={name} shown={n === shown} />;
      })}
      {codes.length > 0 && (
        <div className="row not-printed">
          {codes.length > 1 && (
            <button
              type="button"
              className="button"
              onClick={() => setShown((shown + 1) % codes.length)}
            >
              {words.next}
            </button>
          )}
          <button type="button" className="button" onClick={() => window.print()}>
            {words.print}
          </button>
        </div>
      )}
    </section>
  );
}
