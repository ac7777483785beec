import { useState } from 'react';
import type { RestorePreview } from '../../app/records-contract.ts';
import {
  aboutFile,
  changesOf,
  notTakenLines,
  notTakenTitle,
  restoreProblem,
  records as words,
} from '../../copy/records.ts';
import { useApp } from '../app-context.tsx';
import { useDateAt } from './date-at.ts';
import { PickFile } from './PickFile.tsx';
import { TakeIn } from './TakeIn.tsx';

type Step =
  | { readonly name: 'choose'; readonly said: string }
  | { readonly name: 'preview'; readonly preview: RestorePreview; readonly said: string }
  | { readonly name: 'done'; readonly preview: RestorePreview };

/** A backup is chosen, looked at, and taken in only on the person's word. */
export function RestoreFile() {
  const records = useApp().records;
  const [step, setStep] = useState<Step>({ name: 'choose', said: '' });
  const open = async (file: File) => {
    setStep({ name: 'choose', said: words.working });
    try {
      const opened = await (await records()).open(file);
      setStep(
        opened.ok
          ? { name: 'preview', preview: opened.value, said: '' }
          : { name: 'choose', said: restoreProblem(opened.error.code) },
      );
    } catch {
      setStep({ name: 'choose', said: words.notLoaded });
    }
  };
  const take = async (preview: RestorePreview) => {
    setStep({ name: 'preview', preview, said: words.working });
    try {
      const taken = await (await records()).restore();
      setStep(
        taken.ok
          ? { name: 'done', preview: taken.value }
          : { name: 'preview', preview, said: restoreProblem(taken.error.code) },
      );
    } catch {
      setStep({ name: 'preview', preview, said: words.notLoaded });
    }
  };
  const said = step.name === 'done' ? words.done : step.said;
  return (
    <section className="stack rule">
      <h2>{words.restore}</h2>
      <p>{words.restoreBody}</p>
      <div role="alert">{said !== '' && <p className="notice">{said}</p>}</div>
      {step.name === 'preview' && (
        <Preview
          preview={step.preview}
          onTake={() => void take(step.preview)}
          onLeave={() => setStep({ name: 'choose', said: '' })}
        />
      )}
      {step.name === 'done' && <NotTaken preview={step.preview} />}
      {step.name !== 'preview' && (
        <PickFile
          name={step.name === 'done' ? words.chooseOther : words.choose}
          accept=".json,.txt,application/json,text/plain"
          onPick={(file) => void open(file)}
        />
      )}
    </section>
  );
}

interface PreviewProps {
  readonly preview: RestorePreview;
  readonly onTake: () => void;
  readonly onLeave: () => void;
}

function Preview({ preview, onTake, onLeave }: PreviewProps) {
  const dateAt = useDateAt();
  const isNews = preview.report.some(({ added, changed }) => added + changed > 0);
  return (
    <TakeIn words={words} isNews={isNews} onTake={onTake} onLeave={onLeave}>
      {aboutFile(preview, dateAt).map((line) => (
        <p key={line}>{line}</p>
      ))}
      <dl className="pairs">
        {changesOf(preview.report).map(({ store, name, line }) => (
          <div key={store}>
            <dt>{name}</dt>
            <dd>{line}</dd>
          </div>
        ))}
      </dl>
      <NotTaken preview={preview} />
    </TakeIn>
  );
}

function NotTaken({ preview }: { preview: RestorePreview }) {
  const lines = notTakenLines(preview.notTaken);
  if (lines.length === 0) return null;
  return (
    <>
      <h3>{notTakenTitle}</h3>
      <ul className="bullets">
        {lines.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </>
  );
}
