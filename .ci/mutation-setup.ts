import { env } from 'node:process';
import fc from 'fast-check';

/**
 * A property is looked at for so long, and not as often as `npm test` does: thousands of changes
 * are to be tried. What is noticed here is the least that the tests notice.
 */
fc.configureGlobal({
  interruptAfterTimeLimit: Number(env.PROPERTY_MS ?? 400),
  markInterruptAsFailure: false,
});
