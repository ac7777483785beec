import { offsetIn } from '../../src/domain/log/local-time.ts';
import { HandClock } from './clock.ts';

/** A clock that is carried from place to place. */
export class Travelling extends HandClock {
  private offsetAt = offsetIn('UTC');
  private zone = 'UTC';
  override zoneTime = (utc = 0) => ({
    offsetMinutes: this.offsetAt?.(utc) ?? 0,
    zone: this.zone,
  });
  goTo(zone: string): void {
    this.zone = zone;
    this.offsetAt = offsetIn(zone);
    if (this.offsetAt === undefined) throw new Error(`no zone ${zone}`);
  }
  /** The wall clock goes to a moment, while nothing runs. */
  turnTo(moment: string): void {
    this.sleep((Date.parse(moment) - this.now()) / 1000);
  }
}
