/** Metres in an international mile, by definition. */
export const MILE_M = 1609.344;

/** Time for a kilometre. Paces are shown, speeds are reckoned with. */
export type SecondsPerKm = number;
/** A speed, in metres a second. */
export type MetresPerSecond = number;

/** A pace is a speed turned over: 1,000 m over the seconds for them. Both ways the same. */
export const speedOf = (pace: SecondsPerKm): MetresPerSecond => 1000 / pace;
/** The pace of a speed. */
export const paceOf = (speed: MetresPerSecond): SecondsPerKm => 1000 / speed;

/** Kilometres in an hour. */
export const kmPerHour = (pace: SecondsPerKm): number => 3600 / pace;

/** Miles in an hour. */
export const milesPerHour = (pace: SecondsPerKm): number => (3600 / pace) * (1000 / MILE_M);
