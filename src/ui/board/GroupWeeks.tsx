import { useId, useState } from 'react';
import { groupWeekSentences, noReplyText } from '../../copy/board.ts';
import { personPage, boardPage as words } from '../../copy/board-page.ts';
import type { GroupBoard, GroupWeek } from '../../domain/board/board.ts';
import { GapMark } from './BoardMarks.tsx';
import { useBoardStore } from './board-context.tsx';

/** A group's week: how many were heard, how it felt, and who is silent. */
export function GroupWeekLines({ week }: { week: GroupWeek }) {
  const [from, ...rest] = groupWeekSentences(week);
  return (
    <div className="stack tight">
      <p>
        <strong>{from}</strong> {week.of > week.heard && noReplyText(week)}
      </p>
      {rest.length > 0 && (
        <p className="small">
          {week.gap !== undefined && (
            <span aria-hidden="true">
              <GapMark gap={week.gap.median} />{' '}
            </span>
          )}
          {rest.join(' ')}
        </p>
      )}
    </div>
  );
}

const MOST = 999;

/** How many are in a group, as the leader knows it. */
export function Expect({
  programmeId,
  group,
  count,
}: {
  programmeId: string;
  group: GroupBoard;
  count: number;
}) {
  const store = useBoardStore();
  const [text, setText] = useState(count === 0 ? '' : String(count));
  const [said, setSaid] = useState('');
  const id = useId();
  const number = text.trim() === '' ? 0 : Number(text);
  const isWrong = !Number.isInteger(number) || number < 0 || number > MOST;
  const save = async () => {
    if (isWrong) return setSaid(words.expectWrong);
    const kept = await store.getState().expect(programmeId, group.id, number);
    setSaid(kept.ok ? words.expectKept : personPage.failed);
  };
  return (
    <form
      className="field"
      onSubmit={(event) => {
        event.preventDefault();
        void save();
      }}
    >
      <label htmlFor={id}>{words.expect(group.name)}</label>
      <div className="row">
        <input
          id={id}
          className="line board-count"
          inputMode="numeric"
          autoComplete="off"
          value={text}
          aria-invalid={isWrong}
          aria-describedby={`${id}-said`}
          onChange={(event) => {
            setText(event.target.value);
            setSaid('');
          }}
        />
        <button type="submit" className="button" aria-label={`${words.expectSave}: ${group.name}`}>
          {words.expectSave}
        </button>
      </div>
      <p id={`${id}-said`} role="status" className="small">
        {said}
      </p>
    </form>
  );
}
