import { type Along, fill, type Where } from '../../../copy/cell-fill.ts';
import { following } from '../../../domain/workshop/edit-cells.ts';
import { cellAt } from '../../../domain/workshop/places.ts';
import type { CellPlace, Sheet } from '../../../domain/workshop/sheet.ts';

/** A place that a session can be copied to, by name. */
export interface PlaceAfter extends Where {
  /** The leader wants what stands there as it is. */
  readonly pinned: boolean;
}

/** Where a session can be copied to, by name, in the order in which a copy gets there. */
export function placesAfter(sheet: Sheet, at: CellPlace, along: Along): readonly PlaceAfter[] {
  const named = ({ week, group }: CellPlace): Where =>
    along === 'weeks'
      ? { name: fill.week(week + 1), week: week + 1 }
      : { name: sheet.groups.find(({ id }) => id === group)?.name ?? group };
  return following(sheet, at, along).map((place) => ({
    ...named(place),
    pinned: cellAt(sheet, place)?.pinned === true,
  }));
}
