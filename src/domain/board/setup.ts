/** What a leader said of a whole programme's people. */
export interface BoardSetup {
  readonly format: 'towpath-board/1';
  readonly programmeId: string;
  /** How many are in a group, by its id, and when that was said: the later holds. */
  readonly expected: Readonly<Record<string, { readonly count: number; readonly at: number }>>;
  /** Whether what was heard stays past 90 days after the event, and when that was said. */
  readonly keep?: { readonly on: boolean; readonly at: number };
  /**
   * People who were forgotten, as digests from which nobody can be found: what they had sent
   * before is not taken in again. One who sends anew afterwards is there again.
   */
  readonly forgotten: readonly Forgotten[];
}

/** That somebody was forgotten, without saying who. */
export interface Forgotten {
  /** SHA-256 over `heardKey(programmeId, person)`, base64url. */
  readonly digest: string;
  /** UTC milliseconds. Responses up to then stay out. */
  readonly at: number;
}
