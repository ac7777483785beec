import { useEffect, useId, useState } from 'react';
import type { IntakeSource } from '../../app/board-contract.ts';
import { bringIn as words } from '../../copy/bring-in.ts';
import { exchangeProblem } from '../../copy/exchange.ts';
import { Scanner } from '../parts/Scanner.tsx';
import { BringInReading, BringInReport } from './BringInReport.tsx';
import { useBoardState, useBoardStore } from './board-context.tsx';
import { dropped, MOST_FILES, sourcesOf } from './bring-in-files.ts';

/** Every way in which answers come in, and what came of it. */
export function BringIn() {
  const intake = useBoardState((b) => b.intake);
  return (
    <section className="stack rule">
      <h2>{words.title}</h2>
      {intake.name === 'done' && <BringInReport view={intake} />}
      {intake.name === 'reading' ? <BringInReading view={intake} /> : <Ways />}
    </section>
  );
}

function Ways() {
  const store = useBoardStore();
  const [scanning, setScanning] = useState(false);
  const [isCut, setCut] = useState(false);
  const take = (sources: readonly IntakeSource[]) => {
    setCut(sources.length >= MOST_FILES);
    if (sources.length > 0) void store.getState().bringIn(sources);
  };
  const isOver = useDrop(take);
  return (
    <>
      <p>{words.lead}</p>
      <div role="alert">{isCut && <p className="notice">{words.tooMany(MOST_FILES)}</p>}</div>
      <Paste onPasted={(text) => take([{ name: '', content: text }])} />
      <div className="stack tight">
        <div className="row">
          <PickFiles name={words.files} onPick={(files) => take(sourcesOf(files))} />
          <PickFiles folder name={words.folder} onPick={(files) => take(sourcesOf(files))} />
        </div>
        <p className="small soft">
          {words.filesHelp} <span className="board-fine">{words.drop}</span>
        </p>
      </div>
      {scanning ? (
        <Scanner
          hint={words.scanning}
          stop={words.stop}
          scan={(video) => store.getState().scan(video)}
          said={(code) => exchangeProblem({ code })}
          onStop={() => setScanning(false)}
        />
      ) : (
        <div>
          <button type="button" className="button" onClick={() => setScanning(true)}>
            {words.scan}
          </button>
        </div>
      )}
      {isOver && (
        <div className="board-drop" aria-hidden="true">
          <p className="big">{words.dropNow}</p>
        </div>
      )}
    </>
  );
}

function Paste({ onPasted }: { onPasted: (text: string) => void }) {
  const [text, setText] = useState('');
  const [isEmpty, setEmpty] = useState(false);
  const id = useId();
  return (
    <form
      className="stack"
      onSubmit={(event) => {
        event.preventDefault();
        setEmpty(text.trim() === '');
        if (text.trim() !== '') onPasted(text);
      }}
    >
      <div className="field">
        <label htmlFor={id}>{words.paste}</label>
        <textarea
          id={id}
          rows={4}
          spellCheck={false}
          autoComplete="off"
          value={text}
          aria-describedby={`${id}-said`}
          onChange={(event) => {
            setText(event.target.value);
            setEmpty(false);
          }}
        />
        <p id={`${id}-said`} role="alert" className="cannot">
          {isEmpty && words.pasteEmpty}
        </p>
      </div>
      <div>
        <button type="submit" className="button primary">
          {words.pasteGo}
        </button>
      </div>
    </form>
  );
}

interface PickFilesProps {
  readonly name: string;
  readonly folder?: boolean;
  readonly onPick: (files: readonly File[]) => void;
}

/** Several files, or all of a folder where the browser has such a picker. */
function PickFiles({ name, folder = false, onPick }: PickFilesProps) {
  const id = useId();
  const [canPick, setCanPick] = useState(!folder);
  useEffect(() => {
    if (folder) setCanPick('webkitdirectory' in HTMLInputElement.prototype);
  }, [folder]);
  if (!canPick) return null;
  return (
    <>
      <input
        id={id}
        type="file"
        hidden
        multiple
        aria-label={name}
        {...(folder
          ? { webkitdirectory: '' }
          : { accept: '.txt,.zip,.json,image/*,text/plain,application/zip' })}
        onChange={(event) => {
          const files = [...(event.target.files ?? [])];
          event.target.value = '';
          if (files.length > 0) onPick(files);
        }}
      />
      <button type="button" className="button" onClick={() => document.getElementById(id)?.click()}>
        {name}
      </button>
    </>
  );
}

/** Takes what is dropped anywhere on the page. @returns whether something is held over it */
function useDrop(onDropped: (sources: readonly IntakeSource[]) => void): boolean {
  const [isOver, setOver] = useState(false);
  useEffect(() => {
    const over = (event: DragEvent) => {
      event.preventDefault();
      setOver(true);
    };
    const leave = (event: DragEvent) => {
      // Out of the window, not from one element into another.
      if (event.relatedTarget === null) setOver(false);
    };
    const drop = (event: DragEvent) => {
      event.preventDefault();
      setOver(false);
      if (event.dataTransfer !== null) void dropped(event.dataTransfer).then(onDropped);
    };
    document.addEventListener('dragover', over);
    document.addEventListener('dragleave', leave);
    document.addEventListener('drop', drop);
    return () => {
      document.removeEventListener('dragover', over);
      document.removeEventListener('dragleave', leave);
      document.removeEventListener('drop', drop);
    };
  });
  return isOver;
}
