import type { Edit } from './edit.ts';
import { groupId } from './ids.ts';
import { inOneLine } from './one-line.ts';
import { cellsOf, copied, moved } from './places.ts';
import type { Sheet } from './sheet.ts';

type Of<K extends Edit['kind']> = Extract<Edit, { readonly kind: K }>;

/** A new group at the end, doing what the last one does: so they end together until it is changed. */
export function addGroup(sheet: Sheet, edit: Of<'add-group'>): Sheet {
  const name = inOneLine(edit.name);
  const ids = sheet.groups.map(({ id }) => id);
  const id = groupId(name, ids);
  const last = ids.at(-1) ?? '';
  return {
    ...sheet,
    groups: [...sheet.groups, { id, name, for: inOneLine(edit.for) }],
    weeks: sheet.weeks.map((week) => ({
      ...week,
      sessions: { ...week.sessions, [id]: cellsOf(week, last).map(copied) },
    })),
  };
}

/** Its id stays: phones know by it which group somebody chose. */
export function changeGroup(sheet: Sheet, { id, change }: Of<'group'>): Sheet {
  const at = sheet.groups.findIndex((group) => group.id === id);
  const before = sheet.groups[at];
  if (before === undefined) return sheet;
  const name = inOneLine(change.name ?? before.name);
  const whom = inOneLine(change.for ?? before.for);
  if (name === before.name && whom === before.for) return sheet;
  return { ...sheet, groups: sheet.groups.with(at, { ...before, name, for: whom }) };
}

/** Takes a group and its sessions out of every week. */
export function removeGroup(sheet: Sheet, { id }: Of<'remove-group'>): Sheet {
  if (!sheet.groups.some((group) => group.id === id)) return sheet;
  return {
    ...sheet,
    groups: sheet.groups.filter((group) => group.id !== id),
    weeks: sheet.weeks.map((week) => {
      const { [id]: _gone, ...sessions } = week.sessions;
      return { ...week, sessions };
    }),
  };
}

/** Moves a group to another place in the order. */
export function moveGroup(sheet: Sheet, { id, to }: Of<'move-group'>): Sheet {
  const from = sheet.groups.findIndex((group) => group.id === id);
  const groups = moved(sheet.groups, from, to);
  return groups === sheet.groups ? sheet : { ...sheet, groups };
}
