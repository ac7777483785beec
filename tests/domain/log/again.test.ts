import { describe, expect, it } from 'vitest';
import { askAgainOf } from '../../../src/domain/log/again.ts';
import type { LogEntry } from '../../../src/domain/log/entry.ts';
import { ABOUT, NINE_O_CLOCK } from '../../drivers/sessions.ts';

const MINUTE = 60_000;
const DAY = 24 * 60 * MINUTE;
/** A session from nine o'clock, 20 minutes long, rated as soon as it was over. */
const END = NINE_O_CLOCK + 20 * MINUTE;
const entry = (more: Partial<LogEntry> = {}): LogEntry => ({
  format: 'towpath-log/2',
  id: 'one',
  programme: ABOUT.programme,
  group: ABOUT.group,
  week: 1,
  session: 1,
  plan: ABOUT.plan,
  target: 50,
  startedAt: NINE_O_CLOCK,
  offsetMinutes: 0,
  zone: 'Europe/London',
  localDate: '2027-03-07',
  outcome: 'finished',
  doneSeconds: 1200,
  activeSeconds: 1200,
  covered: [[0, 1200]],
  feeling: { effort: 6 },
  feltAt: END,
  how: 'app',
  ...more,
});
const asked = (now: number, ...entries: LogEntry[]) => askAgainOf(entries, now)?.id;

describe('the effort asked again', () => {
  it('LOG-10 half an hour after the end and the first answer, not before (Foster 2001)', () => {
    expect(asked(END + 30 * MINUTE - 1, entry())).toBeUndefined();
    expect(asked(END + 30 * MINUTE, entry())).toBe('one');
    const rated = entry({ feltAt: END + 10 * MINUTE });
    expect(asked(END + 39 * MINUTE, rated)).toBeUndefined();
    expect(asked(END + 40 * MINUTE, rated)).toBe('one');
  });

  it('LOG-10 up to 14 days, for which ratings were found to stand (Foster 2021)', () => {
    expect(asked(END + 14 * DAY, entry())).toBe('one');
    expect(asked(END + 14 * DAY + 1, entry())).toBeUndefined();
  });

  it('LOG-10 not twice, not when the first answer came after such a pause, not when it was waved off', () => {
    const now = END + 2 * 60 * MINUTE;
    expect(asked(now, entry({ feeling: { effort: 6, effortLater: 5 } }))).toBeUndefined();
    expect(asked(now, entry({ feltAt: END + 45 * MINUTE }))).toBeUndefined();
    expect(askAgainOf([entry()], now, 'one')).toBeUndefined();
    expect(askAgainOf([entry()], now, 'another')?.id).toBe('one');
  });

  it('LOG-10 one that was left without an answer is asked about too, and only the latest', () => {
    const now = END + 2 * 60 * MINUTE;
    const { feltAt: _, ...open } = entry({ feeling: {} });
    expect(asked(now, open)).toBe('one');
    const later = entry({ id: 'two', startedAt: NINE_O_CLOCK + 100 * MINUTE });
    expect(asked(now, later, entry())).toBeUndefined();
    expect(asked(now)).toBeUndefined();
  });
});
