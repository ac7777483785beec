import { type ReactNode, type RefObject, useId, useRef } from 'react';
import { cellWords } from '../../../copy/cell.ts';
import type { PlanProblem } from '../../../domain/programme/problem.ts';

interface CellTextProps {
  readonly text: string;
  readonly problem: PlanProblem | undefined;
  readonly onText: (text: string) => void;
  /** What came of it, which describes the field. */
  readonly children: (field: RefObject<HTMLTextAreaElement | null>) => ReactNode;
}

/** The shorthand of a session, with the wrong stretch marked where it stands. */
export function CellText({ text, problem, onText, children }: CellTextProps) {
  const id = useId();
  const field = useRef<HTMLTextAreaElement>(null);
  const wrong = problem !== undefined && problem.code !== 'empty';
  return (
    <>
      <div className="field">
        <label htmlFor={`${id}-text`}>{cellWords.text}</label>
        <div className="cell-text">
          <Mirror text={text} problem={wrong ? problem : undefined} />
          <textarea
            ref={field}
            id={`${id}-text`}
            value={text}
            rows={2}
            spellCheck={false}
            autoCapitalize="off"
            autoCorrect="off"
            autoComplete="off"
            aria-invalid={wrong}
            aria-describedby={`${id}-reading`}
            onChange={(event) => onText(event.target.value)}
          />
        </div>
      </div>
      <div id={`${id}-reading`} className="stack">
        {children(field)}
      </div>
    </>
  );
}

/**
 * The same letters behind the field, unseen but for the mark. They also give the field its height,
 * so that it grows with what is written.
 */
function Mirror({ text, problem }: { text: string; problem: PlanProblem | undefined }) {
  const { offset = text.length, length = 0 } = problem?.place ?? {};
  const end = offset + length;
  return (
    <div className="cell-mirror" aria-hidden="true">
      {text.slice(0, offset)}
      {problem !== undefined && <mark>{text.slice(offset, end) || ' '}</mark>}
      {text.slice(end)}
      {/* A line that has nothing on it yet has a height as well. */}
      {'\u200b'}
    </div>
  );
}
