import { Link, useLocation } from 'wouter';
import { common } from '../../copy/common.ts';
import { inOtherApp } from '../../copy/in-other-app.ts';
import { length, place } from '../../copy/times.ts';
import { unfinished as words } from '../../copy/unfinished.ts';
import { painted } from '../after-paint.ts';
import { useApp, useDevice, useLog, useSession, useSettings, useUpdates } from '../app-context.tsx';
import { loadLater } from '../later.ts';
import { piece } from '../piece.tsx';
import { CopyText } from './CopyText.tsx';
import { isUnderWay } from './session-state.ts';

/** What cannot wait, above every page but the running one. Mostly nothing. */
export function Banners() {
  return (
    <>
      <UnderWay />
      <Unread />
      <Unsaved />
      <CutOff />
      <Embedded />
      <Update />
      <Again />
    </>
  );
}

function UnderWay() {
  const show = useSession((s) => isUnderWay(s.view.state) && s.view.purpose !== 'pocket-check');
  const [path] = useLocation();
  if (!show || path === '/run') return null;
  return (
    <div className="notice">
      <p>
        <strong>{common.underWay.title}</strong>
      </p>
      <Link href="/run" className="button primary">
        {common.underWay.go}
      </Link>
    </div>
  );
}

/** Without it, lists that could not be read would look as if everything were gone. */
function Unread() {
  const show = useLog((l) => l.unread === true);
  return (
    show && (
      <p className="notice" role="alert">
        {common.unread}
      </p>
    )
  );
}

/** An ended session or an answer waits; while a session runs, the running page says it. */
function Unsaved() {
  const answer = useLog((l) => l.unsaved === true);
  const session = useSession((s) => s.view.unsaved);
  const [path] = useLocation();
  if (!(answer || session) || path === '/run') return null;
  return (
    <p className="notice" role="alert">
      {common.unsaved}
    </p>
  );
}

function CutOff() {
  const session = useApp().session;
  const unfinished = useSession((s) => s.unfinished);
  if (unfinished === undefined) return null;
  if (unfinished.offer === 'wait') return <WaitCutOff unfinished={unfinished} />;
  const at = place(unfinished.position);
  const answer = (value: 'go-on' | 'keep') => () => void session.getState().recover(value);
  const goOn = (
    <button
      key="go-on"
      type="button"
      className={unfinished.offer === 'go-on' ? 'button primary' : 'button'}
      onClick={answer('go-on')}
    >
      {words.goOn(at)}
    </button>
  );
  const keep = (
    <button
      key="keep"
      type="button"
      className={unfinished.offer === 'keep' ? 'button primary' : 'button'}
      onClick={answer('keep')}
    >
      {words.keep}
    </button>
  );
  return (
    <section className="notice" aria-label={words.title}>
      <p>
        <strong>{words.title}.</strong> {words.body(at, length(unfinished.total))}
      </p>
      <p className="small">{words.goOnHelp}</p>
      <div className="row">{unfinished.offer === 'go-on' ? [goOn, keep] : [keep, goOn]}</div>
    </section>
  );
}

function Embedded() {
  const embedded = useDevice((d) => d.embedded);
  const platform = useDevice((d) => d.platform);
  if (!embedded) return null;
  const words = inOtherApp;
  return (
    <section className="notice" aria-label={words.title}>
      <p>
        <strong>{words.title}.</strong> {words.body}
      </p>
      <p>{platform === 'ios' ? words.ios : words.android}</p>
      <CopyText text={location.href} name={words.copy} done={words.copied} />
    </section>
  );
}

function Update() {
  const waiting = useUpdates((u) => u.waiting);
  const updates = useApp().updates;
  if (!waiting) return null;
  return (
    <div className="notice">
      <p>{common.update.waiting}</p>
      <button type="button" className="button" onClick={() => updates.getState().apply()}>
        {common.update.apply}
      </button>
    </div>
  );
}

// Without the piece there is no question; the page stands.
const noPart = () => () => null;
const behind = () => painted().then(loadLater);
const AskAgain = piece(() => behind().then((screens) => screens.AskAgain, noPart));
const WaitCutOff = piece(() => behind().then((screens) => screens.AgreedStartCutOff, noPart));

/** Only for those who wish it. */
function Again() {
  const wished = useSettings((s) => s.askAgain);
  return wished && <AskAgain />;
}
