import { type Along, fill } from '../../../copy/cell-fill.ts';
import type { CellPlace, Sheet } from '../../../domain/workshop/sheet.ts';

export interface PlaceAfter {
  readonly name: string;
  /** The leader wants what stands there as it is. */
  readonly pinned: boolean;
}

const isPinned = (sheet: Sheet, { week, group, session }: CellPlace): boolean =>
  sheet.weeks[week]?.sessions[group]?.[session]?.pinned === true;

/** Where a session can be copied to: the weeks after its own, or the groups after its own. */
export function placesAfter(sheet: Sheet, at: CellPlace, along: Along): readonly PlaceAfter[] {
  if (along === 'weeks') {
    return sheet.weeks
      .map((_, week) => ({
        week,
        name: fill.week(week + 1),
        pinned: isPinned(sheet, { ...at, week }),
      }))
      .filter(({ week }) => week > at.week);
  }
  const own = sheet.groups.findIndex(({ id }) => id === at.group);
  return sheet.groups.slice(own + 1).map(({ id, name }) => ({
    name,
    pinned: isPinned(sheet, { ...at, group: id }),
  }));
}
