export const weeks = {
  group: (name: string): string => `Group ${name}`,
  change: 'Change group',
  others: 'All programmes',
  next: 'Next for you',
  open: 'Open this session',
  week: (n: number): string => `Week ${n}`,
  session: (week: number, session: number): string => `Week ${week}, session ${session}`,
  perWeek: (min: number, max: number): string =>
    `${min === max ? min : `${min} to ${max}`} ${max === 1 ? 'session' : 'sessions'}`,
  together: (session: number): string => `Session ${session} is done together.`,
  sessionLink: (n: number): string => `Session ${n}`,
  doneMark: 'done',
  totals: (total: string, main: string): string => `${total} in all, main set ${main}`,
  goal: (name: string, km: string, date: string): string =>
    date === '' ? `Towards ${name}, ${km}` : `Towards ${name}, ${km}, on ${date}`,
  changeNote: 'What changed',
  noPlan: 'Your group has no session this week.',
} as const;
