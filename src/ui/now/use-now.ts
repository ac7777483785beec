import { useCallback, useSyncExternalStore } from 'react';
import { type Advice, adviceFor } from '../../domain/advice/advice.ts';
import { type Now, nowOf } from '../../domain/advice/now.ts';
import type { Situation } from '../../domain/advice/situation.ts';
import type { RatingWay } from '../../domain/back/session.ts';
import type { LogEntry } from '../../domain/log/entry.ts';
import type { Following } from '../../domain/log/following.ts';
import { localDate } from '../../domain/log/local-date.ts';
import type { Programme } from '../../domain/programme/programme.ts';
import { useApp, useFollowing, useLog, useSettings } from '../app-context.tsx';
import { latest } from './latest.ts';

const LOOK_AGAIN_MS = 60_000;

/** A page may stay open past midnight, or wake in another time zone. */
function onPassingTime(look: () => void): () => void {
  const timer = setInterval(look, LOOK_AGAIN_MS);
  document.addEventListener('visibilitychange', look);
  return () => {
    clearInterval(timer);
    document.removeEventListener('visibilitychange', look);
  };
}

/** The local date where the person is, ISO 8601. */
export function useToday(): string {
  const { clock } = useApp();
  const read = useCallback(() => {
    const now = clock.now();
    return localDate(now, clock.zoneTime(now).offsetMinutes);
  }, [clock]);
  return useSyncExternalStore(onPassingTime, read);
}

const situationOf = latest(
  (
    programme: Programme,
    group: string,
    entries: readonly LogEntry[],
    today: string,
    following: Following | undefined,
  ): Situation => ({ programme, group, entries, today, ...(following && { following }) }),
);
const nowFor = latest(nowOf);
const adviceOn = latest(adviceFor);

/** All that advice looks at, for a person in a group of a programme. */
export function useSituation(programme: Programme, group: string): Situation {
  const entries = useLog((l) => l.entries);
  const following = useFollowing((f) => f.following[programme.id]);
  return situationOf(programme, group, entries, useToday(), following);
}

/** One way of rating per person: at the end, or again after a pause. */
export const useRating = (): RatingWay =>
  useSettings((s) => s.askAgain) === true ? 'later' : 'at-the-end';

/** What is next and how things stand. */
export const useNow = (situation: Situation): Now => nowFor(situation, useRating());

/** What a good leader would say to this person today. A proposal: the person decides. */
export const useAdvice = (situation: Situation): Advice => adviceOn(situation, useRating());
