import { parsePlan } from '../../domain/programme/parse.ts';
import type { Plan } from '../../domain/programme/plan.ts';
import type { PlanProblem } from '../../domain/programme/problem.ts';
import type { SessionPlan, Week } from '../../domain/programme/programme.ts';
import { layOut } from '../../domain/timeline/lay-out.ts';
import type { Timeline } from '../../domain/timeline/timeline.ts';
import type { Cell, Sheet, SheetWeek } from '../../domain/workshop/sheet.ts';
import type { OpenSheet, Reading } from '../workshop-contract.ts';

/** Texts that are remembered: more than any programme has cells. */
const REMEMBERED = 4000;

type Understood =
  | { readonly plan: Plan; readonly timeline: Timeline; readonly session: SessionPlan }
  | { readonly problem: PlanProblem };

type WeekReading = Readonly<Record<string, readonly Reading[]>>;

/** Reads sheets, and remembers what it read. */
export interface Reader {
  /** Everything that follows from a sheet. What did not change stays the same object. */
  read(sheet: Sheet): Pick<OpenSheet, 'readings' | 'outline'>;
}

/** Reads sheets. Each text is read and laid out once, each week put together once. */
export function createReader(): Reader {
  const texts = new Map<string, Understood>();
  const cells = new WeakMap<Cell, Reading>();
  const weeks = new WeakMap<SheetWeek, { readings: WeekReading; outline: Week }>();

  function understand(text: string): Understood {
    const known = texts.get(text);
    if (known !== undefined) return known;
    const plan = parsePlan(text);
    const understood: Understood = plan.ok
      ? { plan: plan.value, timeline: layOut(plan.value), session: { text, plan: plan.value } }
      : { problem: plan.error };
    const [oldest] = texts.keys();
    if (texts.size >= REMEMBERED && oldest !== undefined) texts.delete(oldest);
    texts.set(text, understood);
    return understood;
  }

  function readCell(cell: Cell): Reading {
    const known = cells.get(cell);
    if (known !== undefined) return known;
    const now = understand(cell.text);
    const shown = 'problem' in now && cell.good !== undefined ? understand(cell.good) : now;
    const reading: Reading = {
      ...('plan' in shown ? { plan: shown.plan, timeline: shown.timeline } : {}),
      problems: 'problem' in now ? [now.problem] : [],
    };
    cells.set(cell, reading);
    return reading;
  }

  const sessionOf = ({ text, good }: Cell): readonly SessionPlan[] => {
    const found = [text, ...(good === undefined ? [] : [good])].map(understand);
    return found.flatMap((each) => ('session' in each ? [each.session] : [])).slice(0, 1);
  };

  function readWeek(week: SheetWeek): { readings: WeekReading; outline: Week } {
    const known = weeks.get(week);
    if (known !== undefined) return known;
    const { sessions, ...rest } = week;
    const both = (read: (cell: Cell) => readonly (Reading | SessionPlan)[]) =>
      Object.fromEntries(
        Object.entries(sessions).map(([group, list]) => [group, list.flatMap(read)]),
      );
    const made = {
      readings: both((cell) => [readCell(cell)]) as WeekReading,
      outline: { ...rest, sessions: both(sessionOf) as Week['sessions'] },
    };
    weeks.set(week, made);
    return made;
  }

  return {
    read({ groups, weeks: all, goal, startDate }) {
      const read = all.map(readWeek);
      return {
        readings: read.map(({ readings }) => readings),
        outline: {
          groups,
          weeks: read.map(({ outline }) => outline),
          goal,
          ...(startDate === undefined ? {} : { startDate }),
        },
      };
    },
  };
}
