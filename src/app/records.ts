import type { StoreApi } from 'zustand/vanilla';
import { backupWords, calendarEvents, fileName } from '../copy/record-files.ts';
import type { Stores } from '../domain/exchange/backup.ts';
import { backedUp, writeBackup } from '../domain/exchange/backup.ts';
import { BACKUP_MAX, type OpenedBackup, readBackup } from '../domain/exchange/backup-read.ts';
import { asEntry, asProgramme } from '../domain/exchange/backup-shapes.ts';
import { toCalendar } from '../domain/exchange/calendar.ts';
import { calendarStart } from '../domain/exchange/calendar-start.ts';
import { isLocalAddress } from '../domain/exchange/link.ts';
import { logExport } from '../domain/exchange/log-export.ts';
import { inOrder, logTable } from '../domain/exchange/log-table.ts';
import type { Vouched } from '../domain/exchange/merge-programmes.ts';
import { type Planned, plannedSessions } from '../domain/exchange/planned.ts';
import { type NotTaken, type Restored, restore } from '../domain/exchange/restore.ts';
import { localDate } from '../domain/log/local-date.ts';
import type { Programme } from '../domain/programme/programme.ts';
import { readProgramme } from '../domain/programme/read.ts';
import { fail, ok, type Result } from '../domain/result.ts';
import type { FollowingState, LogState, ProgrammesState } from './contract.ts';
import type { ReceivedState } from './exchange-contract.ts';
import type { ExchangePorts } from './exchange-ports.ts';
import type { Clock, Device, FileShare } from './ports.ts';
import type {
  CalendarWish,
  Records,
  RecordsStore,
  RestorePreview,
  RestoreProblem,
} from './records-contract.ts';
import { showRestored } from './records-show.ts';
import { verifiedRows } from './records-verify.ts';
import { DEFAULT_SETTINGS, type SettingsHolder } from './settings.ts';

/** What the records need of the app and of the world. */
export interface RecordsNeeds {
  readonly exchange: () => Promise<Pick<ExchangePorts, 'records' | 'verifier' | 'address'>>;
  readonly clock: Pick<Clock, 'now' | 'zoneTime'>;
  readonly share: FileShare;
  readonly device: Pick<Device, 'persist'>;
  readonly programmes: StoreApi<ProgrammesState>;
  readonly settings: SettingsHolder;
  readonly log: StoreApi<LogState>;
  readonly following: StoreApi<FollowingState>;
  readonly received: StoreApi<ReceivedState>;
}

/** A backup that was opened, its signatures verified. */
interface Opened {
  readonly backup: OpenedBackup;
  readonly stores: Stores;
  readonly vouched: Vouched;
  readonly refused: readonly NotTaken[];
}

const JSON_TYPE = 'application/json';

/** Calendar, log files, backup and restore, over the phone's stores. */
export async function openRecords(needs: RecordsNeeds): Promise<Records> {
  const { clock, share, device } = needs;
  const { records, verifier, address } = await needs.exchange();
  let opened: Opened | undefined;

  const today = (): string => {
    const now = clock.now();
    return localDate(now, clock.zoneTime(now).offsetMinutes);
  };
  const everything = (): ReturnType<RecordsStore['everything']> => records.everything();

  function planned(wish: CalendarWish): { programme: Programme; sessions: readonly Planned[] } {
    const { programmes } = needs.programmes.getState();
    const programme = programmes.find(({ id }) => id === wish.programmeId) as Programme;
    const following = needs.following.getState().following[wish.programmeId];
    const [from, group] = [today(), wish.groupId];
    const { entries } = needs.log.getState();
    const start = calendarStart({
      programme,
      group,
      entries,
      today: from,
      ...(following && { following }),
    });
    const pauses = following?.pauses ?? [];
    const { days } = wish;
    return {
      programme,
      sessions: plannedSessions({ programme, group, days, from, pauses, ...start }),
    };
  }

  const effect = (taken: Opened, here: Stores): Restored =>
    restore(here, taken.stores, { vouched: taken.vouched, defaults: { ...DEFAULT_SETTINGS } });

  return {
    calendar(wish) {
      const { sessions } = planned(wish);
      const [first, last] = [sessions[0], sessions.at(-1)];
      if (first === undefined || last === undefined) return undefined;
      return { sessions: sessions.length, first: first.date, last: last.date };
    },
    async saveCalendar(wish) {
      const { programme, sessions } = planned(wish);
      const link = isLocalAddress(address()) ? undefined : address();
      const events = calendarEvents(programme, wish, sessions, link);
      const text = toCalendar(events, clock.now());
      await share.give(fileName.calendar(programme.id, wish.groupId), 'text/calendar', text);
    },
    async saveLog(what) {
      const all = await everything();
      if (!all.ok) return all;
      const stored = (all.value.log ?? []).map(([, value]) => value);
      const name = fileName.log(today(), what);
      if (what === 'json') await share.give(name, JSON_TYPE, logExport(stored, clock.now()));
      else
        await share.give(name, 'text/csv', logTable(stored.flatMap((each) => asEntry(each) ?? [])));
      return ok(undefined);
    },
    async saveBackup() {
      const all = await everything();
      if (!all.ok) return all;
      const text = writeBackup(all.value, backupWords, clock.now());
      await share.give(fileName.backup(today()), JSON_TYPE, text);
      return ok(undefined);
    },
    async open(file) {
      opened = undefined;
      const read = await textOf(file);
      if (!read.ok) return read;
      const here = await everything();
      if (!here.ok) return fail({ code: here.error.code });
      const { rows, vouched, refused } = await verifiedRows(
        read.value.stores.programmes ?? [],
        here.value.programmes ?? [],
        verifier,
      );
      const stores = { ...read.value.stores, programmes: rows };
      opened = { backup: read.value, stores, vouched, refused };
      return ok(previewOf(opened, effect(opened, here.value)));
    },
    async restore() {
      const taken = opened;
      // What waits to be written would be written over what comes now.
      if (taken === undefined || needs.log.getState().unsaved === true)
        return fail<RestoreProblem>({ code: 'lost' });
      const written = await records.change((here) => effect(taken, here));
      if (!written.ok) return fail({ code: written.error.code });
      await showRestored(needs, written.value.stores);
      // Not waited for: Firefox asks the person, and answers when they do, or never.
      void device.persist();
      return ok(previewOf(taken, written.value));
    },
    persist: () => device.persist(),
  };
}

async function textOf(file: Blob): Promise<Result<OpenedBackup, RestoreProblem>> {
  if (file.size > BACKUP_MAX) return fail({ code: 'too-large' });
  const text = await file.text().catch(() => undefined);
  if (text === undefined) return fail({ code: 'lost' });
  const read = readBackup(text);
  return read.ok ? read : fail({ code: read.error });
}

function titleOf(value: unknown): readonly string[] {
  const record = asProgramme(value);
  const read = record && readProgramme(record.text);
  return read?.ok ? [read.value.title] : [];
}

/** What is in a backup, what taking it in adds and changes, and what is not taken. */
function previewOf({ backup, stores, refused }: Opened, restored: Restored): RestorePreview {
  const { kind, madeAt, newer, damage } = backup;
  const given = backedUp(stores);
  const entries = inOrder((given.log ?? []).flatMap(([, value]) => asEntry(value) ?? []));
  const [first, last] = [entries[0], entries.at(-1)];
  return {
    kind,
    newer,
    damage,
    ...(madeAt === undefined ? {} : { madeAt }),
    report: restored.report,
    notTaken: [...refused, ...restored.notTaken],
    ...(first && last ? { days: { first: first.localDate, last: last.localDate } } : {}),
    programmes: (given.programmes ?? []).flatMap(([, value]) => titleOf(value)),
  };
}
