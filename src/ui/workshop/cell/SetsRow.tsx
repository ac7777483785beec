import { pieces } from '../../../copy/pieces.ts';
import type { Repeat } from '../../../domain/programme/plan.ts';
import type { PiecePlace } from '../../../domain/workshop/pieces.ts';
import { changeCount } from '../../../domain/workshop/plan-edits.ts';
import { type Hand, keyOf } from './hand.ts';
import { MoreButton, PieceMore } from './PieceMore.tsx';

interface SetsRowProps {
  readonly sets: Repeat;
  readonly at: PiecePlace;
  readonly number: number;
  readonly hand: Hand;
}

/** How many times what stands below is done. */
export function SetsRow({ sets, at, number, hand }: SetsRowProps) {
  const what = pieces.sets(number);
  const rounds = sets.items.some(({ kind }) => kind === 'repeat');
  const { count } = sets;
  const change = (by: number) => hand.apply(changeCount(hand.plan, at, count + by));
  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset cannot be laid out in a row everywhere
    <div className="piece" role="group" aria-label={what}>
      <div className="piece-line">
        <div className="piece-amount">
          <button
            type="button"
            className="button"
            data-control={`${keyOf(at)} shorter`}
            aria-label={pieces.oneLess(number, count)}
            onClick={() => change(-1)}
          >
            −
          </button>
          <span className="piece-count">{pieces.times(count, rounds)}</span>
          <button
            type="button"
            className="button"
            data-control={`${keyOf(at)} longer`}
            aria-label={pieces.oneMore(number, count)}
            onClick={() => change(1)}
          >
            +
          </button>
        </div>
        <span className="piece-room" />
        <MoreButton what={what} at={at} hand={hand} />
      </div>
      <PieceMore what={what} at={at} hand={hand} />
    </div>
  );
}
