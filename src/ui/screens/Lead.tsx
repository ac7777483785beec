import { useEffect, useState } from 'react';
import type { Sending } from '../../app/exchange-contract.ts';
import { common } from '../../copy/common.ts';
import { lead } from '../../copy/lead.ts';
import { programmeSentence } from '../../copy/programme.ts';
import type { ProgrammeProblem } from '../../domain/programme/problem.ts';
import { PROGRAMME_MAX_BYTES, type Programme } from '../../domain/programme/programme.ts';
import { readProgramme } from '../../domain/programme/read.ts';
import { useApp, usePublishing } from '../app-context.tsx';
import { LookThrough } from '../parts/LookThrough.tsx';
import { PickFile } from '../parts/PickFile.tsx';
import { Screen } from '../parts/Screen.tsx';
import { SendSheet } from '../parts/SendSheet.tsx';
import { SendSteps } from '../parts/SendSteps.tsx';

type Stage =
  | { readonly name: 'open'; readonly problems: readonly ProgrammeProblem[]; readonly said: string }
  | { readonly name: 'look'; readonly programme: Programme }
  | { readonly name: 'send'; readonly programme: Programme }
  | { readonly name: 'sheet'; readonly sending: Sending };

const BLANK = { name: 'open', problems: [], said: '' } as const;
const OPEN: Stage = BLANK;

/** For the leader: a file is looked at, then sent, one step at a time. */
export function Lead() {
  const store = useApp().publishing;
  const [stage, setStage] = useState<Stage>(OPEN);
  useEffect(() => void store.getState().load(), [store]);
  const toOpen = () => setStage(OPEN);
  if (stage.name === 'sheet')
    return <SendSheet key="sheet" sending={stage.sending} onOther={toOpen} />;
  if (stage.name === 'send')
    return (
      <SendSteps
        key="send"
        programme={stage.programme}
        onBack={() => setStage({ ...stage, name: 'look' })}
        onSending={(sending) => setStage({ name: 'sheet', sending })}
      />
    );
  if (stage.name === 'look')
    return (
      <LookThrough
        key="look"
        programme={stage.programme}
        onSend={() => setStage({ ...stage, name: 'send' })}
        onOther={toOpen}
      />
    );
  return <Open key="open" stage={stage} onStage={setStage} />;
}

interface OpenProps {
  readonly stage: Extract<Stage, { name: 'open' }>;
  readonly onStage: (stage: Stage) => void;
}

function Open({ stage, onStage }: OpenProps) {
  const read = async (file: File) => {
    if (file.size > PROGRAMME_MAX_BYTES) return onStage({ ...BLANK, said: lead.tooLarge });
    const text = await file.text().catch(() => undefined);
    if (text === undefined) return onStage({ ...BLANK, said: lead.unreadable });
    const programme = readProgramme(text);
    if (programme.ok) return onStage({ name: 'look', programme: programme.value });
    onStage({ name: 'open', problems: programme.error, said: '' });
  };
  return (
    <Screen title={lead.title} sub={lead.sub} back={{ href: '/start', name: common.back }}>
      <div role="alert">
        {stage.said !== '' && <p className="notice">{stage.said}</p>}
        {stage.problems.length > 0 && <Problems problems={stage.problems} />}
      </div>
      <div className="stack tight">
        <PickFile
          primary
          name={lead.open}
          accept=".json,.txt,application/json,text/plain"
          onPick={(file) => void read(file)}
        />
        <p className="small soft">{lead.openHelp}</p>
      </div>
      <SentBefore onStage={onStage} />
      <section className="stack rule">
        <h2>{lead.startTitle}</h2>
        <p>{lead.start}</p>
        <div className="row">
          <button type="button" className="button" onClick={() => void saveExample()}>
            {lead.example}
          </button>
        </div>
        <a className="text-button" href="./towpath-programme.schema.json">
          {lead.schema}
        </a>
      </section>
    </Screen>
  );
}

function Problems({ problems }: { problems: readonly ProgrammeProblem[] }) {
  return (
    <div className="notice">
      <h2>{lead.errorsTitle}</h2>
      <p>{lead.errorsBody(problems.length)}</p>
      <ul className="bullets">
        {problems.map((problem) => (
          <li key={`${problem.path} ${problem.code}`}>
            <strong>{problem.path === '' ? lead.wholeFile : problem.path}</strong>:{' '}
            {programmeSentence(problem)}
          </li>
        ))}
      </ul>
    </div>
  );
}

/** What went out from this phone can be shown again, exactly as it went. */
function SentBefore({ onStage }: { onStage: (stage: Stage) => void }) {
  const store = useApp().publishing;
  const sent = usePublishing((p) => p.sent);
  const all = Object.values(sent).flatMap((each) => {
    const read = readProgramme(each.text);
    return read.ok ? [{ ...each, title: read.value.title }] : [];
  });
  if (all.length === 0) return null;
  const again = async (id: string) => {
    const going = await store.getState().again(id);
    if (going.ok) onStage({ name: 'sheet', sending: going.value });
  };
  return (
    <section className="stack rule">
      <h2>{lead.sentTitle}</h2>
      {all.map(({ id, title, revision }) => (
        <div key={id} className="stack tight">
          <p>{lead.sentLine(title, revision)}</p>
          <div>
            <button type="button" className="button" onClick={() => void again(id)}>
              {lead.again(title)}
            </button>
          </div>
        </div>
      ))}
    </section>
  );
}

async function saveExample(): Promise<void> {
  const { DEMO_PROGRAMME_TEXT } = await import('../../app/programme-reader.ts');
  const text = `${JSON.stringify(JSON.parse(DEMO_PROGRAMME_TEXT), null, 2)}\n`;
  const url = URL.createObjectURL(new Blob([text], { type: 'application/json' }));
  const link = document.createElement('a');
  link.href = url;
  link.download = lead.exampleName;
  link.click();
  setTimeout(() => URL.revokeObjectURL(url), 60_000);
}
