import { byWeek, weeksUpTo } from '../../src/domain/back/weeks.ts';
import type { LogEntry } from '../../src/domain/log/entry.ts';
import { weeksBack } from '../drivers/all-weeks.ts';
import { marshProgramme } from '../drivers/exchange/programmes.ts';
import { median, type Table } from './table.ts';

const TURNS = 30;
const ENTRIES = 3000;
const DAY_MS = 86_400_000;
const FIRST = Date.UTC(2010, 2, 1, 17, 40);

/** Three a week for twenty years. */
function log(planOf: (n: number) => string): readonly LogEntry[] {
  return Array.from({ length: ENTRIES }, (_, n): LogEntry => {
    const startedAt = FIRST + Math.floor((n * 7) / 3) * DAY_MS;
    return {
      format: 'towpath-log/2',
      id: `entry-${n}`,
      programme: { id: 'heron-loop-spring', revision: 1, title: 'Six weeks to the Heron Loop' },
      group: { id: 'curlew', name: 'Curlew' },
      week: 1 + (n % 6),
      session: 1 + (n % 3),
      plan: planOf(n),
      target: 50,
      startedAt,
      offsetMinutes: 60,
      zone: 'Europe/Amsterdam',
      localDate: new Date(startedAt).toISOString().slice(0, 10),
      outcome: 'finished',
      doneSeconds: 1500,
      activeSeconds: 1560,
      covered: [
        [0, 700],
        [760, 1560],
      ],
      feeling: { effort: 3 + (n % 5) },
      how: 'app',
    };
  });
}

function plansOfTheMarsh(): readonly string[] {
  const { weeks } = marshProgramme(6) as {
    weeks: readonly { sessions: Record<string, string | readonly string[]> }[];
  };
  return weeks.flatMap(({ sessions }) => Object.values(sessions).flat());
}

function row(what: string, job: () => unknown): readonly string[] {
  const times = Array.from({ length: TURNS }, () => {
    const begun = performance.now();
    job();
    return performance.now() - begun;
  });
  const say = (value: number): string => `${value.toFixed(1)} ms`;
  return [what, say(median(times)), say(median(times) * 4), say(Math.max(...times))];
}

function shown(entries: readonly LogEntry[]): unknown {
  const log = byWeek(entries);
  return weeksUpTo(log, Math.max(...log.keys()), 8);
}

/** A log of 3,000 sessions sorted into weeks, and its latest eight read: what "look back" needs. */
export function lookingBack(): Table {
  const marsh = plansOfTheMarsh();
  const alike = log((n) => marsh[n % marsh.length] ?? '');
  const different = log((n) => `5 min easy walk; 6 x (${30 + n} s run, 1 min walk); 5 min walk`);
  return {
    title: 'Looking back over 3,000 sessions',
    how: `Plans read, laid out and cut to what was gone through, in Node; nothing kept from the time before. Median of ${TURNS}. Budget for what opens: 200 ms at a processor four times slower.`,
    head: ['What', 'Median', 'Four times slower', 'Slowest'],
    rows: [
      row('What opens: all sorted, eight weeks read', () => shown(alike)),
      row('The same, every session another plan', () => shown(different)),
      row('All weeks read', () => weeksBack(alike)),
      row('All weeks read, every session another plan', () => weeksBack(different)),
    ],
  };
}
