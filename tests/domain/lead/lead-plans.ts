import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import type { LeadGroup, LeadPlan, Voice } from '../../../src/domain/lead/lead-plan.ts';
import { VOICES } from '../../../src/domain/lead/lead-plan.ts';
import { readProgramme } from '../../../src/domain/programme/read.ts';
import { layOut } from '../../../src/domain/timeline/lay-out.ts';
import type { Timeline } from '../../../src/domain/timeline/timeline.ts';
import { ms } from '../../../src/domain/units.ts';
import { anyPlan, timelineOf } from '../cues/plans.ts';

const NAMES = ['Wren', 'Dunlin', 'Curlew', 'Swift', 'Teal', 'Plover', 'Avocet', 'Knot'];

/** A group of a session in shorthand or laid out. */
export const group = (
  number: number,
  session: string | Timeline,
  { startsAt = 0, voice = 'words' as Voice } = {},
): LeadGroup => {
  const name = NAMES[number - 1] ?? `Group ${number}`;
  return {
    number,
    id: name.toLowerCase(),
    name,
    timeline: typeof session === 'string' ? timelineOf(session) : session,
    startsAt: ms(startsAt * 1000),
    voice,
  };
};

/** Groups numbered in their order, all spoken, from one start. */
export const together = (...sessions: string[]): LeadPlan => ({
  groups: sessions.map((session, i) => group(i + 1, session)),
  tick: false,
});

/**
 * The demo's session that is done together in a week, all groups.
 *
 * @param apart seconds from one group's start to the next one's
 */
export function demoTogether(week: number, apart: number, tick = false): LeadPlan {
  const file = new URL('../../../src/app/demo/heron-loop.json', import.meta.url);
  const programme = readProgramme(readFileSync(file, 'utf8'));
  if (!programme.ok) throw new Error(JSON.stringify(programme.error));
  const { groups, weeks } = programme.value;
  const { sessions, together: which = 0 } = weeks[week - 1] ?? {};
  return {
    groups: groups.map(({ id }, i) => {
      const plans = sessions?.[id] ?? [];
      const plan = (plans[which] ?? plans[0])?.plan;
      if (plan === undefined) throw new Error(`week ${week} has nothing for ${id}`);
      return { ...group(i + 1, layOut(plan), { startsAt: i * apart }), id, name: id };
    }),
    tick,
  };
}

/** One to eight groups of any sessions, with starts up to 30 min apart and any voices. */
export const anyLead: fc.Arbitrary<LeadPlan> = fc
  .record({
    sessions: fc.array(anyPlan, { minLength: 1, maxLength: 8 }),
    starts: fc.array(fc.oneof(fc.constant(0), fc.nat(20), fc.nat(1800)), {
      minLength: 8,
      maxLength: 8,
    }),
    voices: fc.array(fc.constantFrom(...VOICES, 'words' as const), { minLength: 8, maxLength: 8 }),
    tick: fc.boolean(),
  })
  .map(({ sessions, starts, voices, tick }) => {
    const first = Math.min(...starts.slice(0, sessions.length));
    const groups = sessions.map((session, i) =>
      group(i + 1, layOut(session), {
        startsAt: (starts[i] ?? 0) - first,
        voice: voices[i] ?? 'words',
      }),
    );
    return { groups, tick };
  });
