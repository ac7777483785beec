/** As many groups as a programme may have: those of the demo, and four that do the same. */
import { readProgramme } from '../../../src/domain/programme/read.ts';
import { DEMO } from '../fake-app.ts';

const NAMES = ['Redshank', 'Avocet', 'Lapwing', 'Oystercatcher'];

function twice(): string {
  const file = JSON.parse(DEMO.text);
  const more = DEMO.groups.map((group, n) => ({
    ...group,
    id: `${group.id}-2`,
    name: NAMES[n] ?? group.name,
  }));
  for (const { sessions } of file.weeks)
    for (const { id } of DEMO.groups) sessions[`${id}-2`] = sessions[id];
  return JSON.stringify({ ...file, groups: [...file.groups, ...more] });
}

const read = readProgramme(twice());
if (!read.ok) throw new Error('eight groups are no programme');
export const EIGHT_GROUPS = read.value;
