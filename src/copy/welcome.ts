export const welcome = {
  title: 'When to walk, when to run',
  what: 'Towpath tells you when to walk and when to run, so that the phone can stay in your pocket. Afterwards it asks how hard that was.',
  how: 'No account, no signal needed: it all stays on this phone.',
  programmes: 'Programmes on this phone',
  which: 'Which one today?',
  by: (leader: string): string => `Led by ${leader}`,
  weeks: (count: number, groups: number): string =>
    `${count} ${count === 1 ? 'week' : 'weeks'}, ${groups} ${groups === 1 ? 'group' : 'groups'}`,
  fromTo: {
    first: (group: string): string => `Where it starts: ${group}, week 1`,
    longest: (group: string): string => `Where it leads: ${group}, the longest session`,
  },
  choose: 'Choose a group',
  open: (group: string): string => `Go on in ${group}`,
  file: {
    title: 'Your leader sent you something?',
    open: 'Open a programme file',
  },
  backup: 'I used Towpath on another phone',
} as const;
