/** Where a plot lies in its picture, in pixels: drawn at the size that it has. */
import { type ScaleBand, type ScaleLinear, scaleBand, scaleLinear } from 'd3-scale';

/** The picture, and inside it the edges between which values are drawn. All in pixels. */
export interface Frame {
  readonly width: number;
  readonly height: number;
  /** Inside of the margins. */
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** Room for numbers of four digits on the left, and for dates below. */
export const frameOf = (width: number, height: number): Frame => ({
  width,
  height,
  left: 34,
  right: width - 2,
  top: 22,
  bottom: height - 24,
});

/** Few weeks stand together on the left: one bar across the whole picture says nothing more. */
const WIDEST = 80;
const GAP = 0.3;

/** One column for each week. */
export const columns = (frame: Frame, weeks: readonly number[]): ScaleBand<number> =>
  scaleBand(weeks, [frame.left, Math.min(frame.right, frame.left + weeks.length * WIDEST)])
    .paddingInner(GAP)
    .paddingOuter(GAP / 2);

/** From nothing up to a round number above the most. */
export const upTo = (frame: Frame, most: number): ScaleLinear<number, number> =>
  scaleLinear([0, Math.max(1, most)], [frame.bottom, frame.top]).nice(3);

/** Width of a date under the plot, with a little air. */
const DATE = 46;

/** Every how many columns a date has room. */
export const everyNth = (step: number): number => Math.max(1, Math.ceil(DATE / step));
