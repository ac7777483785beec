import { useMemo } from 'react';
import { useStore } from 'zustand';
import { type Advice, adviceFor } from '../../domain/advice/advice.ts';
import { type Now, nowOf } from '../../domain/advice/now.ts';
import type { Situation } from '../../domain/advice/situation.ts';
import type { RatingWay } from '../../domain/back/session.ts';
import { localDate } from '../../domain/log/local-date.ts';
import type { Programme } from '../../domain/programme/programme.ts';
import { useApp, useLog, useSettings } from '../app-context.tsx';

/** The local date where the person is. */
export function useToday(): string {
  const { clock } = useApp();
  const now = clock.now();
  return localDate(now, clock.zoneTime(now).offsetMinutes);
}

/** All that advice looks at, for a person in a group of a programme. */
export function useSituation(programme: Programme, group: string): Situation {
  const entries = useLog((l) => l.entries);
  const following = useStore(useApp().following, (f) => f.following[programme.id]);
  const today = useToday();
  return useMemo(
    () => ({ programme, group, entries, today, ...(following && { following }) }),
    [programme, group, entries, today, following],
  );
}

/** One way of rating per person: at the end, or again after a pause. */
export const useRating = (): RatingWay =>
  useSettings((s) => s.askAgain) === true ? 'later' : 'at-the-end';

let last:
  | { readonly situation: Situation; readonly rating: RatingWay; readonly now: Now }
  | undefined;

/** What is next and how things stand. The rows of a page ask for the same: it is worked out once. */
export function useNow(situation: Situation): Now {
  const rating = useRating();
  return useMemo(() => {
    if (last?.situation !== situation || last.rating !== rating)
      last = { situation, rating, now: nowOf(situation, rating) };
    return last.now;
  }, [situation, rating]);
}

export function useAdvice(situation: Situation): Advice {
  const rating = useRating();
  return useMemo(() => adviceFor(situation, rating), [situation, rating]);
}
