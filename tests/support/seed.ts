import fc from 'fast-check'

/**
 * One seed for all property tests, so that a run repeats itself and a change is judged by what it changes. Another one
 * looks elsewhere: `STORYROD_SEED=7 npx vitest run`.
 */
fc.configureGlobal({ seed: Number(process.env.STORYROD_SEED ?? 20261125) })
