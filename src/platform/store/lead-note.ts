import type { LeadNote } from '../../app/ports.ts';

const NAME = 'towpath-lead/1';

/**
 * In the browser's small storage: it is read and written at once, also when a page is about to be
 * killed, and it may be refused or emptied at any time.
 */
export const createLeadNote = (): LeadNote => ({
  read() {
    try {
      return JSON.parse(localStorage.getItem(NAME) ?? 'null');
    } catch {
      return undefined;
    }
  },
  write(note) {
    try {
      localStorage.setItem(NAME, JSON.stringify(note));
    } catch {
      // Full, or refused by a setting: leading goes on without it.
    }
  },
});
