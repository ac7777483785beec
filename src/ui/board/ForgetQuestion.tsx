import { calledOf } from '../../copy/board.ts';
import { personPage as words } from '../../copy/board-page.ts';
import type { BoardInput } from '../../domain/board/board.ts';
import { Dialog } from '../parts/Dialog.tsx';
import { type Listed, tickedAs } from './list-people.ts';

interface QuestionProps {
  readonly who: Listed;
  readonly input: BoardInput;
  readonly onYes: () => void;
  readonly onNo: () => void;
}

/** What goes, counted, and that it cannot be taken back. */
export function ForgetQuestion({ who, input, onYes, onNo }: QuestionProps) {
  const told = input.heard.filter(({ person }) => who.ids.includes(person));
  const entries = told.flatMap((each) => each.entries);
  const days = input.days.filter((day) => tickedAs(who, day).length > 0).length;
  const notes = entries.filter(({ note }) => note !== undefined).length;
  const title = words.forgetTitle(calledOf(who));
  return (
    <Dialog name={title} className="sheet" onLeave={onNo}>
      <div className="stack">
        <h1 tabIndex={-1}>{title}</h1>
        <ul className="bullets">
          {words.forgetWhat(entries.length, days, notes).map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ul>
        <div className="pair">
          <button type="button" className="button" onClick={onYes}>
            {words.forgetYes}
          </button>
          <button type="button" className="button primary" onClick={onNo}>
            {words.forgetNo}
          </button>
        </div>
      </div>
    </Dialog>
  );
}
