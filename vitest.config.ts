import react from '@vitejs/plugin-react';
import { defineConfig } from 'vitest/config';

const MINUTE = 60_000;

/**
 * The steps of `npm test`. `unit` and `ui` need Node only; `built` and `journeys` need `dist`;
 * `sound`, `voice`, `codes` and
 * `journeys` need Debian's decoders, recogniser and browser.
 */
export default defineConfig({
  plugins: [react()],
  test: {
    // A test that is left out, or left alone, must not pass for a whole run.
    allowOnly: false,
    passWithNoTests: false,
    projects: [
      {
        extends: true,
        test: {
          name: 'unit',
          include: ['tests/**/*.test.ts'],
          exclude: [
            'tests/ui/**',
            'tests/sound/**',
            'tests/voice/**',
            'tests/codes/**',
            'tests/built/**',
            'tests/journeys/**',
          ],
          environment: 'node',
          testTimeout: MINUTE,
        },
      },
      {
        extends: true,
        test: {
          name: 'ui',
          include: ['tests/ui/**/*.test.ts', 'tests/**/*.test.tsx'],
          environment: 'happy-dom',
          testTimeout: MINUTE,
        },
      },
      {
        extends: true,
        test: { name: 'built', include: ['tests/built/**/*.test.ts'], testTimeout: MINUTE },
      },
      {
        extends: true,
        test: {
          name: 'sound',
          include: ['tests/sound/**/*.test.ts'],
          testTimeout: 10 * MINUTE,
          hookTimeout: 10 * MINUTE,
        },
      },
      {
        extends: true,
        test: { name: 'codes', include: ['tests/codes/**/*.test.ts'], testTimeout: MINUTE },
      },
      {
        extends: true,
        test: {
          name: 'voice',
          include: ['tests/voice/**/*.test.ts'],
          testTimeout: 15 * MINUTE,
          hookTimeout: 15 * MINUTE,
        },
      },
      {
        extends: true,
        test: {
          name: 'journeys',
          include: ['tests/journeys/**/*.test.ts'],
          testTimeout: 5 * MINUTE,
          hookTimeout: 2 * MINUTE,
          // A browser that plays hardly works: three of them leave two cores time to spare.
          maxWorkers: 3,
        },
      },
    ],
  },
});
