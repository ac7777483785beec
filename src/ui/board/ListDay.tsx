import { attendance as words } from '../../copy/attendance.ts';
import { day as dayWords } from '../../copy/times.ts';
import type { BoardInput } from '../../domain/board/board.ts';
import { SelectField } from '../workshop/fields.tsx';
import { sessionsIn, togetherIn, type Which } from './list-day.ts';

interface WhichProps {
  readonly input: BoardInput;
  readonly which: Which;
  readonly onChoose: (which: Which) => void;
}

/** Which session of which week it is. */
export function WhichFields({ input: { programme }, which, onChoose }: WhichProps) {
  const { week, session } = which;
  const most = Math.max(session, sessionsIn(programme, week));
  const together = programme.weeks[week - 1]?.together;
  return (
    <div className="pair">
      <SelectField
        name={words.week}
        value={String(week)}
        options={programme.weeks.map(({ focus }, n) => [
          String(n + 1),
          words.weekOption(n + 1, focus),
        ])}
        onChange={(n) => onChoose({ week: Number(n), session: togetherIn(programme, Number(n)) })}
      />
      <SelectField
        name={words.session}
        value={String(session)}
        options={Array.from({ length: most }, (_, n) => [
          String(n + 1),
          words.sessionOption(n + 1, n + 1 === together),
        ])}
        onChange={(n) => onChoose({ week, session: Number(n) })}
      />
    </div>
  );
}

/** Days on which somebody was ticked, the latest first. */
export function Earlier(props: {
  readonly input: BoardInput;
  readonly date: string;
  readonly onOpen: (date: string) => void;
}) {
  const others = props.input.days
    .map(({ date, marks }) => ({
      date,
      there: Object.values(marks).filter(({ present }) => present).length,
    }))
    .filter(({ date, there }) => there > 0 && date !== props.date)
    .sort((a, b) => (a.date < b.date ? 1 : -1));
  if (others.length === 0) return null;
  return (
    <details>
      <summary>{words.earlier}</summary>
      <ul className="stack tight">
        {others.map(({ date, there }) => (
          <li key={date}>
            <button type="button" className="text-button" onClick={() => props.onOpen(date)}>
              {words.earlierDay(dayWords(date), there)}
            </button>
          </li>
        ))}
      </ul>
    </details>
  );
}
