import type { Disk } from '../../../src/cli/disk.ts'
import { nodeDisk } from '../../../src/cli/disk.ts'

/** An error as the operating system gives it. */
export function osError(code: string, syscall = 'write'): Error {
  return Object.assign(new Error(`${code}: made by a test, ${syscall}`), { code, syscall, errno: -1 })
}

/** The real disk, with `watch` called before each step; it makes the step fail by throwing. */
export function watchedDisk(watch: (step: keyof Disk, path: string) => void): Disk {
  const steps = Object.entries(nodeDisk).map(([name, step]) => [
    name,
    async (...given: unknown[]) => {
      watch(name as keyof Disk, String(given[0]))
      return (step as (...given: unknown[]) => Promise<unknown>)(...given)
    },
  ])
  return Object.fromEntries(steps) as Disk
}

/** Steps that need room on the disk. */
const WRITING: ReadonlySet<keyof Disk> = new Set<keyof Disk>(['create', 'makeFolder', 'flush'])

/**
 * Fails at step `at` of those counted, first is 0.
 * `once`: that step alone. `full`: every writing step from then on, as a full disk does; only those are counted.
 * `gone`: every step from then on, as a process that was killed or a disk that was pulled out.
 */
export function failingDisk(how: 'once' | 'full' | 'gone', at: number): { disk: Disk; failed: () => boolean } {
  let count = -1
  let failed = false
  const disk = watchedDisk((step) => {
    if (how === 'full' && !WRITING.has(step)) return
    count += 1
    if (how === 'once' ? count !== at : count < at) return
    failed = true
    throw osError(how === 'full' ? 'ENOSPC' : 'EIO')
  })
  return { disk, failed: () => failed }
}
