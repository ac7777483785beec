import { env } from 'node:process';
import { defineConfig } from 'vitest/config';

/** The tests that a changed rule is held against: those of its own folder, so that each is quick. */
export default defineConfig({
  test: {
    include: [`tests/domain/${env.MUTATED ?? '**'}/*.test.ts`],
    // One of its tests reads the rules as text, and a changed rule is written otherwise.
    exclude: ['tests/domain/advice/laws.test.ts'],
    setupFiles: ['.ci/mutation-setup.ts'],
    environment: 'node',
    // What changes is asked for while it runs, so nothing need be loaded anew.
    isolate: false,
    testTimeout: 60_000,
  },
});
