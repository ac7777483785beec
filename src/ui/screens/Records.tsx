import { useState } from 'react';
import type { Records as RecordsOf } from '../../app/records-contract.ts';
import { records as words } from '../../copy/records.ts';
import { useApp, useDevice } from '../app-context.tsx';
import { CalendarFile } from '../parts/CalendarFile.tsx';
import { RestoreFile } from '../parts/RestoreFile.tsx';
import { Screen } from '../parts/Screen.tsx';

/** Where the record is safe, and how it moves: storage, backup, restore, calendar, log files. */
export function Records() {
  return (
    <Screen title={words.title} sub={words.sub} back={{ href: '/settings', name: words.back }}>
      <Kept />
      <section className="stack rule">
        <h2>{words.backup}</h2>
        <p>{words.backupBody}</p>
        <p>{words.backupCare}</p>
        <p className="small soft">{words.backupKeys}</p>
        <Give primary items={[[words.saveBackup, (records) => records.saveBackup()]]} />
      </section>
      <RestoreFile />
      <CalendarFile />
      <section className="stack rule">
        <h2>{words.log}</h2>
        <p>{words.logBody}</p>
        <Give
          items={[
            [words.csv, (records) => records.saveLog('csv')],
            [words.json, (records) => records.saveLog('json')],
          ]}
        />
      </section>
    </Screen>
  );
}

/** Whether the browser keeps what is stored, and the way to ask it. */
function Kept() {
  const records = useApp().records;
  const persisted = useDevice((d) => d.persisted);
  const [asked, setAsked] = useState(false);
  const state =
    persisted === undefined ? words.unknown : persisted ? words.persisted : words.notPersisted;
  const ask = async () => {
    try {
      await (await records()).persist();
    } finally {
      setAsked(true);
    }
  };
  return (
    <section className="stack">
      <h2>{words.kept}</h2>
      <p role="status">
        {state} {asked && persisted === false && words.refused}
      </p>
      {persisted === false && (
        <div>
          <button type="button" className="button" onClick={() => void ask().catch(() => {})}>
            {words.ask}
          </button>
        </div>
      )}
    </section>
  );
}

type Job = (records: RecordsOf) => Promise<{ readonly ok: boolean }>;

/** Buttons that give a file out and say how it went. */
function Give(props: { items: readonly (readonly [string, Job])[]; primary?: boolean }) {
  const records = useApp().records;
  const [said, setSaid] = useState('');
  const run = async (job: Job) => {
    setSaid(words.working);
    try {
      const result = await job(await records());
      setSaid(result.ok ? words.given : words.failed);
    } catch {
      setSaid(words.notLoaded);
    }
  };
  return (
    <>
      <div className="row">
        {props.items.map(([name, job]) => (
          <button
            key={name}
            type="button"
            className={props.primary ? 'button primary' : 'button'}
            onClick={() => void run(job)}
          >
            {name}
          </button>
        ))}
      </div>
      <p role="status" className="small">
        {said}
      </p>
    </>
  );
}
