import { useEffect, useRef, useState } from 'react';
import type { BoardFilePreview } from '../../app/board-contract.ts';
import { boardProblem, previewLines, keep as words } from '../../copy/keep.ts';
import { Passphrase } from '../parts/Passphrase.tsx';
import { PickFile } from '../parts/PickFile.tsx';
import { useBoardStore } from './board-context.tsx';
import { KeepSaid } from './KeepSaid.tsx';

/** A locked file is chosen, opened and looked at, and taken in only on the leader's word. */
export function KeepOpen() {
  const store = useBoardStore();
  const [file, setFile] = useState<File>();
  const [preview, setPreview] = useState<BoardFilePreview>();
  const [said, setSaid] = useState('');
  const begin = (picked?: File) => {
    setFile(picked);
    setPreview(undefined);
    setSaid('');
  };
  const open = async (from: File, passphrase: string) => {
    setSaid(words.working);
    const opened = await store.getState().openLocked(from, passphrase);
    setSaid(opened.ok ? '' : boardProblem(opened.error));
    setPreview(opened.ok ? opened.value : undefined);
  };
  const take = async () => {
    setSaid(words.working);
    const taken = await store.getState().takeIn();
    if (taken.ok) begin();
    setSaid(taken.ok ? words.taken : boardProblem(taken.error));
  };
  return (
    <section className="stack rule">
      <h2>{words.open}</h2>
      <p>{words.openBody}</p>
      <PickFile
        name={words.choose}
        accept=".txt,.json,text/plain,application/json"
        onPick={begin}
      />
      <p role="status">{file !== undefined && words.chosen(file.name)}</p>
      <KeepSaid said={said} />
      {file !== undefined && preview === undefined && (
        <Passphrase
          name={words.openGo}
          label={words.openLabel}
          help=""
          onGiven={(passphrase) => void open(file, passphrase)}
        />
      )}
      {preview !== undefined && (
        <Preview preview={preview} onTake={() => void take()} onLeave={() => begin()} />
      )}
    </section>
  );
}

interface PreviewProps {
  readonly preview: BoardFilePreview;
  readonly onTake: () => void;
  readonly onLeave: () => void;
}

function Preview({ preview, onTake, onLeave }: PreviewProps) {
  const title = useRef<HTMLHeadingElement>(null);
  // What was chosen is read before what can be done with it.
  useEffect(() => title.current?.focus(), []);
  const isNews = preview.newPeople > 0 || preview.newSessions > 0;
  return (
    <>
      <h3 ref={title} tabIndex={-1}>
        {words.previewTitle}
      </h3>
      {previewLines(preview).map((line) => (
        <p key={line}>{line}</p>
      ))}
      {!isNews && <p>{words.nothingNew}</p>}
      <div className="row">
        {isNews && (
          <button type="button" className="button primary" onClick={onTake}>
            {words.take}
          </button>
        )}
        <button type="button" className="button" onClick={onLeave}>
          {words.leave}
        </button>
      </div>
    </>
  );
}
