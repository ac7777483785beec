import react from '@vitejs/plugin-react';
import { defineConfig } from 'vitest/config';

const MINUTE = 60_000;

/** Left to itself the runner keeps one of two cores free, and the check takes twice as long. */
const BOTH_CORES = 2;

/**
 * Where something is drawn or heard: a browser without a sound card keeps time by a timer, and a
 * machine that others use may stand still for longer than any tolerance. A test that needed its
 * second try is named at the end. Rules have one try: what fails once by chance there is a fault.
 */
const ONCE_MORE = 1;

/** Journeys that keep a processor busy. Beside them nobody can say when a sound was heard. */
const BUSY = [
  'paper',
  'screens',
  'exchange',
  'keyboard',
  'first-load',
  'six-weeks',
  'dates',
  'hosts',
  'two-weeks',
  'faults',
].map((name) => `tests/journeys/${name}*.test.ts`);

/**
 * The steps of `npm test`. `unit` and `ui` need Node only; `built`, `journeys` and `pages` need
 * `dist`; `sound`, `voice`, `codes`, `journeys` and `pages` need Debian's decoders, recogniser,
 * browser and web servers.
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
            'tests/engines/**',
          ],
          environment: 'node',
          testTimeout: MINUTE,
          maxWorkers: BOTH_CORES,
        },
      },
      {
        extends: true,
        test: {
          name: 'ui',
          include: ['tests/ui/**/*.test.ts', 'tests/**/*.test.tsx'],
          environment: 'happy-dom',
          retry: ONCE_MORE,
          testTimeout: MINUTE,
          // The first drawing of a screen fetches all of it, which takes its time on a busy machine.
          hookTimeout: MINUTE,
          maxWorkers: BOTH_CORES,
        },
      },
      {
        extends: true,
        test: {
          name: 'built',
          include: ['tests/built/**/*.test.ts'],
          testTimeout: MINUTE,
          maxWorkers: BOTH_CORES,
        },
      },
      {
        extends: true,
        test: {
          name: 'sound',
          include: ['tests/sound/**/*.test.ts'],
          maxWorkers: BOTH_CORES,
          testTimeout: 10 * MINUTE,
          hookTimeout: 10 * MINUTE,
        },
      },
      {
        extends: true,
        test: {
          name: 'codes',
          include: ['tests/codes/**/*.test.ts'],
          testTimeout: MINUTE,
          maxWorkers: BOTH_CORES,
        },
      },
      {
        extends: true,
        test: {
          name: 'voice',
          include: ['tests/voice/**/*.test.ts'],
          maxWorkers: BOTH_CORES,
          testTimeout: 15 * MINUTE,
          hookTimeout: 15 * MINUTE,
        },
      },
      {
        extends: true,
        test: {
          name: 'journeys',
          include: ['tests/journeys/**/*.test.ts'],
          exclude: BUSY,
          retry: ONCE_MORE,
          testTimeout: 5 * MINUTE,
          hookTimeout: 2 * MINUTE,
          // A browser that plays hardly works: three of them leave two cores time to spare.
          maxWorkers: 3,
        },
      },
      {
        extends: true,
        test: {
          name: 'pages',
          include: BUSY,
          retry: ONCE_MORE,
          testTimeout: 8 * MINUTE,
          hookTimeout: 4 * MINUTE,
          maxWorkers: 2,
          // Its own, because projects of one group must have as many workers.
          sequence: { groupOrder: 1 },
        },
      },
      {
        extends: true,
        test: {
          name: 'engines',
          include: ['tests/engines/**/*.test.ts'],
          retry: ONCE_MORE,
          testTimeout: 3 * MINUTE,
          hookTimeout: MINUTE,
          // Most of the time a journey waits for a sound, so three engines fit on two cores.
          maxWorkers: 3,
          sequence: { groupOrder: 2 },
        },
      },
    ],
  },
});
