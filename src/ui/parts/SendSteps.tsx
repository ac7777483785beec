import { useId, useState } from 'react';
import { Link } from 'wouter';
import type { ExchangeProblem, KeyProblem, Sending } from '../../app/exchange-contract.ts';
import { exchangeProblem, keyProblem } from '../../copy/exchange.ts';
import { lead, sending as words } from '../../copy/lead.ts';
import { type ExchangeCode, KEY_CODES } from '../../domain/exchange/problem.ts';
import type { Programme } from '../../domain/programme/programme.ts';
import type { Result } from '../../domain/result.ts';
import { useApp, usePublishing } from '../app-context.tsx';
import { ManageKeys, NeedKeys } from './LeaderKeys.tsx';
import { Screen } from './Screen.tsx';

interface StepsProps {
  readonly programme: Programme;
  /** A first wording of what changed since the last revision; empty: nothing did. */
  readonly proposed: string;
  /** Where the last revision is shown again as it went. */
  readonly again: string;
  readonly back: { readonly href: string; readonly name: string };
  readonly onSending: (sending: Sending) => void;
}

const isKeyCode = (code: string): boolean => (KEY_CODES as readonly string[]).includes(code);

/** One sentence for either kind of problem. */
const said = (problem: ExchangeProblem | KeyProblem): string =>
  isKeyCode(problem.code)
    ? keyProblem(problem as KeyProblem)
    : exchangeProblem(problem as ExchangeProblem & { code: ExchangeCode });

/** Keys and their backup first, then signing; or a copy without a signature. */
export function SendSteps({ programme, proposed, again, back, onSending }: StepsProps) {
  const store = useApp().publishing;
  const keys = usePublishing((p) => p.keys);
  const [problem, setProblem] = useState('');
  const [busy, setBusy] = useState(false);
  const isReady = keys.name === 'there' && keys.savedAt !== undefined;

  const run = async (job: Promise<Result<Sending, ExchangeProblem | KeyProblem>>) => {
    setBusy(true);
    const going = await job;
    setBusy(false);
    if (going.ok) return onSending(going.value);
    setProblem(said(going.error));
  };
  return (
    <Screen title={words.title} sub={programme.title} back={back}>
      <div role="alert">{problem !== '' && <p className="notice">{problem}</p>}</div>
      {isReady ? (
        <Publish
          programme={programme}
          proposed={proposed}
          again={again}
          busy={busy}
          onPublish={(change) =>
            void run(store.getState().publish(programme.text, change || undefined))
          }
        />
      ) : (
        <NeedKeys />
      )}
      <section className="stack rule">
        <h2>{words.unsignedTitle}</h2>
        <p className="soft">{words.unsignedHelp}</p>
        <div>
          <button
            type="button"
            className="button"
            onClick={() => void run(store.getState().unsigned(programme.text))}
          >
            {words.unsigned}
          </button>
        </div>
      </section>
      {isReady && <ManageKeys programmeId={programme.id} />}
    </Screen>
  );
}

interface PublishProps extends Pick<StepsProps, 'programme' | 'proposed' | 'again'> {
  readonly busy: boolean;
  readonly onPublish: (change: string) => void;
}

function Publish({ programme, proposed, again, busy, onPublish }: PublishProps) {
  const before = usePublishing((p) => p.sent[programme.id]);
  const [change, setChange] = useState(proposed);
  const id = useId();
  return (
    <form
      className="stack"
      onSubmit={(event) => {
        event.preventDefault();
        if (!busy) onPublish(change.trim());
      }}
    >
      <p>{words.publishHelp}</p>
      {before !== undefined && (
        <>
          {proposed === '' ? (
            <p>
              {words.unchanged(before.revision)}{' '}
              <Link href={again}>{lead.again(programme.title)}</Link>
            </p>
          ) : (
            <p>{words.before(before.revision)}</p>
          )}
          <div className="field">
            <label htmlFor={id}>{words.change}</label>
            <textarea
              id={id}
              value={change}
              maxLength={200}
              onChange={(event) => setChange(event.target.value)}
            />
            <p className="small soft">{words.changeHelp}</p>
          </div>
        </>
      )}
      <div>
        <button type="submit" className="button primary">
          {words.publish}
        </button>
      </div>
    </form>
  );
}
