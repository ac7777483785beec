/** Groups of a small club to be led: short enough for a test to go through all of it. */
import type { Led } from '../../src/app/session-contract.ts';
import { firstChoice, type LeadChoice, leadPlanOf } from '../../src/domain/lead/choose.ts';
import type { Programme } from '../../src/domain/programme/programme.ts';
import { readProgramme } from '../../src/domain/programme/read.ts';

export const MARSH = JSON.stringify({
  format: 'towpath-programme/1',
  id: 'marsh-mile',
  revision: 1,
  title: 'A mile on the marsh',
  language: 'en',
  startDate: '2027-03-01',
  goal: { name: 'The mile', distanceM: 1600 },
  leader: { name: 'Imogen', sign: null, seal: null },
  groups: [
    { id: 'wren', name: 'Wren', for: 'New to it' },
    { id: 'dunlin', name: 'Dunlin', for: 'Some running' },
    { id: 'swift', name: 'Swift', for: 'Running' },
  ],
  weeks: [
    {
      focus: 'Begin',
      effort: 50,
      timesPerWeek: { min: 2, max: 3 },
      sessions: {
        wren: '1 min easy walk; 2 min walk',
        dunlin: '1 min easy walk; 1 min run; 1 min walk',
        swift: '1 min easy walk; 2 min run',
      },
    },
    {
      focus: 'Go on',
      effort: 50,
      timesPerWeek: { min: 2, max: 2 },
      together: 2,
      sessions: {
        wren: ['3 min walk', '4 min walk'],
        dunlin: ['3 min walk', '4 min walk'],
        swift: '5 min run',
      },
    },
  ],
  reminders: [],
});

const read = readProgramme(MARSH);
if (!read.ok) throw new Error('the marsh is no programme');
export const marsh: Programme = read.value;

/** Saturday of the first week. */
export const SATURDAY = '2027-03-06';

/** @param minutes after the first start, by group */
export function ledWith(
  minutes: readonly number[],
  more: Partial<LeadChoice> = {},
  from?: Led['from'],
): Led {
  const first = firstChoice(marsh, SATURDAY);
  const groups = first.groups.map((group, n) => ({ ...group, minutesLater: minutes[n] ?? 0 }));
  const choice = { ...first, groups, ...more };
  const plan = leadPlanOf(marsh, choice);
  if (plan === undefined) throw new Error('nobody is here');
  const programme = { id: marsh.id, title: marsh.title };
  return { key: 'sheet-1', programme, choice, plan, ...(from && { from }) };
}
