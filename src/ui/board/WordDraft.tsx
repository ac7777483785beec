import { useId, useState } from 'react';
import { wordsPage as words } from '../../copy/words-page.ts';
import { CopyText } from '../parts/CopyText.tsx';
import type { useShare } from './words-share.ts';

interface DraftProps {
  readonly name: string;
  /** As it is proposed. */
  readonly draft: string;
  readonly share: ReturnType<typeof useShare>;
  readonly rows?: number;
  readonly primary?: boolean;
}

/** A message that can be changed before it is copied or handed on. */
export function WordDraft({ name, draft, share, rows = 6, primary = false }: DraftProps) {
  const id = useId();
  const [typed, setTyped] = useState<string>();
  const [isShared, setShared] = useState(false);
  const text = typed ?? draft;
  return (
    <div className="stack tight">
      <div className="field">
        <label htmlFor={id}>{name}</label>
        <textarea
          id={id}
          rows={rows}
          value={text}
          aria-describedby={`${id}-help`}
          onChange={(event) => {
            setTyped(event.target.value);
            setShared(false);
          }}
        />
        <p id={`${id}-help`} className="small soft">
          {words.draftHelp}
        </p>
      </div>
      {share !== undefined && (
        <div className="row">
          <button
            type="button"
            className={primary ? 'button primary' : 'button'}
            onClick={() => void share(text).then(setShared)}
          >
            {words.share}
          </button>
          <span role="status">{isShared && words.shared}</span>
        </div>
      )}
      <CopyText
        // What was copied is said of the words that were copied.
        key={text}
        text={text}
        name={words.copy}
        done={words.copied}
        primary={primary && share === undefined}
      />
      {typed !== undefined && typed !== draft && (
        <div>
          <button type="button" className="text-button" onClick={() => setTyped(undefined)}>
            {words.anew}
          </button>
        </div>
      )}
    </div>
  );
}
