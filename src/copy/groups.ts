export const groups = {
  title: 'Choose a group',
  find: 'Find my group by a few questions',
  lead: 'Take the one that sounds like today, not like next month. You can change at any time, and nothing is lost.',
  choose: (name: string): string => `Choose ${name}`,
  chosen: 'Your group',
  week: (n: number): string => `Week ${n}`,
  stripOf: (name: string, week: number): string => `Week ${week} for ${name}.`,
  unsure: 'Between two? Start with the easier one. If it feels too easy twice, move up.',
} as const;
