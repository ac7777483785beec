import { connect } from './connection.ts';

/**
 * The phone's database, asked for as soon as this file is read. Opening it takes as long as it
 * takes the rest of the app to be read, so the composition root names this file first.
 */
export const phone = connect();
phone.begin();
