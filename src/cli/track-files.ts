import { writeFile } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import { programmeProblem } from '../copy/programme.ts';
import { planCues } from '../domain/cues/plan-cues.ts';
import { toWebVtt } from '../domain/exchange/captions.ts';
import type { Programme, SessionPlan, Week } from '../domain/programme/programme.ts';
import { readProgramme } from '../domain/programme/read.ts';
import { planTotals } from '../domain/programme/totals.ts';
import { fail, ok, type Result } from '../domain/result.ts';
import { layOut } from '../domain/timeline/lay-out.ts';
import { composeExport } from '../domain/track/compose.ts';
import { clipLengths, type VoicePack } from '../domain/track/pack.ts';
import { makeFolder } from './make-folder.ts';
import { textOf } from './text-of.ts';
import type { Order } from './track-order.ts';
import { readVoicePack } from './voice-pack.ts';

/** What `track` prints, on one line. */
export interface Written {
  readonly mp3: string;
  readonly vtt: string;
  readonly seconds: number;
  readonly mainSeconds: number;
  readonly runSeconds: number;
  readonly segments: number;
}

/**
 * Write one session's sound and captions; the error is a sentence.
 *
 * @param base the folder that relative places are counted from
 */
export async function writeTrack(order: Order, base: string): Promise<Result<Written, string>> {
  const text = await textOf(resolve(base, order.file));
  if (!text.ok) return fail(`${order.file}: ${text.error}`);
  const programme = readProgramme(text.value);
  if (!programme.ok) {
    const [first, ...more] = programme.error;
    const others = more.length > 0 ? ` (${more.length} more: npm run check says all)` : '';
    return fail(`${order.file}: ${first ? programmeProblem(first) : ''}${others}`);
  }
  const chosen = sessionOf(programme.value, order);
  if (!chosen.ok) return chosen;
  const pack = await readVoicePack();
  if (!pack.ok) return pack;
  return writeSession(programme.value, chosen.value, pack.value, order, base);
}

interface Chosen {
  readonly week: Week;
  readonly session: SessionPlan;
}

/** The session that was asked for; a week with one plan repeats it. */
function sessionOf(programme: Programme, order: Order): Result<Chosen, string> {
  const { groups, weeks } = programme;
  const week = weeks[order.week - 1];
  if (week === undefined) return fail(`There is no week ${order.week}: it has ${weeks.length}.`);
  const plans = Object.hasOwn(week.sessions, order.group) ? week.sessions[order.group] : undefined;
  if (plans === undefined) {
    return fail(`There is no group "${order.group}": ${groups.map(({ id }) => id).join(', ')}.`);
  }
  const count = Math.max(plans.length, week.timesPerWeek.max);
  const session = plans.length === 1 ? plans[0] : plans[order.session - 1];
  if (session === undefined || order.session > count) {
    const most = plans.length === 1 ? count : plans.length;
    return fail(`There is no session ${order.session} in week ${order.week}: it has ${most}.`);
  }
  return ok({ week, session });
}

async function writeSession(
  programme: Programme,
  { week, session }: Chosen,
  pack: VoicePack,
  order: Order,
  base: string,
): Promise<Result<Written, string>> {
  const { reminders } = programme;
  const timeline = layOut(session.plan);
  const lengths = clipLengths(pack.manifest);
  const cues = planCues(timeline, { talk: order.talk, reminders, target: week.effort, lengths });
  const name = nameOf(programme, order);
  const [mp3, vtt] = [join(order.out, `${name}.mp3`), join(order.out, `${name}.vtt`)];
  try {
    await makeFolder(resolve(base, order.out));
    await writeFile(resolve(base, mp3), composeExport(cues, pack));
    await writeFile(resolve(base, vtt), toWebVtt(cues));
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? String(error.code) : 'unknown';
    return fail(`${order.out}: The files cannot be written there (${code}).`);
  }
  return ok({ mp3, vtt, ...planTotals(session.plan), segments: timeline.segments.length });
}

/** `heron-loop-spring-w1-wren`: ids hold only letters, digits and hyphens. */
const nameOf = ({ id }: Programme, { week, group, session }: Order): string =>
  `${id}-w${week}-${group}${session > 1 ? `-${session}` : ''}`;
