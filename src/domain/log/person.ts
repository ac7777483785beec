/**
 * Who a person is to the leader of one programme, as this phone keeps it. Nothing of it leaves the
 * phone but in a response that the person chose to send.
 */
export interface Person {
  readonly format: 'towpath-person/1';
  /** The id under which this phone keeps the programme. */
  readonly programmeId: string;
  /** Random, made for this programme alone: by it a leader knows two responses as one person's. */
  readonly secret: string;
  /** What the leader may call them. */
  readonly name?: string;
  /** What was told, oldest first. */
  readonly told: readonly Told[];
  /** Younger than 16: name and notes are left out unless asked for. */
  readonly under16?: boolean;
}

/** One response that was handed on. */
export interface Told {
  /** UTC milliseconds. */
  readonly at: number;
  /** Of the log entries that went along. */
  readonly ids: readonly string[];
}
