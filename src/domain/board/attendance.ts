/** Whether somebody was there, and when that was ticked or taken back: the later holds. */
export interface Mark {
  readonly present: boolean;
  /** UTC milliseconds. */
  readonly at: number;
}

/** Who came to the group on one day. Two of one key become one by `mergeAttendance`. */
export interface Attendance {
  readonly format: 'towpath-attendance/1';
  /** `attendanceKey(programmeId, date)` */
  readonly key: string;
  readonly programmeId: string;
  /** Local calendar date, ISO 8601. */
  readonly date: string;
  /** Which session was done together, both from 1, and when that was said: the later holds. */
  readonly which: { readonly week: number; readonly session: number; readonly at: number };
  /** By person, as in `Heard`. */
  readonly marks: Readonly<Record<string, Mark>>;
}

/** One record a day and programme: under the same key, ticks of two phones become one list. */
export const attendanceKey = (programmeId: string, date: string): string =>
  `${programmeId} ${date}`;
