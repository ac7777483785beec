import type { Heard, HeardEntry } from '../../domain/board/heard.ts';
import type { HeardRow } from './schema.ts';

/*
 * What is known of a person as a text with each session as a list of values. A browser brings
 * records from its database in a time that grows with their bytes: 500 people of 36 sessions are
 * 4.5 MB as objects and 2 MB like this, and are read in less than half the time.
 */

/** Columns in this order for ever; those at the end that say nothing are left out. */
type Values = readonly [
  id: string,
  week: number,
  session: number,
  /** Place in the list of groups, of zones and of times told. */
  group: number,
  zone: number,
  toldAt: number,
  startedAt: number,
  offsetMinutes: number,
  localDate: string,
  doneSeconds: number,
  activeSeconds: number,
  target: HeardEntry['target'],
  effort?: number | null,
  effortLater?: number | null,
  niggle?: HeardEntry['niggle'] | null,
  warningSign?: true | null,
  note?: string | null,
];

interface Packed extends Omit<Heard, 'entries'> {
  readonly groups: readonly string[];
  readonly zones: readonly string[];
  readonly times: readonly number[];
  readonly rows: readonly Values[];
}

/** Values, each once, and where each of them is. */
function listOf<T>(): { readonly list: T[]; place(value: T): number } {
  const list: T[] = [];
  const places = new Map<T, number>();
  return {
    list,
    place(value) {
      const at = places.get(value) ?? list.push(value) - 1;
      places.set(value, at);
      return at;
    },
  };
}

function trimmed(values: readonly unknown[]): Values {
  const last = values.findLastIndex((value) => value !== undefined);
  return values.slice(0, last + 1) as unknown as Values;
}

/** A person as they lie in the database. */
export function toRow({ entries, ...rest }: Heard): HeardRow {
  const [groups, zones, times] = [listOf<string>(), listOf<string>(), listOf<number>()];
  const rows = entries.map((e) =>
    trimmed([
      e.id,
      e.week,
      e.session,
      groups.place(e.group),
      zones.place(e.zone),
      times.place(e.toldAt),
      e.startedAt,
      e.offsetMinutes,
      e.localDate,
      e.doneSeconds,
      e.activeSeconds,
      e.target,
      e.effort,
      e.effortLater,
      e.niggle,
      e.warningSign,
      e.note,
    ]),
  );
  const packed: Packed = {
    ...rest,
    groups: groups.list,
    zones: zones.list,
    times: times.list,
    rows,
  };
  return { format: 'towpath-heard-row/1', key: rest.key, json: JSON.stringify(packed) };
}

function entryOf(values: Values, { groups, zones, times }: Packed): HeardEntry {
  const [id, week, session, group, zone, toldAt, startedAt, offsetMinutes, localDate, ...more] =
    values;
  const [doneSeconds, activeSeconds, target, effort, effortLater, niggle, warningSign, note] = more;
  return {
    id,
    week,
    session,
    group: groups[group] ?? '',
    startedAt,
    offsetMinutes,
    zone: zones[zone] ?? '',
    localDate,
    doneSeconds,
    activeSeconds,
    target,
    toldAt: times[toldAt] ?? 0,
    ...(effort != null && { effort }),
    ...(effortLater != null && { effortLater }),
    ...(niggle != null && { niggle }),
    ...(warningSign != null && { warningSign }),
    ...(note != null && { note }),
  };
}

/** The person that a row is of; nothing where it cannot be read. */
export function fromRow({ json }: Pick<HeardRow, 'json'>): Heard | undefined {
  try {
    const packed = JSON.parse(json) as Packed;
    if (packed.format !== 'towpath-heard/1') return undefined;
    const { groups: _g, zones: _z, times: _t, rows, ...rest } = packed;
    return { ...rest, entries: rows.map((values) => entryOf(values, packed)) };
  } catch {
    return undefined;
  }
}
