import { useState } from 'react';
import { Link } from 'wouter';
import { useStore } from 'zustand';
import type { Answer, TellStore } from '../../app/tell-contract.ts';
import { answerProblem, tell } from '../../copy/tell.ts';
import type { Programme } from '../../domain/programme/programme.ts';
import { CopyText } from '../parts/CopyText.tsx';
import { Written } from '../parts/Written.tsx';
import { TellCode } from './TellCode.tsx';

interface WaysProps {
  readonly programme: Programme;
  readonly store: TellStore;
  readonly answer: Answer;
}

/** Link, message, file and code; one of them is enough. What was handed on is noted. */
export function TellWays({ programme, store, answer }: WaysProps) {
  const canShare = useStore(store, (s) => s.canShareWords);
  const [noted, setNoted] = useState<'' | 'noted' | 'taken-back'>('');
  const [problem, setProblem] = useState('');

  const note = async () => {
    const result = await store.getState().noteTold(answer);
    setProblem(result.ok ? '' : answerProblem(result.error));
    if (result.ok) setNoted('noted');
  };
  const takeBack = async () => {
    const result = await store.getState().takeBack(answer);
    setProblem(result.ok ? '' : answerProblem(result.error));
    if (result.ok) setNoted('taken-back');
  };
  const share = async () => {
    if (await store.getState().shareWords(answer.message)) await note();
  };
  const give = async () => {
    await store.getState().give(answer);
    await note();
  };
  return (
    <section className="stack rule">
      <h2>{tell.send}</h2>
      <p className="soft">{tell.sendHelp}</p>
      {answer.linkIsLocal && <p className="notice">{tell.local}</p>}
      {canShare && (
        <button type="button" className="button primary" onClick={() => void share()}>
          {tell.share}
        </button>
      )}
      <CopyText
        text={answer.message}
        name={tell.copyMessage}
        done={tell.copied}
        primary={!canShare}
        onCopied={() => void note()}
      />
      {answer.link !== undefined && (
        <CopyText
          text={answer.link}
          name={tell.copyLink}
          done={tell.copied}
          onCopied={() => void note()}
        />
      )}
      <div className="row">
        <button type="button" className="button" onClick={() => void give()}>
          {tell.file}
        </button>
      </div>
      {answer.plain === undefined && (
        <>
          <details>
            <summary>{tell.message}</summary>
            <Written name={tell.message} text={answer.message} />
          </details>
          <TellCode answer={answer} title={programme.title} onScanned={() => void note()} />
        </>
      )}
      <div role="status" className="stack">
        {noted === 'noted' && <p className="notice">{tell.noted(answer.ids.length)}</p>}
        {noted === 'taken-back' && <p>{tell.takenBack}</p>}
      </div>
      <div role="alert">{problem !== '' && <p className="notice">{problem}</p>}</div>
      {noted === 'noted' && (
        <div className="row">
          <button type="button" className="text-button" onClick={() => void takeBack()}>
            {tell.notSent}
          </button>
        </div>
      )}
      {noted !== '' && (
        <div>
          <Link href={`/p/${programme.id}`} className="button">
            {tell.toSessions}
          </Link>
        </div>
      )}
    </section>
  );
}
