import type { Records } from '../../../src/app/records-contract.ts';
import { fail, ok } from '../../../src/domain/result.ts';

/** Records as a screen sees them: what was asked of them noted, answers given. */
export function fakeRecords(
  note: (name: string, ...given: unknown[]) => void,
  answers: Partial<Records> = {},
): Records {
  return {
    calendar: () => ({ sessions: 17, first: '2027-03-02', last: '2027-04-08' }),
    saveCalendar: async (wish) => note('records.saveCalendar', wish),
    saveLog: async (what) => {
      note('records.saveLog', what);
      return ok(undefined);
    },
    saveBackup: async () => {
      note('records.saveBackup');
      return ok(undefined);
    },
    open: async (file) => {
      note('records.open', await file.text());
      return fail({ code: 'foreign' });
    },
    restore: async () => {
      note('records.restore');
      return fail({ code: 'lost' });
    },
    persist: async () => note('records.persist'),
    ...answers,
  };
}
