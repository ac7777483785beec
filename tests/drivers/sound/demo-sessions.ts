import { readFileSync } from 'node:fs';
import type { CuePlan, Talk } from '../../../src/domain/cues/cue.ts';
import { planCues } from '../../../src/domain/cues/plan-cues.ts';
import { parsePlan } from '../../../src/domain/programme/parse.ts';
import type { Plan } from '../../../src/domain/programme/plan.ts';
import { readProgramme } from '../../../src/domain/programme/read.ts';
import { layOut } from '../../../src/domain/timeline/lay-out.ts';
import type { Timeline } from '../../../src/domain/timeline/timeline.ts';
import { clipLengths, type VoicePack } from '../../../src/domain/track/pack.ts';

/** A session as it is planned to be heard. */
interface Heard {
  readonly timeline: Timeline;
  readonly cues: CuePlan;
}

export interface DemoSession extends Heard {
  /** Such as "week 1, wren". */
  readonly name: string;
  readonly talk: Talk;
}

/** Every session of the programme that the app comes with, each different plan of it once. */
export function demoSessions(pack: VoicePack, talk: Talk): DemoSession[] {
  const file = new URL('../../../src/app/demo/heron-loop.json', import.meta.url);
  const programme = readProgramme(readFileSync(file, 'utf8'));
  if (!programme.ok) throw new Error(JSON.stringify(programme.error));
  const { groups, weeks, reminders } = programme.value;
  return weeks.flatMap((week, w) =>
    groups.flatMap((group) =>
      (week.sessions[group.id] ?? []).map(({ plan }, s, all): DemoSession => {
        const which = all.length > 1 ? `, session ${s + 1}` : '';
        const name = `week ${w + 1}, ${group.id}${which}`;
        return { name, talk, ...heardOf(plan, pack, { talk, reminders, target: week.effort }) };
      }),
    ),
  );
}

/** Timeline and cues of a plan in shorthand. */
export function sessionOf(text: string, pack: VoicePack, talk: Talk): Heard {
  const plan = parsePlan(text);
  if (!plan.ok) throw new Error(JSON.stringify(plan.error));
  return heardOf(plan.value, pack, { talk, reminders: ['stand-tall', 'even-arms'], target: 50 });
}

function heardOf(
  plan: Plan,
  pack: VoicePack,
  options: { talk: Talk; reminders: readonly string[]; target: number },
): Heard {
  const timeline = layOut(plan);
  const lengths = clipLengths(pack.manifest);
  return { timeline, cues: planCues(timeline, { ...options, lengths }) };
}
