import type { RefObject } from 'react';
import type { Reading } from '../../../app/workshop-contract.ts';
import { cellWords, understood } from '../../../copy/cell.ts';
import { length } from '../../../copy/times.ts';
import { weeks } from '../../../copy/weeks.ts';
import type { PlanProblem } from '../../../domain/programme/problem.ts';
import { lengthOfPart } from '../../../domain/timeline/totals.ts';
import { type Correction, correctionsOf } from '../../../domain/workshop/corrections.ts';
import { Strip } from '../../parts/Strip.tsx';

interface CellReadingProps {
  readonly text: string;
  readonly reading: Reading;
  readonly field: RefObject<HTMLTextAreaElement | null>;
  readonly onText: (text: string) => void;
}

/**
 * How a text was understood; or the last version that could be, and what is wrong now. The strip
 * keeps its place meanwhile: half a word is a mistake, and nothing may jump with every letter.
 */
export function CellReading({ text, reading, field, onText }: CellReadingProps) {
  const { plan, problems } = reading;
  const [problem] = problems;
  if (problem?.code === 'empty' && plan === undefined)
    return <p className="soft">{cellWords.hint}</p>;
  return (
    <>
      <Landscape reading={reading} />
      {problem === undefined ? (
        plan !== undefined && <p className="small figures">{understood(plan)}</p>
      ) : (
        <Mistake text={text} problem={problem} field={field} onText={onText} />
      )}
    </>
  );
}

function Landscape({ reading: { plan, timeline, problems } }: { reading: Reading }) {
  if (plan === undefined || timeline === undefined)
    return <p className="soft small">{cellWords.noneGood}</p>;
  const isLast = problems.length > 0;
  const totals = weeks.totals(length(timeline.total), length(lengthOfPart(timeline, 'main')));
  return (
    <div className="cell-good" data-last={isLast}>
      <Strip timeline={timeline} />
      <p className="figures">{isLast ? cellWords.lastGood(totals) : <strong>{totals}</strong>}</p>
    </div>
  );
}

interface MistakeProps extends Omit<CellReadingProps, 'reading'> {
  readonly problem: PlanProblem;
}

/** A mistake, its place, and each way to put it right that is sure to help. */
function Mistake({ text, problem, field, onText }: MistakeProps) {
  const show = (from: number, to: number) => {
    field.current?.focus();
    field.current?.setSelectionRange(from, to);
  };
  const use = ({ text: corrected, end }: Correction) => {
    onText(corrected);
    // The field has the new letters once this tap is dealt with.
    requestAnimationFrame(() => show(end, end));
  };
  const { offset, length: letters } = problem.place;
  return (
    <div className="cell-wrong">
      <p>{cellWords.mistake(problem)}</p>
      <div className="cell-fixes">
        {correctionsOf(text, problem).map((correction) => (
          <button
            key={correction.text}
            type="button"
            className="button"
            onClick={() => use(correction)}
          >
            {nameOf(correction, problem)}
          </button>
        ))}
        {problem.code !== 'empty' && (
          <button
            type="button"
            className="text-button"
            onClick={() => show(offset, offset + letters)}
          >
            {cellWords.goTo(problem)}
          </button>
        )}
      </div>
    </div>
  );
}

function nameOf({ write, total }: Correction, { found }: PlanProblem): string {
  if (write === '') return cellWords.away(found);
  return total === undefined ? cellWords.take(write) : cellWords.takeTotal(write, total);
}
