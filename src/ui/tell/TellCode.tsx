import { useState } from 'react';
import type { Answer } from '../../app/tell-contract.ts';
import { tell } from '../../copy/tell.ts';
import { CodeFigure } from '../parts/CodeFigure.tsx';

interface CodeProps {
  readonly answer: Answer;
  readonly title: string;
  readonly onScanned: () => void;
}

/** The answer as a code, face to face; one part at a time when there are several. */
export function TellCode({ answer, title, onScanned }: CodeProps) {
  const [at, setAt] = useState(0);
  const { codes } = answer;
  const isLast = at === codes.length - 1;
  return (
    <details>
      <summary>{tell.code}</summary>
      <div className="stack">
        {codes.length === 0 ? <p>{tell.noCode}</p> : <p className="soft">{tell.codeHelp}</p>}
        {codes.map((code, n) => {
          const name = tell.part(n + 1, codes.length);
          return <CodeFigure key={name} code={code} title={title} name={name} shown={n === at} />;
        })}
        {codes.length > 0 && (
          <div className="row">
            {codes.length > 1 && (
              <button
                type="button"
                className="button"
                onClick={() => setAt((at + 1) % codes.length)}
              >
                {tell.next}
              </button>
            )}
            {isLast && (
              <button type="button" className="button" onClick={onScanned}>
                {tell.scanned}
              </button>
            )}
          </div>
        )}
      </div>
    </details>
  );
}
