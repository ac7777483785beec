import { useState } from 'react';
import type { BoardFilePreview } from '../../app/board-contract.ts';
import { boardProblem, previewLines, keep as words } from '../../copy/keep.ts';
import { Passphrase } from '../parts/Passphrase.tsx';
import { PickFile } from '../parts/PickFile.tsx';
import { TakeIn } from '../parts/TakeIn.tsx';
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
        <TakeIn
          words={words}
          isNews={preview.newPeople > 0 || preview.newSessions > 0}
          onTake={() => void take()}
          onLeave={() => begin()}
        >
          {previewLines(preview).map((line) => (
            <p key={line}>{line}</p>
          ))}
        </TakeIn>
      )}
    </section>
  );
}
