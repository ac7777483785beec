import { env } from 'node:process';
import fc from 'fast-check';

/**
 * How long a property is looked at, in milliseconds, where `npm test` looks at it a number of times:
 * less where thousands of changes are to be tried, so that what is noticed is the least that the
 * tests notice, and more where faults are looked for.
 */
fc.configureGlobal({
  interruptAfterTimeLimit: Number(env.PROPERTY_MS ?? 400),
  markInterruptAsFailure: false,
  ...(env.PROPERTY_RUNS !== undefined && { numRuns: Number(env.PROPERTY_RUNS) }),
});
