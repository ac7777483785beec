import type { CellPlace } from '../../domain/workshop/sheet.ts';

/** Addresses of the workshop. Weeks and sessions are counted from 1 in them, as people do. */
export const shelfAt = '/lead';
/** What was sent of a programme, to be sent again as it went. */
export const sentAt = (programmeId: string): string => `/lead/sent/${programmeId}`;
/** A sheet as a table of weeks and groups. */
export const deskAt = (key: string): string => `/lead/${key}`;
/** A page about the whole sheet. */
export const pageAt = (key: string, page: 'details' | 'draft' | 'paper' | 'send'): string =>
  `/lead/${key}/${page}`;
/** A draft that was asked for at this address. */
export const seenOf = (draftPage: string): string => `${draftPage}/seen`;
/** On the day: who is here, and all groups side by side. */
export const leadDayAt = (key: string): string => `/lead/${key}/day`;
/** The session that is led, while it is under way. */
export const leadingAt = (key: string): string => `/lead/${key}/day/go`;
/** The desk with a week open. `week` from 0. */
export const weekAt = (key: string, week: number): string => `/lead/${key}/week/${week + 1}`;
/** The desk with one session open for writing. */
export const cellAt = (key: string, { week, group, session }: CellPlace): string =>
  `/lead/${key}/${week + 1}/${group}/${session + 1}`;
/** Listening to one session before it is sent. */
export const hearAt = (key: string, at: CellPlace): string => `${cellAt(key, at)}/hear`;

/** A place from the parts of an address; undefined when they are no counts. */
export function placeAt(
  week: string | undefined,
  group: string | undefined,
  session: string | undefined,
): CellPlace | undefined {
  const [w, s] = [Number(week), Number(session)];
  if (!Number.isInteger(w) || !Number.isInteger(s) || w < 1 || s < 1) return undefined;
  return { week: w - 1, group: group ?? '', session: s - 1 };
}
