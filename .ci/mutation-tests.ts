import { env } from 'node:process';
import { defineConfig } from 'vitest/config';

/** The tests that a changed rule is held against: those of its own folder, so that each is quick. */
export default defineConfig({
  test: {
    include: [`tests/domain/${env.MUTATED ?? '**'}/*.test.ts`],
    exclude: [
      // Reads the rules as text, and a changed rule is written otherwise.
      'tests/domain/advice/laws.test.ts',
      // Compares how long things take, which counting what is covered makes longer.
      'tests/domain/exchange/long-texts.test.ts',
    ],
    setupFiles: ['.ci/property-time.ts'],
    environment: 'node',
    // What changes is asked for while it runs, so nothing need be loaded anew.
    isolate: false,
    testTimeout: 60_000,
  },
});
