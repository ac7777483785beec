/** How a person goes through a programme: their own start, pauses, and what they decided. */
export interface Following {
  readonly format: 'towpath-following/1';
  /** The id under which this phone keeps the programme. */
  readonly programmeId: string;
  /** The Monday of this person's own week 1, ISO 8601, where it is not the programme's. */
  readonly startedOn?: string;
  /** In order, none overlapping. An open one has no `to`. Local dates, both included. */
  readonly pauses: readonly Pause[];
  /** In order. */
  readonly decisions: readonly Decision[];
}

/** A pause, by ISO 8601 calendar dates, both included; open while it has no end. */
export interface Pause {
  readonly from: string;
  readonly to?: string;
  readonly why: 'holiday' | 'illness' | 'other';
}

/** What a person decided for the days from `on`; the latest holds. Weeks count from 1. */
export interface Decision {
  readonly on: string;
  /** The week of the programme that is theirs from then on. */
  readonly week: number;
  readonly group: string;
  /** `asked`: back after a sign or niggle, asked about as advised. What was said is not kept. */
  readonly why: 'go-on' | 'repeat' | 'ease' | 'step-up' | 're-entry' | 'asked' | 'chosen';
}
