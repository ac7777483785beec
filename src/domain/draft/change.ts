import { type Ms, ms } from '../units.ts';
import { msOfHalf } from './bounds.ts';
import type { WeekKind } from './ground.ts';
import type { Form, Option } from './option.ts';

/** What is other than the week before, for one group. Lengths may be below 0: shorter. */
export type Change =
  | { readonly code: 'first' | 'same' | 'pinned' }
  /** Sets before and now: what changed of count, harder and easier stretch. */
  | { readonly code: 'sets'; readonly sets: number; readonly hard: Ms; readonly easy: Ms }
  /** The long run, the others and the walks between them, by how much. */
  | {
      readonly code: 'runs';
      readonly others: number;
      readonly first: Ms;
      readonly other: Ms;
      readonly easy: Ms;
    }
  | { readonly code: 'on'; readonly by: Ms }
  /** Another form than the week before, and how much more is run (or walked briskly) in all. */
  | { readonly code: 'to-sets' | 'to-runs' | 'to-on'; readonly by: Ms }
  /** A shorter week: how long its main set is now, and before. */
  | { readonly code: 'light' | 'aside'; readonly main: Ms; readonly before: Ms };

const TO = { sets: 'to-sets', runs: 'to-runs', on: 'to-on' } as const;

function between(before: Form, now: Form): Change | undefined {
  if (before.kind === 'sets' && now.kind === 'sets')
    return {
      code: 'sets',
      sets: now.sets - before.sets,
      hard: msOfHalf(now.hard - before.hard),
      easy: msOfHalf(now.easy - before.easy),
    };
  if (before.kind === 'runs' && now.kind === 'runs')
    return {
      code: 'runs',
      others: now.others - before.others,
      first: msOfHalf(now.first - before.first),
      other: msOfHalf(now.other - before.other),
      easy: msOfHalf(now.easy - before.easy),
    };
  if (before.kind === 'on' && now.kind === 'on')
    return { code: 'on', by: msOfHalf(now.hard - before.hard) };
  return undefined;
}

const isStill = (change: Change): boolean =>
  Object.entries(change).every(([key, value]) => key === 'code' || value === 0);

/** The step of one week as a value; `before` is the group's week before it. */
export function changeOf(before: Option | undefined, now: Option, kind: WeekKind): Change {
  if (now.form.kind === 'pinned') return { code: 'pinned' };
  if (before === undefined) return { code: 'first' };
  if (kind !== 'full')
    return { code: kind, main: msOfHalf(now.main), before: msOfHalf(before.main) };
  const change = between(before.form, now.form) ?? {
    code: TO[now.form.kind],
    by: ms(msOfHalf(now.hard) - msOfHalf(before.hard)),
  };
  return isStill(change) && change.code !== 'to-sets' ? { code: 'same' } : change;
}
