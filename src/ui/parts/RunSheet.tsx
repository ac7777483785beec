import { useState } from 'react';
import { running } from '../../copy/running.ts';
import { useApp, useSession, useSettings } from '../app-context.tsx';
import { Dialog } from './Dialog.tsx';
import { KeptFocus } from './KeptFocus.tsx';
import { PressLong } from './PressLong.tsx';

interface RunSheetProps {
  readonly onClose: () => void;
  readonly onWatch?: () => void;
  readonly onHear?: () => void;
}

/** The rest of the controls, one tap away. Every one but the end closes the sheet. */
export function RunSheet({ onClose, onWatch, onHear }: RunSheetProps) {
  const app = useApp();
  const skip = useSession((s) => s.view.offers.skip);
  const back = useSession((s) => s.view.offers.back);
  const coolDown = useSession((s) => s.view.offers.coolDown);
  const dark = useSettings((s) => s.appearance === 'dark');
  const then = (action: () => void) => () => {
    action();
    onClose();
  };
  const act = () => app.session.getState();
  return (
    <Dialog name={running.more} className="sheet" onLeave={onClose}>
      <div className="stack">
        <h1 tabIndex={-1} className="big">
          {running.moreTitle}
        </h1>
        {skip && <Row name={running.skip} onClick={then(() => act().skip())} />}
        {back && <Row name={running.back} onClick={then(() => act().back())} />}
        {coolDown !== null && (
          <Row
            name={coolDown === 'jump' ? running.coolDown : running.fiveMinutes}
            onClick={then(() => act().toCoolDown())}
          />
        )}
        {onWatch && <Row name={running.watch} onClick={then(onWatch)} />}
        {onHear && <Row name={running.hear} onClick={then(onHear)} />}
        <Row
          name={dark ? running.light : running.dark}
          onClick={then(() => {
            void app.settings.getState().change({ appearance: dark ? 'light' : 'dark' });
          })}
        />
        <EndRow onEnd={then(() => act().end())} />
        <Row name={running.lessMore} onClick={onClose} />
      </div>
    </Dialog>
  );
}

function Row({ name, onClick }: { name: string; onClick: () => void }) {
  return (
    <button type="button" className="button wide" onClick={onClick}>
      {name}
    </button>
  );
}

interface EndRowProps {
  readonly onEnd: () => void;
  readonly words?: { readonly end: string; readonly endAsk: string };
}

const ownEnd = { end: running.end, endAsk: running.endAsk };

/** Ends after a press of one second; a short press asks instead. */
export function EndRow(props: EndRowProps) {
  return (
    <KeptFocus>
      <End {...props} />
    </KeptFocus>
  );
}

function End({ onEnd, words = ownEnd }: EndRowProps) {
  const [asks, setAsks] = useState(false);
  if (!asks)
    return (
      <PressLong
        className="button wide end"
        name={words.end}
        how={running.endHow}
        onLong={onEnd}
        onShort={() => setAsks(true)}
      />
    );
  return (
    <fieldset className="notice">
      <legend className="for-readers">{words.endAsk}</legend>
      <p aria-hidden="true">{words.endAsk}</p>
      <div className="row">
        <button type="button" className="button" onClick={() => setAsks(false)}>
          {running.endNo}
        </button>
        <button type="button" className="button" onClick={onEnd}>
          {running.endYes}
        </button>
      </div>
    </fieldset>
  );
}
