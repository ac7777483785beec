import { useState } from 'react';
import type { KeyProblem } from '../../app/exchange-contract.ts';
import { keyProblem } from '../../copy/exchange.ts';
import { leaderKeys as words } from '../../copy/lead.ts';
import { day } from '../../copy/times.ts';
import type { Result } from '../../domain/result.ts';
import { useApp, usePublishing } from '../app-context.tsx';
import { useDateAt } from './date-at.ts';
import { Passphrase } from './Passphrase.tsx';
import { PickFile } from './PickFile.tsx';

/** Runs one thing at a time and says how it went. */
function useJob() {
  const [said, setSaid] = useState('');
  const run = async (job: Promise<Result<void, KeyProblem>>) => {
    setSaid(words.working);
    const result = await job;
    setSaid(result.ok ? words.done : keyProblem(result.error));
  };
  return { said, run };
}

const Said = ({ said }: { said: string }) => (
  <div role="alert">{said !== '' && <p className="notice">{said}</p>}</div>
);

/** Before the first publishing: keys with their backup, or keys from a backup. */
export function NeedKeys() {
  const store = useApp().publishing;
  const keys = usePublishing((p) => p.keys);
  const job = useJob();
  if (keys.name === 'unknown') return <p role="status">{words.working}</p>;
  if (keys.name === 'there')
    return (
      <section className="stack">
        <h2>{words.saveTitle}</h2>
        <p>{words.saveBody}</p>
        <Said said={job.said} />
        <div>
          <button
            type="button"
            className="button primary"
            onClick={() => void job.run(store.getState().saveBackup())}
          >
            {words.save}
          </button>
        </div>
      </section>
    );
  return (
    <section className="stack">
      <h2>{words.title}</h2>
      <p>{words.why}</p>
      <Said said={job.said} />
      <Passphrase
        primary
        name={words.make}
        onGiven={(passphrase) => void job.run(store.getState().makeKeys(passphrase))}
      />
      <RestoreKeys />
    </section>
  );
}

const BACKUP_MAX_BYTES = 64 * 1024;

/** Takes the keys over from their backup. */
export function RestoreKeys() {
  const store = useApp().publishing;
  const [backup, setBackup] = useState({ name: '', text: '' });
  const job = useJob();
  const read = async (file: File) => {
    const text = file.size > BACKUP_MAX_BYTES ? '' : await file.text().catch(() => '');
    setBackup({ name: file.name, text });
  };
  return (
    <details>
      <summary>{words.restoreTitle}</summary>
      <div className="stack">
        <PickFile
          name={words.restoreFile}
          accept=".txt,.json,text/plain,application/json"
          onPick={(file) => void read(file)}
        />
        <p role="status">{backup.name !== '' && words.restoreChosen(backup.name)}</p>
        <Said said={job.said} />
        <Passphrase
          name={words.restore}
          label={words.restorePassphrase}
          help=""
          onGiven={(given) => void job.run(store.getState().restore(backup.text, given))}
        />
      </div>
    </details>
  );
}

/** Keys that are there: their digits, their backup, and how to replace them. */
export function ManageKeys({ programmeId }: { programmeId: string }) {
  const store = useApp().publishing;
  const keys = usePublishing((p) => p.keys);
  const [digits, setDigits] = useState('');
  const dateAt = useDateAt();
  const job = useJob();
  if (keys.name !== 'there') return null;
  const dayOf = (at: number): string => day(dateAt(at));
  return (
    <details className="rule">
      <summary>{words.manage}</summary>
      <div className="stack">
        <p>
          {words.madeAt(dayOf(keys.madeAt))}{' '}
          {keys.savedAt !== undefined && words.savedAt(dayOf(keys.savedAt))}
        </p>
        <Said said={job.said} />
        <div className="row">
          <button
            type="button"
            className="button"
            onClick={() => void keys.digits(programmeId).then(setDigits)}
          >
            {words.digits}
          </button>
          <button
            type="button"
            className="button"
            onClick={() => void job.run(store.getState().saveBackup())}
          >
            {words.saveAgain}
          </button>
        </div>
        <p role="status" className="big figures">
          {digits !== '' && words.digitsSaid(digits)}
        </p>
        <h3>{words.replaceTitle}</h3>
        <p>{words.replaceBody}</p>
        <Passphrase
          name={words.replace}
          onGiven={(passphrase) => void job.run(store.getState().replaceKeys(passphrase))}
        />
        <RestoreKeys />
      </div>
    </details>
  );
}
