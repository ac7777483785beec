const MARKS = /[\u0300-\u036f]/g;
const LONGEST = 40;

/** A name as an id that is safe in a file name, a link and a path; empty when nothing is left. */
const slug = (name: string): string =>
  name
    .normalize('NFKD')
    .replace(MARKS, '')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .slice(0, LONGEST)
    .replace(/^-+|-+$/g, '');

/** An id made from a group's name that no other group has: `wren`, then `wren-2`. */
export function groupId(name: string, taken: readonly string[]): string {
  const base = slug(name) || 'group';
  let id = base;
  for (let n = 2; taken.includes(id); n += 1) id = `${base}-${n}`;
  return id;
}

/**
 * An id for a new programme, made from its title. Phones tell programmes apart by it, so chance
 * is added: two clubs may both call theirs "Six weeks".
 *
 * @param chance letters and digits at random
 */
export function programmeId(title: string, chance: string): string {
  const tail =
    chance
      .toLowerCase()
      .replace(/[^a-z0-9]/g, '')
      .slice(0, 6) || '0';
  return `${slug(title) || 'programme'}-${tail}`;
}
