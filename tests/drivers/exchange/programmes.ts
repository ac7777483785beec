/**
 * Programmes as a leader would send them: four groups that end together, a focus of its own in
 * every week, some notes and second sessions. Written by hand so that sizes are those of use.
 */

type Cells = readonly [wren: Plans, dunlin: Plans, curlew: Plans, swift: Plans];
type Plans = string | readonly string[];

interface Row {
  readonly focus: string;
  readonly effort: number;
  readonly cells: Cells;
}

const EASY = '5 min easy walk';
const around = (main: string): string => `${EASY}; ${main}; ${EASY}`;

const ROWS: readonly Row[] = [
  {
    focus: 'Find your rhythm. Start slower than feels right.',
    effort: 50,
    cells: [
      around('7 x (1 min walk, 2 min brisk walk)'),
      around('7 x (2 min walk, 1 min easy jog)'),
      around('7 x (1 min walk, 2 min run)'),
      around('10 min run; 1 min walk; 10 min run'),
    ],
  },
  {
    focus: 'Talk as you go. Whole sentences mean the pace is right.',
    effort: 50,
    cells: [
      around('8 x (1 min walk, 2 min brisk walk)'),
      around('8 x (1 min 45 s walk, 1 min 15 s easy jog)'),
      around('6 x (3 min run "Tall, not fast", 1 min walk)'),
      around('13 min run; 1 min walk; 10 min run'),
    ],
  },
  {
    focus: 'Two kinds of day: a steady one, and one with more changes.',
    effort: 55,
    cells: [
      [around('5 x (4 min brisk walk, 1 min walk)'), around('5 x (3 min walk, 2 min brisk walk)')],
      [around('10 x (1 min 15 s jog, 1 min 15 s walk)'), around('5 x (2 min jog, 3 min walk)')],
      [around('5 x (4 min run, 1 min walk)'), around('10 x (90 s run @ 70%, 1 min walk)')],
      around('17 min run; 1 min walk; 7 min run'),
    ],
  },
  {
    focus: 'An easy week. Rest is when you get stronger.',
    effort: 45,
    cells: [
      around('4 x (4 min brisk walk, 1 min walk)'),
      around('8 x (1 min 15 s jog, 1 min 15 s walk)'),
      around('4 x (4 min run, 1 min walk)'),
      around('20 min easy jog'),
    ],
  },
  {
    focus: 'A little longer. Let the walks be real walks.',
    effort: 60,
    cells: [
      around('4 x (6 min brisk walk, 1 min walk)'),
      around('7 x (2 min jog, 2 min walk)'),
      around('4 x (5 min 30 s run, 1 min 30 s walk)'),
      around('22 min run @ 60%; 1 min walk; 5 min run @ 60%'),
    ],
  },
  {
    focus: 'The sea wall week: hills up easy, down easier.',
    effort: 60,
    cells: [
      around('3 x (8 min brisk walk, 2 min walk)'),
      around('6 x (3 min jog, 2 min walk "Sip, and look for the herons")'),
      around('3 x (8 min run, 2 min walk)'),
      around('10 min run; 5 x (1 min strong run, 2 min easy jog); 5 min run'),
    ],
  },
  {
    focus: 'The longest week. Finish every session with something left.',
    effort: 60,
    cells: [
      around('30 min brisk walk'),
      around('2 x (3 x (3 min jog, 1 min walk), 3 min walk)'),
      around('2 x (14 min run, 1 min walk)'),
      around('30 min run "All in one go, as slowly as you like"'),
    ],
  },
  {
    focus: 'Light legs. Rest well, then enjoy the Loop on Sunday.',
    effort: 50,
    cells: [
      around('3 x (4 min brisk walk, 1 min walk)'),
      around('5 x (90 s jog, 90 s walk)'),
      around('3 x (4 min run, 1 min walk)'),
      around('15 min easy jog'),
    ],
  },
  {
    focus: 'Back on the marsh. Take it as it comes.',
    effort: 50,
    cells: [
      around('5 x (5 min brisk walk, 1 min walk)'),
      around('6 x (3 min jog, 2 min walk)'),
      around('2 x (12 min run, 1 min walk)'),
      around('25 min run'),
    ],
  },
  {
    focus: 'Run with someone from the next group.',
    effort: 55,
    cells: [
      around('4 x (7 min brisk walk, 1 min walk)'),
      around('5 x (4 min jog, 2 min walk)'),
      around('20 min run; 2 min walk; 8 min run'),
      around('6 x (3 min run @ 70%, 2 min easy jog)'),
    ],
  },
  {
    focus: 'The whole distance, as slowly as you like.',
    effort: 60,
    cells: [
      around('45 min brisk walk'),
      around('8 x (4 min jog, 90 s walk)'),
      around('25 min run; 2 min walk; 10 min run'),
      around('40 min run'),
    ],
  },
  {
    focus: 'Fewer minutes, same breath. See you at the start.',
    effort: 45,
    cells: [
      around('15 min brisk walk'),
      around('4 x (3 min jog, 1 min walk)'),
      around('15 min easy jog'),
      around('12 min easy jog; 3 x (20 s fast run, 1 min walk)'),
    ],
  },
];

const GROUPS = [
  { id: 'wren', name: 'Wren', for: 'New to exercise, or coming back to it: all walking' },
  { id: 'dunlin', name: 'Dunlin', for: 'Happy walking, curious about more: mostly walking' },
  { id: 'curlew', name: 'Curlew', for: 'Can run a minute or two: mostly running' },
  { id: 'swift', name: 'Swift', for: 'Can run ten minutes without a stop' },
] as const;

const WORDS: Readonly<Record<number, string>> = { 4: 'Four', 6: 'Six', 8: 'Eight', 12: 'Twelve' };

/** The object of a programme file of 1 to 12 weeks and four groups, without keys. */
export function marshProgramme(weeks: number): Record<string, unknown> {
  return {
    format: 'towpath-programme/1',
    id: 'heron-loop-spring',
    revision: 1,
    title: `${WORDS[weeks] ?? weeks} weeks to the Heron Loop`,
    language: 'en',
    startDate: '2027-03-01',
    goal: { name: 'Heron Loop', distanceM: 5000, date: '2027-05-30' },
    leader: { name: 'Imogen', sign: null, seal: null },
    groups: GROUPS,
    weeks: ROWS.slice(0, weeks).map(({ focus, effort, cells }) => ({
      focus,
      effort,
      timesPerWeek: { min: 2, max: 3 },
      together: 1,
      sessions: Object.fromEntries(GROUPS.map(({ id }, n) => [id, cells[n]])),
    })),
    reminders: [
      'stand-tall',
      'even-arms',
      'soft-shoulders',
      'light-steps',
      'talk-test',
      'look-both-ways',
      'Wave at the herons',
      'Mind the sheep by the second gate',
    ],
  };
}
