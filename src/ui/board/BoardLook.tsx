import { useId } from 'react';
import { boardPage as words } from '../../copy/board-page.ts';
import { weekDates } from '../../copy/week-dates.ts';
import type { Board } from '../../domain/board/board.ts';
import { dayOf } from '../../domain/programme/dates.ts';
import type { Programme } from '../../domain/programme/programme.ts';
import { Pick } from '../parts/Pick.tsx';
import { type Look, SHOWS, SORTS } from './board-rows.ts';
import { useWide } from './use-wide.ts';

interface LookProps {
  readonly programme: Programme;
  readonly board: Board;
  readonly look: Look;
  readonly onChange: (part: Partial<Look>) => void;
}

/** Which week is looked at, which people, in what order. On a phone what is seldom changed is folded. */
export function BoardLook(props: LookProps) {
  const { programme, look, onChange } = props;
  const isWide = useWide();
  return (
    // biome-ignore lint/a11y/useSemanticElements: browsers of two years ago do not know the element
    <div role="search" className="board-look" aria-label={words.look}>
      <WeekPick programme={programme} week={look.week} onChange={onChange} />
      {isWide ? (
        <WhichPeople {...props} />
      ) : (
        <details className="board-folded">
          <summary>{words.chosen(chosenIn(props))}</summary>
          <div className="board-look">
            <WhichPeople {...props} />
          </div>
        </details>
      )}
    </div>
  );
}

function chosenIn({ board, look }: LookProps): readonly string[] {
  const group = board.groups.find(({ id }) => id === look.group)?.name ?? '';
  const search = look.search.trim();
  const isAll = look.show === 'all' && group === '' && search === '';
  return [
    group,
    isAll ? words.everyone(board.people.length) : words.shows[look.show],
    search === '' ? '' : `“${search}”`,
    words.sorts[look.sort],
  ].filter((part) => part !== '');
}

function WhichPeople({ board, look, onChange }: LookProps) {
  const id = useId();
  return (
    <>
      <Pick
        name={words.group}
        value={look.group}
        options={[
          ['', words.allGroups],
          ...board.groups.map(({ id: group, name }) => [group, name] as const),
        ]}
        onChange={(group) => onChange({ group })}
      />
      <Pick
        name={words.show}
        value={look.show}
        options={SHOWS.map((show) => [show, words.shows[show]] as const)}
        onChange={(show) => onChange({ show })}
      />
      <Pick
        name={words.sort}
        value={look.sort}
        options={SORTS.map((sort) => [sort, words.sorts[sort]] as const)}
        onChange={(sort) => onChange({ sort })}
      />
      <div className="field">
        <label htmlFor={id}>{words.search}</label>
        <input
          id={id}
          className="line"
          type="search"
          autoComplete="off"
          spellCheck={false}
          value={look.search}
          onChange={(event) => onChange({ search: event.target.value })}
        />
      </div>
    </>
  );
}

interface WeekProps {
  readonly programme: Programme;
  readonly week: number;
  readonly onChange: LookProps['onChange'];
}

function WeekPick({ programme, week, onChange }: WeekProps) {
  const weeks = programme.weeks.length;
  const monday = programme.startDate === undefined ? undefined : dayOf(programme.startDate);
  const dates = (n: number) => (monday === undefined ? '' : weekDates(monday + 7 * (n - 1)));
  return (
    <div className="board-week">
      <button
        type="button"
        className="button"
        aria-label={words.earlier}
        disabled={week <= 1}
        onClick={() => onChange({ week: week - 1 })}
      >
        ←
      </button>
      <Pick
        name={words.week}
        value={String(week)}
        options={programme.weeks.map((_, n) => [
          String(n + 1),
          words.weekOption(n + 1, dates(n + 1)),
        ])}
        onChange={(n) => onChange({ week: Number(n) })}
      />
      <button
        type="button"
        className="button"
        aria-label={words.later}
        disabled={week >= weeks}
        onClick={() => onChange({ week: week + 1 })}
      >
        →
      </button>
    </div>
  );
}
