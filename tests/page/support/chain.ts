import { afterEach, beforeEach } from 'vitest'

/**
 * For tests that each go on where the one before has ended: once one has failed, those behind it fail at once and say so. Each
 * of them would wait in vain for what is not there, as long as a slow machine is waited for.
 */
export function inOneChain(): void {
  let broken: string | undefined
  beforeEach(() => {
    if (broken !== undefined) throw new Error(`not tried, because of what failed before it: ${broken}`)
  })
  afterEach(({ task }) => {
    if (task.result?.state === 'fail') broken ??= task.name
  })
}
