import type { LogEntry } from '../../domain/log/entry.ts';
import { endsInTime, type FieldCode } from '../../domain/log/fields.ts';

type Read = { readonly ok: true } | { readonly ok: false; readonly error: FieldCode };

/** What is wrong at each field of a session that is written down by hand. */
export function problemsOf(began: Read, amount: Read, made: LogEntry | undefined, now: number) {
  const late = made !== undefined && !endsInTime(made.startedAt, made.activeSeconds, now);
  return {
    when: began.ok ? (late ? ('ends-future' as const) : undefined) : began.error,
    amount: amount.ok ? undefined : amount.error,
  };
}

/** What is still empty is no mistake before the person wants to save. */
export const shown = (problem: FieldCode | undefined, tried: boolean): FieldCode | undefined =>
  tried || !problem?.endsWith('-none') ? problem : undefined;
