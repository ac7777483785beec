import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { CuePlan } from '../../src/domain/cues/cue.ts';
import { planHolding, planOneMore } from '../../src/domain/cues/lanes.ts';
import type { LeadPlan, Voice } from '../../src/domain/lead/lead-plan.ts';
import { planLeadCues } from '../../src/domain/lead/plan-lead-cues.ts';
import { composeTrack } from '../../src/domain/track/compose.ts';
import { clipLengths } from '../../src/domain/track/pack.ts';
import { heardOf, plannedOf } from '../domain/lead/events.ts';
import { demoTogether, group } from '../domain/lead/lead-plans.ts';
import { clipSounds } from '../drivers/sound/clip-sounds.ts';
import type { Pattern } from '../drivers/sound/correlate.ts';
import { decodeFfmpeg, decodeMpg123Binary, RATE } from '../drivers/sound/decode.ts';
import { hearWords, loudestBetween } from '../drivers/sound/hear.ts';
import { type HeardAll, hearAll } from '../drivers/sound/hear-all.ts';
import { samplesIn } from '../drivers/sound/level.ts';
import { voicePack } from '../drivers/sound/voice-pack.ts';

/** One frame of MPEG-2 Layer III at 24 kHz: 576 samples (ISO/IEC 13818-3). */
const FRAME = 24;
/** Taken off the start by mpg123: see the test of decoders. */
const MPG123_EARLY_MS = (529 * 1000) / RATE;

const pack = voicePack();
const lengths = clipLengths(pack.manifest);

const trackOf = (cues: CuePlan) =>
  composeTrack(
    { cues, lanes: { holding: planHolding(lengths), oneMore: planOneMore(lengths) } },
    pack,
  );

/** Eight groups of short steps, a second or two apart: more to say than there is time for. */
const crowded: LeadPlan = {
  groups: [1, 2, 3, 4, 5, 6, 7, 8].map((number) => {
    const voices: Voice[] = ['words', 'words', 'tone', 'words', 'words', 'silent', 'tone', 'words'];
    const session = `1 min easy walk; ${number + 3} x (${20 + number} s run, ${15 + number} s walk)`;
    return group(number, session, {
      startsAt: [0, 0, 1, 2, 2, 5, 7, 60][number - 1] ?? 0,
      voice: voices[number - 1] ?? 'words',
    });
  }),
  tick: true,
};

/** Eight groups for an hour and a half, the last half an hour after the first: two hours. */
const long: LeadPlan = {
  groups: [1, 2, 3, 4, 5, 6, 7, 8].map((number) => {
    const [walk, run] = [number % 3 === 0 ? 2 : 1, 1 + (number % 4)];
    const sets = Math.min(50, Math.floor(80 / (walk + run)));
    const rest = 85 - sets * (walk + run);
    const session = `5 min easy walk; ${sets} x (${walk} min walk, ${run} min run); ${rest} min easy walk`;
    return group(number, session, {
      startsAt: Math.round(((number - 1) * 1800) / 7),
      voice: number === 6 ? 'tone' : 'words',
    });
  }),
  tick: true,
};

let sounds: ReadonlyMap<string, Pattern>;
beforeAll(async () => {
  sounds = await clipSounds(pack);
});

const lines: string[] = [];
afterAll(() => console.log(lines.join('\n')));

function expectAllThere(name: string, { words, calls, tones }: HeardAll): void {
  const most = (late: readonly number[]) => Math.max(0, ...late.map(Math.abs)).toFixed(1);
  const least = Math.min(...words.map(({ match }) => match), ...calls.map(({ match }) => match));
  lines.push(
    `${name}: ${words.length} words at most ${most(words.map(({ lateMs }) => lateMs))} ms from ` +
      `their plan, ${tones.found} tones ${most(tones.lateMs)} ms, ${calls.length} calls and ticks ` +
      `${most(calls.map(({ lateMs }) => lateMs))} ms; least match ${least.toFixed(3)}`,
  );
  expect(tones.found).toBe(tones.planned);
  expect(tones.lateMs.filter((late) => Math.abs(late) > FRAME)).toEqual([]);
  for (const heard of [words, calls]) {
    expect(heard.filter(({ match }) => match < 0.95)).toEqual([]);
    expect(heard.filter(({ lateMs }) => Math.abs(lateMs) > FRAME)).toEqual([]);
  }
}

/**
 * Every change of every group that is to be heard, from its own timeline, against the tones that
 * a detector finds: at its time, or 0.2 s after what was said before, to a frame.
 */
function expectChanges(
  name: string,
  plan: LeadPlan,
  cues: CuePlan,
  starts: readonly number[],
): void {
  const isHeard = (at: number) => starts.some((start) => Math.abs(start - at) <= FRAME);
  const heard = heardOf(cues, plan);
  const changes = [...plannedOf(plan, 'words'), ...plannedOf(plan, 'tone')];
  const moved: number[] = [];
  for (const { at, number } of changes) {
    const index = heard.findIndex((one) => one.at >= at);
    const [before, one] = [heard[index - 1], heard[index]];
    const told = [...(one?.told ?? []).map((who) => who.number), ...(one?.called ?? [])];
    expect(told, `group ${number} at ${at}`).toContain(number);
    // The waking tone comes first, and then the calls of the groups.
    const tones = one?.cue.clips.filter(({ clip }) => clip.startsWith('tone.')) ?? [];
    const first = one?.tone === undefined ? (tones[0]?.at ?? Number.NaN) : one.at;
    expect(isHeard(first), `group ${number} at ${at}`).toBe(true);
    if (first === at) continue;
    moved.push(first - at);
    expect(first).toBe((before?.end ?? Number.NaN) + 200);
  }
  lines.push(
    `${name}: ${changes.length} changes, ${changes.length - moved.length} at their time, ` +
      `${moved.length} later, at most by ${(Math.max(0, ...moved) / 1000).toFixed(1)} s`,
  );
}

describe.each([
  ['the demo, week 3, four groups two minutes apart', demoTogether(3, 120, true)],
  ['eight groups in a crowd', crowded],
  ['eight groups, two hours', long],
])('%s, decoded', (name, plan) => {
  const cues = planLeadCues(plan, { lengths });
  const { bytes, layout } = trackOf(cues);
  const session = (samples: Int16Array) => samples.subarray(0, samplesIn(layout.tail.end));

  test('LEAD-12 every word, tone, call and tick is within one frame of its plan, by ffmpeg', async () => {
    const samples = await decodeFfmpeg(bytes);
    const heard = hearAll(session(samples), cues, sounds);
    expectAllThere(`${name}, ffmpeg`, heard);
    expectChanges(name, plan, cues, heard.tones.starts);
    const { db, atMs } = loudestBetween(session(samples), cues, lengths.lengthOf, 100);
    expect(db, `at ${atMs} ms`).toBeLessThan(-50);
    const lane = samples.subarray(samplesIn(layout.holding.start), samplesIn(layout.oneMore.start));
    const held = hearWords(lane, planHolding(lengths), sounds);
    expect(held[0]?.clip).toBe('phrase.holding');
    expect(held.filter(({ match }) => match < 0.95)).toEqual([]);
    expect(held.filter(({ lateMs }) => Math.abs(lateMs) > FRAME)).toEqual([]);
  });

  test('LEAD-12 mpg123 hears the tones, calls and ticks at the same places', async () => {
    const samples = await decodeMpg123Binary(bytes);
    const { calls, tones } = hearAll(session(samples), cues, sounds, MPG123_EARLY_MS, false);
    // The waking tone begins before what mpg123 leaves of the start.
    const lateMs = tones.lateMs.slice(1);
    expectAllThere(`${name}, mpg123`, { words: [], calls, tones: { ...tones, lateMs } });
  });
});

test('LEAD-12 two hours are two hours, and a crowd is one', () => {
  expect(planLeadCues(long, { lengths }).total).toBeGreaterThanOrEqual(2 * 3_600_000);
  const times = plannedOf(crowded, 'words').map(({ at }) => at);
  const heard = heardOf(planLeadCues(crowded, { lengths }), crowded).map(({ at }) => at);
  expect(times.filter((at) => !heard.includes(at)).length).toBeGreaterThan(15);
});
