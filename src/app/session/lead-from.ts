import { type LeadMark, placeByClock } from '../../domain/lead/cut-off.ts';
import { GO_ON_BEFORE } from '../../domain/session/places.ts';
import type { Session } from '../../domain/session/session.ts';
import { type Ms, ms } from '../../domain/units.ts';

/**
 * The place from which leading goes on as the clock says. Going on begins three seconds before a
 * place, so the place is that much later. Where all groups are done by now, it is the end.
 */
export const placeToLeadFrom = (mark: LeadMark, total: Ms, now: number): Ms =>
  ms(Math.min(total, (placeByClock(mark, total, now) ?? total) + GO_ON_BEFORE));

/** A session that has not begun, as one that was cut off at a place. */
export const sessionFrom = (ready: Session, place: Ms, wall: number): Session => ({
  ...ready,
  name: 'running',
  place,
  track: place,
  moved: { wall, track: place },
});
