import { dayOf, isMonday } from './dates.ts';
import { pathText } from './path.ts';
import type { ProgrammeProblem } from './problem.ts';
import type { ProgrammeInput } from './shape.ts';

function checkDates({ startDate, goal }: ProgrammeInput): readonly ProgrammeProblem[] {
  const start = startDate === undefined ? undefined : dayOf(startDate);
  const event = goal.date === undefined ? undefined : dayOf(goal.date);
  const problems: ProgrammeProblem[] = [];
  if (start !== undefined && !isMonday(start)) problems.push({ code: 'monday', path: 'startDate' });
  if (start !== undefined && event !== undefined && event < start)
    problems.push({ code: 'date-order', path: 'goal.date', detail: { start: startDate ?? '' } });
  return problems;
}

function checkGroups({ groups }: ProgrammeInput): readonly ProgrammeProblem[] {
  return groups.flatMap(({ id }, n) =>
    groups.findIndex((group) => group.id === id) < n
      ? [{ code: 'group-twice', path: pathText(['groups', n, 'id']), detail: { id } }]
      : [],
  );
}

function checkWeeks({ weeks }: ProgrammeInput): readonly ProgrammeProblem[] {
  return weeks.flatMap(({ timesPerWeek: { min, max }, together }, n) => {
    const problems: ProgrammeProblem[] = [];
    if (max < min)
      problems.push({
        code: 'times-order',
        path: pathText(['weeks', n, 'timesPerWeek', 'max']),
        detail: { min, max },
      });
    if (together !== undefined && together > Math.max(min, max))
      problems.push({
        code: 'together',
        path: pathText(['weeks', n, 'together']),
        detail: { max: Math.max(min, max) },
      });
    return problems;
  });
}

/** What single values cannot show: dates against each other, ids used twice, counts in order. */
export const crossCheck = (input: ProgrammeInput): readonly ProgrammeProblem[] => [
  ...checkDates(input),
  ...checkGroups(input),
  ...checkWeeks(input),
];
