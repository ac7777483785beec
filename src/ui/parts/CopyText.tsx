import { useState } from 'react';
import { common } from '../../copy/common.ts';

interface CopyProps {
  readonly text: string;
  readonly name: string;
  readonly done: string;
  readonly primary?: boolean;
  readonly onCopied?: () => void;
}

/** Copies a text; where the browser refuses, says so, and the text stays there to be marked. */
export function CopyText({ text, name, done, primary = false, onCopied }: CopyProps) {
  const [outcome, setOutcome] = useState<'' | 'copied' | 'refused'>('');
  const copy = async () => {
    try {
      await navigator.clipboard.writeText(text);
    } catch {
      setOutcome('refused');
      return;
    }
    setOutcome('copied');
    onCopied?.();
  };
  return (
    <div className="row">
      <button
        type="button"
        className={primary ? 'button primary' : 'button'}
        onClick={() => void copy()}
      >
        {name}
      </button>
      <span role="status">
        {outcome === 'copied' && done}
        {outcome === 'refused' && common.copyFailed}
      </span>
    </div>
  );
}
