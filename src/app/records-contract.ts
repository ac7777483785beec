/** What the screens may know and ask of calendar, log files, backup and restore. */
import type { Stores } from '../domain/exchange/backup.ts';
import type { BackupCode, OpenedBackup } from '../domain/exchange/backup-read.ts';
import type { NotTaken, Restored, StoreReport } from '../domain/exchange/restore.ts';
import type { Result } from '../domain/result.ts';
import type { StoreProblem } from './ports.ts';

/** All stores that can be kept elsewhere. */
export interface RecordsStore {
  /** As they lie there, whatever version wrote them. */
  everything(): Promise<Result<Stores, StoreProblem>>;
  /**
   * Reads what is there and writes what the job says, in one transaction: all of it or nothing.
   * The job may run twice, and does nothing but say.
   */
  change(job: (here: Stores) => Restored): Promise<Result<Restored, StoreProblem>>;
}

/** When somebody wants to go out. */
export interface CalendarWish {
  readonly programmeId: string;
  readonly groupId: string;
  /** ISO 8601 weekdays, 1 Monday to 7 Sunday. */
  readonly days: readonly number[];
  /** Minutes after midnight, wherever the person is. */
  readonly minutes: number;
  /** Nothing: no alarm. */
  readonly alarmMinutes?: number;
}

/** What a calendar file would hold. */
export interface CalendarPreview {
  readonly sessions: number;
  /** ISO 8601 calendar dates of the first and the last session. */
  readonly first: string;
  readonly last: string;
}

/** A backup that was opened, and what taking it in would do. Nothing has been written. */
export interface RestorePreview extends Pick<OpenedBackup, 'kind' | 'madeAt' | 'newer' | 'damage'> {
  readonly report: readonly StoreReport[];
  readonly notTaken: readonly NotTaken[];
  /** Days of the first and the last session in the file, where there are any. */
  readonly days?: { readonly first: string; readonly last: string };
  readonly programmes: readonly string[];
}

/** Why a backup was not opened or not taken in. */
export interface RestoreProblem {
  readonly code: BackupCode | StoreProblem['code'] | 'not-loaded';
}

/** Calendar, log files, backup and restore. */
export interface Records {
  /** @returns nothing when there is nothing left to plan */
  calendar(wish: CalendarWish): CalendarPreview | undefined;
  /** Gives the calendar file out, through the share sheet or saved. */
  saveCalendar(wish: CalendarWish): Promise<void>;
  saveLog(what: 'csv' | 'json'): Promise<Result<void, StoreProblem>>;
  saveBackup(): Promise<Result<void, StoreProblem>>;
  /** Looks at a backup, or the log as JSON, that the person chose. Writes nothing. */
  open(file: Blob): Promise<Result<RestorePreview, RestoreProblem>>;
  /** Takes in what was opened last, whatever is here by now. */
  restore(): Promise<Result<RestorePreview, RestoreProblem>>;
  /** Asks the browser to keep what is stored. */
  persist(): Promise<void>;
}
