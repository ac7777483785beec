import { nowCopy as words } from '../../copy/now.ts';
import { weekDates } from '../../copy/week-dates.ts';
import { dayOf } from '../../domain/programme/dates.ts';
import type { Programme } from '../../domain/programme/programme.ts';
import { useNow, useSituation } from './use-now.ts';

interface TagProps {
  readonly programme: Programme;
  readonly group: string;
  /** From 1. */
  readonly week: number;
}

/** How a week stands, and its days where it lies or lay on a date. */
export function WeekTag({ programme, group, week }: TagProps) {
  const now = useNow(useSituation(programme, group));
  const state = now.weeks[week - 1];
  if (state === undefined) return null;
  const monday = state.dates === undefined ? undefined : dayOf(state.dates.from);
  return (
    <p className="small">
      <span className={state.name === 'now' ? 'tag' : 'tag plain'}>
        {words.weekNames[state.name]}
      </span>{' '}
      {monday !== undefined && <span className="figures">{weekDates(monday)}</span>}
    </p>
  );
}
