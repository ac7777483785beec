/** One long session with the page hidden, in real time: its sound against the clock, its changes, its heap. */
import { lockScreen } from '../../src/copy/lock-screen.ts';
import { parsePlan } from '../../src/domain/programme/parse.ts';
import { layOut } from '../../src/domain/timeline/lay-out.ts';
import type { Timeline } from '../../src/domain/timeline/timeline.ts';
import type { Heard } from '../drivers/browser/visit.ts';

/** What the lock screen was told, with the sound's place and the clock in that moment, in seconds. */
export interface Told {
  readonly title: string;
  readonly at: number;
  readonly clock: number;
}

type Watched = Window & { told: Told[] };

/** What came of it. Times in seconds, the heap in bytes. */
export interface Soaked {
  readonly engine: string;
  readonly total: number;
  readonly planned: number;
  /** Changes that the lock screen was told, and by how much the latest came after its place. */
  readonly reached: number;
  readonly latest: number;
  /** Place less clock since the first reading: each reading's, in its order. */
  readonly drift: readonly number[];
  /** Readings in which the page was seen or the sound stood. */
  readonly seenOrStood: number;
  /** After a collection: at the beginning, and at the end. Not every engine tells. */
  readonly heap?: readonly [number, number];
  readonly nodes?: readonly [number, number];
}

/** A session of so many whole minutes: a twelfth of it before and after, and turns between. */
export function planOf(minutes: number): string {
  const turns = minutes < 30 ? 5 : 25;
  const [edge, each] = [minutes * 5, (minutes * 25) / turns];
  return `${edge} s easy walk; ${turns} x (${each} s run, ${each} s walk); ${edge} s easy walk`;
}

const timelineOf = (minutes: number): Timeline => {
  const plan = parsePlan(planOf(minutes));
  if (!plan.ok) throw new Error(`no session of ${minutes} min`);
  return layOut(plan.value);
};

/** A browser in which a session can be heard out of sight. */
export interface Runner {
  readonly name: string;
  /** From a fresh profile to a running session of so many minutes, with `watchTold` done. */
  start(minutes: number): Promise<void>;
  hide(): Promise<void>;
  heard(): Promise<Heard>;
  told(): Promise<readonly Told[]>;
  /** Brings the page back and waits until it asks how it felt. */
  back(): Promise<void>;
  /** Bytes of heap after a collection, and nodes; only where the engine tells. */
  memory?(): Promise<readonly [number, number]>;
}

/**
 * Runs it from a fresh profile to its end.
 *
 * @param tell is given a line now and then
 */
export async function soak(
  runner: Runner,
  minutes: number,
  tell: (line: string) => void = () => {},
): Promise<Soaked> {
  const timeline = timelineOf(minutes);
  const total = timeline.total / 1000;
  await runner.start(minutes);
  await runner.hide();
  const before = await runner.memory?.();

  const first = await runner.heard();
  const drift: number[] = [];
  let seenOrStood = 0;
  const every = Math.max(2, minutes / 6);
  for (let turn = 1; ; turn += 1) {
    await seconds(every);
    const now = await runner.heard();
    if (now.at > total - 1) break;
    drift.push(now.at - first.at - (now.clock - first.clock));
    if (!now.hidden || now.paused) seenOrStood += 1;
    if (turn % 30 === 0)
      tell(`${runner.name} at ${now.at.toFixed(0)} s: ${inMs(drift.at(-1) ?? 0)} from the clock`);
  }
  await seconds(15);
  const after = await runner.memory?.();
  const told = await runner.told();
  await runner.back();
  return {
    engine: runner.name,
    total,
    ...reachedOf(timeline, told),
    drift,
    seenOrStood,
    ...(before && after && { heap: [before[0], after[0]], nodes: [before[1], after[1]] }),
  };
}

const seconds = (many: number): Promise<void> =>
  new Promise((resolve) => setTimeout(resolve, many * 1000));

/** As lines for a person. */
export function asLines(each: Soaked): readonly string[] {
  const [least, most] = [Math.min(...each.drift), Math.max(...each.drift)];
  const lines = [
    `${(each.total / 60).toFixed(0)} min with the page hidden, ${each.drift.length} readings, ${each.seenOrStood} with the page seen or the sound standing`,
    `place less clock ${inMs(least)} to ${inMs(most)}, at the end ${inMs(each.drift.at(-1) ?? Number.NaN)}`,
    `${each.reached} of ${each.planned} changes reached, told at most ${inMs(each.latest)} after their place`,
  ];
  if (each.heap && each.nodes) {
    const [from, to] = each.heap.map((bytes) => (bytes / 1e6).toFixed(1));
    lines.push(
      `heap ${from} MB at the beginning, ${to} MB at the end; nodes ${each.nodes.join(' and ')}`,
    );
  }
  return lines.map((line) => `soak in ${each.engine}: ${line}`);
}

const inMs = (seconds: number): string => `${(seconds * 1000).toFixed(0)} ms`;

/** In the page: from now on keeps each title given to the lock screen, and where the sound was. */
export function watchTold(): void {
  const all: Told[] = [];
  (window as unknown as Watched).told = all;
  // On the prototype: the browser may throw its one object away, and what was put on it with it.
  const own = Object.getOwnPropertyDescriptor(MediaSession.prototype, 'metadata');
  Object.defineProperty(MediaSession.prototype, 'metadata', {
    configurable: true,
    get() {
      return own?.get?.call(this);
    },
    set(given: MediaMetadata | null) {
      own?.set?.call(this, given);
      const at = document.querySelector('audio')?.currentTime ?? Number.NaN;
      all.push({ title: given?.title ?? '', at, clock: performance.now() / 1000 });
    },
  });
}

/** In the page: what `watchTold` kept. */
export const readTold = (): Told[] => (window as unknown as Watched).told;

/** Which of the session's changes were told, each in its order and not before its place. */
function reachedOf({ segments }: Timeline, told: readonly Told[]) {
  const titles = told.filter(({ title }, n) => title !== told[n - 1]?.title);
  const wanted = [
    ...segments.map((each) => ({ title: lockScreen.segment(each), at: each.start / 1000 })),
    { title: lockScreen.finished, at: (segments.at(-1)?.end ?? 0) / 1000 },
  ].slice(1);
  let from = 0;
  let [reached, latest] = [0, 0];
  for (const change of wanted) {
    const found = titles.findIndex(({ title }, n) => n >= from && title === change.title);
    if (found < 0) continue;
    from = found + 1;
    reached += 1;
    latest = Math.max(latest, (titles[found]?.at ?? Number.NaN) - change.at);
  }
  return { planned: wanted.length, reached, latest };
}
