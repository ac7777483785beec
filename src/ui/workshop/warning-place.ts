import type { OpenSheet } from '../../app/workshop-contract.ts';

/** Where in a sheet a path into the programme file points. Counts from 0. */
export interface PathPlace {
  readonly week?: number;
  readonly group?: string;
  /** Left out when it is about all of the week's sessions. */
  readonly session?: number;
}

/** Reads `weeks[1].sessions.wren[0]`, `weeks[5].effort`, `groups[2].name`; anything else is `{}`. */
export function placeOfPath(path: string): PathPlace {
  const cell = /^weeks\[(\d+)\]\.sessions(?:\.([\w-]+)|\["([^"]+)"\])(?:\[(\d+)\])?/.exec(path);
  if (cell !== null) {
    const [, week, plain, quoted, session] = cell;
    return {
      week: Number(week),
      group: plain ?? quoted ?? '',
      ...(session === undefined ? {} : { session: Number(session) }),
    };
  }
  const week = /^weeks\[(\d+)\]/.exec(path);
  return week === null ? {} : { week: Number(week[1]) };
}

/**
 * Where in the open sheet a path into its outline points: sessions that cannot be read are not in
 * the outline, and are not counted there.
 */
export function placeInSheet({ readings }: Pick<OpenSheet, 'readings'>, path: string): PathPlace {
  const place = placeOfPath(path);
  if (place.week === undefined || place.group === undefined) return place;
  const cells = readings[place.week]?.[place.group] ?? [];
  const readable = cells.flatMap(({ plan }, n) => (plan === undefined ? [] : [n]));
  if (readable.length === cells.length) return place;
  const session = readable[place.session ?? 0];
  return session === undefined ? place : { ...place, session };
}
