import { type Ms, ms } from '../../domain/units.ts';
import type { Transport } from '../ports.ts';

/**
 * A transport whose track has a lead-in: the carrier's own place is track time and the lead-in's
 * length, so that everybody else goes on counting from the session's start, below 0 before it.
 */
export const behind = (carrier: Transport, leadIn: Ms): Transport => ({
  ...carrier,
  load: ({ total, ...track }) => carrier.load({ ...track, total: ms(leadIn + total) }),
  seek: (to) => carrier.seek(ms(leadIn + to)),
  rebuild: (at) => carrier.rebuild(ms(leadIn + at)),
  place: () => ms(carrier.place() - leadIn),
});
