import { defineConfig } from 'vitest/config'

/** Where to leave a report that a program can read; `npm test` itself needs none. */
const report = process.env.STORYROD_TEST_REPORT

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    setupFiles: ['tests/support/seed.ts'],
    testTimeout: 120_000,
    // The first browser test of a run builds the page, on a machine that is busy with other tests.
    hookTimeout: 240_000,
    // What a file imports is pure, so that the files of a worker can share it; loading it anew for each took half of the time.
    isolate: false,
    // Left to itself, one processor is kept free, which on a machine of two is half of it.
    maxWorkers: '100%',
    coverage: { provider: 'v8', include: ['src/**/*.ts'], reporter: ['text-summary'] },
    reporters: report === undefined ? ['default'] : ['default', ['json', { outputFile: report }]],
  },
})
