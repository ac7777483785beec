import { useEffect, useState } from 'react';
import { Link, useLocation } from 'wouter';
import type { ShelfItem } from '../../app/workshop-contract.ts';
import { boards } from '../../copy/board-page.ts';
import { cameAt } from '../../copy/came.ts';
import { common } from '../../copy/common.ts';
import { lead } from '../../copy/lead.ts';
import { programmeSentence } from '../../copy/programme.ts';
import { shelf as words } from '../../copy/workshop.ts';
import type { ProgrammeProblem } from '../../domain/programme/problem.ts';
import { PROGRAMME_MAX_BYTES } from '../../domain/programme/programme.ts';
import { useApp, usePublishing } from '../app-context.tsx';
import { boardAt } from '../board/addresses.ts';
import { useBoardsAhead } from '../board/read-ahead.ts';
import { PickFile } from '../parts/PickFile.tsx';
import { Screen } from '../parts/Screen.tsx';
import { useOneAtATime } from '../parts/use-one-at-a-time.ts';
import { deskAt, pageAt } from './addresses.ts';
import { SentBefore } from './SentBefore.tsx';
import { saveExample, useBegin } from './use-begin.ts';
import { useWorkshop, useWorkshopStore } from './workshop-context.tsx';

interface Trouble {
  readonly said: string;
  readonly problems: readonly ProgrammeProblem[];
}
const NO_TROUBLE: Trouble = { said: '', problems: [] };

/** The leader's first page: programmes in writing, ways to begin one, and what went out. */
export function Shelf() {
  const publishing = useApp().publishing;
  useEffect(() => void publishing.getState().load(), [publishing]);
  useBoardsAhead();
  const items = useWorkshop((state) => state.shelf);
  const [trouble, setTrouble] = useState(NO_TROUBLE);
  return (
    <Screen title={words.title} sub={words.sub} back={{ href: '/start', name: common.back }}>
      <div role="alert">
        {trouble.said !== '' && <p className="notice">{trouble.said}</p>}
        {trouble.problems.length > 0 && <Problems problems={trouble.problems} />}
      </div>
      {items.length > 0 && (
        <section className="stack rule">
          <h2>{words.mine}</h2>
          <ul className="lines">
            {items.map((item) => (
              <li key={item.key}>
                <Item item={item} />
              </li>
            ))}
          </ul>
        </section>
      )}
      <Begin onTrouble={setTrouble} />
      <SentBefore />
    </Screen>
  );
}

function Item({ item: { key, sheet, changedAt } }: { item: ShelfItem }) {
  const store = useWorkshopStore();
  const { clock } = useApp();
  const [, go] = useLocation();
  const sent = usePublishing((p) => p.sent[sheet.id]);
  const [isAsking, setAsking] = useState(false);
  const title = sheet.title.trim() || words.untitled;
  const facts = [
    words.size(sheet.weeks.length, sheet.groups.length),
    words.changed(cameAt(changedAt, clock.now())),
    ...(sent === undefined ? [] : [words.sent(sent.revision)]),
  ];
  const copy = useOneAtATime(async () => {
    const made = await store.getState().copy(key, words.copyTitle(title));
    if (made !== undefined) go(deskAt(made));
  });
  return (
    <article className="stack tight">
      <h3 className="big">{title}</h3>
      <p className="soft">{facts.join(' · ')}</p>
      <div className="row">
        <Link href={deskAt(key)} className="button">
          {words.open(title)}
        </Link>
        {sent !== undefined && (
          <Link href={boardAt(sheet.id)} className="button">
            {boards.one}
          </Link>
        )}
      </div>
      {isAsking ? (
        <div className="notice" role="alert">
          <p>{words.removeAsk(title)}</p>
          <div className="row">
            <button
              type="button"
              className="button"
              onClick={() => void store.getState().remove(key)}
            >
              {words.removeYes}
            </button>
            <button type="button" className="button" onClick={() => setAsking(false)}>
              {words.removeNo}
            </button>
          </div>
        </div>
      ) : (
        <div className="row">
          <button
            type="button"
            className="text-button"
            aria-label={`${words.copy}: ${title}`}
            onClick={() => void copy()}
          >
            {words.copy}
          </button>
          <button
            type="button"
            className="text-button"
            aria-label={`${words.remove}: ${title}`}
            onClick={() => setAsking(true)}
          >
            {words.remove}
          </button>
        </div>
      )}
    </article>
  );
}

/** A message or a .txt file with its link, which is no programme file and not damaged either. */
const AS_SENT = /^[^{]*#\/join\//;

function Begin({ onTrouble }: { onTrouble: (trouble: Trouble) => void }) {
  const store = useWorkshopStore();
  const [, go] = useLocation();
  const begin = useBegin();
  const open = async (file: File) => {
    if (file.size > PROGRAMME_MAX_BYTES) return onTrouble({ ...NO_TROUBLE, said: lead.tooLarge });
    const text = await file.text().catch(() => undefined);
    if (text === undefined) return onTrouble({ ...NO_TROUBLE, said: lead.unreadable });
    if (AS_SENT.test(text)) return onTrouble({ ...NO_TROUBLE, said: lead.asSent });
    const made = await store.getState().createFromFile(text);
    if (made.ok) return go(deskAt(made.value));
    onTrouble({ said: '', problems: made.error });
  };
  return (
    <section className="stack rule">
      <h2>{words.begin}</h2>
      <div className="row">
        <button
          type="button"
          className="button"
          onClick={() => void begin.blank().then((key) => go(pageAt(key, 'draft')))}
        >
          {words.draft}
        </button>
        <button
          type="button"
          className="button"
          onClick={() => void begin.blank().then((key) => go(pageAt(key, 'details')))}
        >
          {words.blank}
        </button>
        <button
          type="button"
          className="button"
          onClick={() => void begin.example().then((key) => key !== undefined && go(deskAt(key)))}
        >
          {words.example}
        </button>
      </div>
      <div className="stack tight">
        <PickFile
          name={words.file}
          accept=".json,.txt,application/json,text/plain"
          onPick={(file) => void open(file)}
        />
        <p className="small soft">{words.fileHelp}</p>
      </div>
      <div className="row">
        <button type="button" className="text-button" onClick={saveExample}>
          {words.saveExample}
        </button>
        <a className="text-button" href="./towpath-programme.schema.json">
          {words.schema}
        </a>
      </div>
    </section>
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
