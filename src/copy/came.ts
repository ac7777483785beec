import { dateFormat } from './date-format.ts';

/** Where a programme came from, short enough for a card. */
const WEEK_MS = 6 * 24 * 3600 * 1000;

const recent = dateFormat({
  weekday: 'short',
  hour: '2-digit',
  minute: '2-digit',
});
const earlier = dateFormat({
  day: 'numeric',
  month: 'long',
  year: 'numeric',
});

/** When something came, as this phone tells time: `Mon 20:14`; a week later the date. */
export const cameAt = (at: number, now: number): string =>
  now - at < WEEK_MS ? recent(at).replace(',', '') : earlier(at);

interface From {
  readonly revision: number;
  readonly leader: string;
  readonly at: number;
  readonly signed: boolean;
  readonly apart: boolean;
}

/** "Revision 2, from Imogen, received Mon 20:14." People compare it with each other. */
export function cameLine({ revision, leader, at, signed, apart }: From, now: number): string {
  const base = `Revision ${revision}, from ${leader}, received ${cameAt(at, now)}.`;
  return `${base}${signed ? '' : ' Not signed.'}${apart ? ' A separate copy.' : ''}`;
}

/** On the first page and in the settings: the ways to the two pages. */
export const exchangeWays = {
  join: 'Open a link, a code or a message',
  lead: 'I lead a group',
} as const;
