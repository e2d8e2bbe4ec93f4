import { defineConfig } from 'vitest/config'

/** Where to leave a report that a program can read; `npm test` itself needs none. */
const report = process.env.STORYROD_TEST_REPORT

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    setupFiles: ['tests/support/seed.ts'],
    testTimeout: 60_000,
    coverage: { provider: 'v8', include: ['src/**/*.ts'], reporter: ['text-summary'] },
    reporters: report === undefined ? ['default'] : ['default', ['json', { outputFile: report }]],
  },
})
