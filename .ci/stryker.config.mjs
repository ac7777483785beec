/** How rules are changed one place at a time; `mutation.mjs` says which. */
export default {
  testRunner: 'vitest',
  plugins: ['@stryker-mutator/vitest-runner'],
  vitest: { configFile: '.ci/mutation-tests.ts', related: false },
  mutate: ['src/domain/**/*.ts', '!src/domain/**/*.d.ts'],
  coverageAnalysis: 'perTest',
  concurrency: 2,
  // A constant is read when its file is loaded: each would cost all tests of the folder.
  ignoreStatic: true,
  // What is left out takes time to copy and is read by no rule.
  ignorePatterns: ['/dist', '/docs', '/coverage', '/.cache'],
  symlinkNodeModules: true,
  tempDirName: '.cache/mutation',
  // The compiler's settings are left alone: only the types read them, and no type is checked here.
  tsconfigFile: 'none',
  reporters: ['progress-append-only'],
  timeoutMS: 8000,
  allowConsoleColors: false,
};
