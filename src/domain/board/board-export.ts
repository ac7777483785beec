import type { Programme } from '../programme/programme.ts';
import type { KeptOf } from './erase.ts';

/** The format of one programme's people as JSON. */
export const BOARD_EXPORT_FORMAT = 'towpath-board-export/1';

/**
 * One programme's people as JSON for other programs: every record exactly as it is kept. Without a
 * byte order mark (RFC 8259, section 8.1).
 *
 * @param at UTC milliseconds at which it is made
 */
export const boardExport = (
  { id, title, revision }: Pick<Programme, 'id' | 'title' | 'revision'>,
  { heard, days, setup }: KeptOf,
  at: number,
): string =>
  `${JSON.stringify(
    {
      format: BOARD_EXPORT_FORMAT,
      madeAt: at,
      programme: { id, title, revision },
      people: heard,
      days,
      ...(setup === undefined ? {} : { setup }),
    },
    null,
    1,
  )}\n`;
