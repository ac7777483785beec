import type { ReactNode } from 'react';
import { pieces } from '../../../copy/pieces.ts';
import { movePiece } from '../../../domain/workshop/move-piece.ts';
import type { PiecePlace } from '../../../domain/workshop/pieces.ts';
import { removePiece, repeatPiece } from '../../../domain/workshop/plan-edits.ts';
import { type Hand, keyOf } from './hand.ts';

interface MoreProps {
  /** What the piece is called. */
  readonly what: string;
  readonly at: PiecePlace;
  readonly hand: Hand;
}

/** Shows what else can be done with a piece; one piece at a time. */
export function MoreButton({ what, at, hand }: MoreProps) {
  const opened = hand.opened === keyOf(at);
  return (
    <button
      type="button"
      className="text-button piece-more-button"
      data-control={`${keyOf(at)} more`}
      aria-expanded={opened}
      aria-label={pieces.moreOf(what)}
      onClick={() => hand.open(opened ? '' : keyOf(at))}
    >
      {pieces.more}
    </button>
  );
}

/** Moving, repeating and removing a piece, below what only a step has. */
export function PieceMore({ what, at, hand, children }: MoreProps & { children?: ReactNode }) {
  if (hand.opened !== keyOf(at)) return null;
  const { plan, apply } = hand;
  const moves = [
    { control: 'up', by: -1, name: pieces.up, full: pieces.upOf(what) },
    { control: 'down', by: 1, name: pieces.down, full: pieces.downOf(what) },
  ] as const;
  return (
    <div className="piece-more">
      {children}
      <div className="piece-deeds">
        {moves.map(({ control, by, name, full }) => (
          <button
            key={control}
            type="button"
            className="button"
            data-control={`${keyOf(at)} ${control}`}
            aria-label={full}
            onClick={() => apply(movePiece(plan, at, by), control)}
          >
            {name}
          </button>
        ))}
        <button
          type="button"
          className="button"
          aria-label={pieces.repeatOf(what)}
          onClick={() => apply(repeatPiece(plan, at), 'longer')}
        >
          {pieces.repeat}
        </button>
        <button
          type="button"
          className="button"
          aria-label={pieces.removeOf(what)}
          onClick={() => {
            const result = removePiece(plan, at);
            const empty = result.ok && result.value.at.path.length === 0;
            apply(result, empty ? 'add' : 'more');
          }}
        >
          {pieces.remove}
        </button>
      </div>
    </div>
  );
}
