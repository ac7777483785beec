import { useEffect } from 'react';
import { Link } from 'wouter';
import { keep as words } from '../../copy/keep.ts';
import type { Programme } from '../../domain/programme/programme.ts';
import { useApp, usePublishing } from '../app-context.tsx';
import { sentAt } from '../workshop/addresses.ts';
import { saveText } from '../workshop/use-begin.ts';
import { KeepSaid } from './KeepSaid.tsx';
import { useJob } from './keep-job.ts';

const steps = words.handSteps;

/** Step by step, what somebody needs who is to lead this programme too. */
export function KeepHand({ programme }: { programme: Programme }) {
  const publishing = useApp().publishing;
  useEffect(() => void publishing.getState().load(), [publishing]);
  const hasKeys = usePublishing((p) => p.keys.name === 'there');
  const job = useJob();
  return (
    <section className="stack rule">
      <h2>{words.hand}</h2>
      <p>{words.handBody}</p>
      <ol className="steps">
        <li className="stack tight">
          <p>{steps.link}</p>
          <div>
            <Link href={sentAt(programme.id)} className="button">
              {steps.sendAgain}
            </Link>
          </div>
        </li>
        <li className="stack tight">
          <p>{steps.keys}</p>
          {hasKeys ? (
            <div>
              <button
                type="button"
                className="button"
                onClick={() => void job.run(publishing.getState().saveBackup(), words.keysSaved)}
              >
                {steps.saveKeys}
              </button>
            </div>
          ) : (
            <p className="soft">{words.noKeys}</p>
          )}
          <KeepSaid said={job.said} />
        </li>
        <li className="stack tight">
          <p>{steps.file}</p>
          <div>
            <button
              type="button"
              className="button"
              onClick={() => saveText(`${programme.id}.json`, programme.text)}
            >
              {steps.saveFile}
            </button>
          </div>
        </li>
        <li>{steps.boards}</li>
        <li>{steps.tell}</li>
        <li>{steps.one}</li>
      </ol>
      <p>{steps.back}</p>
    </section>
  );
}
