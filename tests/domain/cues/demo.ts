import { readFileSync } from 'node:fs';
import type { CueOptions } from '../../../src/domain/cues/plan-cues.ts';
import { readProgramme } from '../../../src/domain/programme/read.ts';
import { layOut } from '../../../src/domain/timeline/lay-out.ts';
import type { Timeline } from '../../../src/domain/timeline/timeline.ts';

export interface DemoTimeline {
  /** Such as "week 1, wren, session 1". */
  readonly name: string;
  readonly timeline: Timeline;
  readonly options: Pick<CueOptions, 'reminders' | 'target'>;
}

/** Every session of the programme that the app comes with. */
export function demoTimelines(): DemoTimeline[] {
  const file = new URL('../../../src/app/demo/heron-loop.json', import.meta.url);
  const programme = readProgramme(readFileSync(file, 'utf8'));
  if (!programme.ok) throw new Error(JSON.stringify(programme.error));
  const { weeks, reminders } = programme.value;
  return weeks.flatMap((week, w) =>
    Object.entries(week.sessions).flatMap(([group, plans]) =>
      plans.map(({ plan }, s) => ({
        name: `week ${w + 1}, ${group}, session ${s + 1}`,
        timeline: layOut(plan),
        options: { reminders, target: week.effort },
      })),
    ),
  );
}
