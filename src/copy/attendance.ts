/** Who came: the list on the phone and on paper. */

import { HELP } from './cautions.ts';
import { many } from './grammar.ts';

export const attendance = {
  title: 'Who came',
  back: 'The board',
  help: 'Every tick is kept at once. It stands on the board beside what people tell themselves.',
  day: 'Day',
  week: 'Week',
  weekOption: (n: number, focus: string): string => (focus === '' ? `${n}` : `${n}: ${focus}`),
  session: 'Session',
  sessionOption: (n: number, isTogether: boolean): string =>
    isTogether ? `${n}, together` : `${n}`,
  search: 'Find by name',
  noneFound: 'Nobody by that name. Add them below.',
  nobody: 'Nobody is on the list yet. Add the first name, or print the list with empty lines.',
  there: (n: number): string => (n === 1 ? '1 is there' : `${n} are there`),
  thereOf: (n: number, of: number): string => `${n} of ${of} there`,
  gone: (id: string): string => `${id} (no longer in the programme)`,
  add: 'Add a name',
  addTitle: 'Add a name',
  name: 'Name',
  nameHelp: 'As the group calls them. It stays on this phone.',
  nameNeeded: 'Write a name first.',
  known: (name: string, group: string): string =>
    `${name} is on the list already, in ${group}. If this is somebody else, write the name so that you can tell them apart.`,
  group: 'Group',
  addYes: 'Add and tick',
  addNo: 'Leave it',
  addDone: 'Done',
  added: (name: string): string => `${name} is on the list and ticked.`,
  earlier: 'Earlier lists',
  earlierDay: (day: string, there: number): string => `${day}: ${many(there, 'person', 'people')}`,
  print: 'Print the list',
  printHelp:
    'A4, with a box for each name and empty lines for new people. Ticks made here are printed too.',
  paper: {
    with: (leader: string): string => (leader === '' ? '' : `with ${leader}`),
    what: (week: number, session: number): string => `Week ${week}, session ${session}`,
    count: (group: string, known: number): string => (known === 0 ? group : `${group} (${known})`),
    there: 'There in all:',
    unwell: `If somebody is unwell: ${HELP.slice(0, 2).join(' ')}`,
    care: 'This list holds names. Keep it with you, tick the names in Towpath afterwards, then destroy it.',
  },
} as const;
