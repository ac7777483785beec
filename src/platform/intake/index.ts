import type { Codes } from '../../app/exchange-ports.ts';
import type { Intake } from '../../app/intake-contract.ts';
import type { Connection } from '../store/connection.ts';

/**
 * Opens answers with the keys of this device's leader, whose private half stays unreadable. Its
 * parts are fetched when the first answers are brought in.
 */
export const createIntake = (connection: Connection, codes: Pick<Codes, 'inPicture'>): Intake => ({
  open: async (...asked) =>
    (await import('./intake.ts')).openSources({ connection, codes }, ...asked),
});
