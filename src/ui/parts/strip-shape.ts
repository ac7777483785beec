/**
 * Geometry of the landscape strip: length is time, height is effort. Pure, in pixels, so that
 * it is drawn at the size it has and hatches keep their density.
 */
import type { Activity, Part } from '../../domain/programme/plan.ts';
import type { Timeline } from '../../domain/timeline/timeline.ts';

/** How the ground below a step is filled: the harder, the denser. */
export type Texture = 'still' | 'walk' | 'brisk' | 'jog' | 'run';

/** Textures grow denser with effort, so that kinds are told apart without colour. */
export function textureOf(activity: Activity): Texture {
  if (activity === 'stand' || activity === 'stretch') return 'still';
  if (activity === 'brisk walk') return 'brisk';
  if (activity.endsWith('walk')) return 'walk';
  return activity.endsWith('jog') ? 'jog' : 'run';
}

/** Room for the strip, in pixels. */
export interface Frame {
  readonly width: number;
  readonly height: number;
}

/** The strip as path data; x and y in pixels of its frame. */
export interface StripShape {
  /** One path per texture that occurs. */
  readonly fills: Readonly<Partial<Record<Texture, string>>>;
  /** The line along the top. */
  readonly ridge: string;
  /** Where each part lies, from left to right. */
  readonly parts: readonly { readonly part: Part; readonly x0: number; readonly x1: number }[];
}

/** Lowest ground, so that standing still can be seen. */
const GROUND = 5;
/** Widest slope between two heights: enough for a landscape, too little to mislead. */
const SLOPE = 3;

const round = (n: number): number => Math.round(n * 10) / 10;

const heightOf = (effort: number, frame: Frame): number =>
  frame.height - GROUND - (Math.min(100, Math.max(0, effort)) / 100) * (frame.height - GROUND - 2);

/**
 * Lays a timeline into a frame. `frame.height` is the baseline; the highest effort (100)
 * reaches 2 px below the top.
 */
export function stripShape(timeline: Timeline, frame: Frame): StripShape {
  const total = Math.max(1, timeline.total);
  const x = (at: number): number => (at / total) * frame.width;
  const tops = timeline.segments.map((segment) => heightOf(segment.effort, frame));
  const fills: Partial<Record<Texture, string>> = {};
  const parts: { part: Part; x0: number; x1: number }[] = [];
  let ridge = '';
  timeline.segments.forEach((segment, i) => {
    const [x0, x1, y] = [x(segment.start), x(segment.end), tops[i] ?? frame.height];
    const slope = Math.min(SLOPE, (x1 - x0) / 4);
    const before = i === 0 ? frame.height : ((tops[i - 1] ?? y) + y) / 2;
    const after = i === tops.length - 1 ? frame.height : ((tops[i + 1] ?? y) + y) / 2;
    const top = [
      [x0, before],
      [x0 + (before === y ? 0 : slope), y],
      [x1 - (after === y ? 0 : slope), y],
      [x1, after],
    ]
      .map(([px, py]) => `${round(px ?? 0)} ${round(py ?? 0)}`)
      .join('L');
    const texture = textureOf(segment.activity);
    fills[texture] =
      `${fills[texture] ?? ''}M${round(x0)} ${frame.height}L${top}L${round(x1)} ${frame.height}Z`;
    ridge += `${i === 0 ? 'M' : 'L'}${top}`;
    const last = parts.at(-1);
    if (last?.part === segment.part) last.x1 = x1;
    else parts.push({ part: segment.part, x0, x1 });
  });
  return { fills, ridge, parts };
}
