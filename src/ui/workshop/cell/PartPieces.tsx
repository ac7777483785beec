import { pieces } from '../../../copy/pieces.ts';
import type { Item, Part } from '../../../domain/programme/plan.ts';
import type { PiecePlace } from '../../../domain/workshop/pieces.ts';
import { inside } from '../../../domain/workshop/pieces.ts';
import { addSets, addStep } from '../../../domain/workshop/plan-edits.ts';
import { type Hand, keyOf } from './hand.ts';
import { SetsRow } from './SetsRow.tsx';
import { StepRow } from './StepRow.tsx';

/** A part with its pieces, and what can be added to it. */
export function PartPieces({ part, hand }: { part: Part; hand: Hand }) {
  const place: PiecePlace = { part, path: [] };
  const items = hand.plan[part];
  const name = pieces.part[part];
  return (
    <section className="pieces-part" data-part={part} aria-label={name}>
      <h3>{name}</h3>
      {items.length === 0 ? (
        <p className="soft small">{pieces.none}</p>
      ) : (
        <Items items={items} into={place} hand={hand} />
      )}
      <div className="pieces-add">
        <AddStep into={place} where={name} hand={hand} />
        <button
          type="button"
          className="text-button"
          aria-label={pieces.addSetsTo(name)}
          onClick={() => hand.apply(addSets(hand.plan, part), 'longer')}
        >
          {pieces.addSets}
        </button>
      </div>
    </section>
  );
}

interface ItemsProps {
  readonly items: readonly Item[];
  readonly into: PiecePlace;
  readonly hand: Hand;
}

/** Pieces in a row; a repeat holds a list of its own. */
function Items({ items, into, hand }: ItemsProps) {
  return (
    <ol className="pieces-list">
      {items.map((item, n) => {
        const at = inside(into, n);
        const number = hand.numbers.get(keyOf(at)) ?? 0;
        if (item.kind === 'step')
          return (
            <li key={keyOf(at)}>
              <StepRow step={item} at={at} number={number} hand={hand} />
            </li>
          );
        return (
          <li key={keyOf(at)} className="pieces-sets">
            <SetsRow sets={item} at={at} number={number} hand={hand} />
            <Items items={item.items} into={at} hand={hand} />
            <div className="pieces-add">
              <AddStep into={at} where={pieces.sets(number)} hand={hand} />
            </div>
          </li>
        );
      })}
    </ol>
  );
}

function AddStep({ into, where, hand }: { into: PiecePlace; where: string; hand: Hand }) {
  return (
    <button
      type="button"
      className="text-button"
      data-control={`${keyOf(into)} add`}
      aria-label={pieces.addStepTo(where)}
      onClick={() => hand.apply(addStep(hand.plan, into), 'activity')}
    >
      {pieces.addStep}
    </button>
  );
}
