import { useState } from 'react';
import { common } from '../../copy/common.ts';

/** Copies a text; where the browser refuses, says so, and the text stays there to be marked. */
export function CopyText({ text, name, done }: { text: string; name: string; done: string }) {
  const [outcome, setOutcome] = useState<'' | 'copied' | 'refused'>('');
  const copy = async () => {
    try {
      await navigator.clipboard.writeText(text);
      setOutcome('copied');
    } catch {
      setOutcome('refused');
    }
  };
  return (
    <div className="row">
      <button type="button" className="button" onClick={() => void copy()}>
        {name}
      </button>
      <span role="status">
        {outcome === 'copied' && done}
        {outcome === 'refused' && common.copyFailed}
      </span>
    </div>
  );
}
