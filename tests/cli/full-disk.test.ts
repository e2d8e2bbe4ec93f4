import { execFileSync } from 'node:child_process'
import { rmSync, statfsSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import type { Disk } from '../../src/cli/disk.ts'
import { nodeDisk } from '../../src/cli/disk.ts'
import { osError } from './helpers/failing-disk.ts'
import { fakeEngine } from './helpers/fake-engine.ts'
import { run } from './helpers/run.ts'
import { fill, tempFolder, treeWithTimes } from './helpers/temp.ts'

const ROOM = 1024 * 1024

/**
 * A folder on a disk of 1 MiB: a real one in memory where the system lets us mount it, else the real disk with a
 * count of the bytes that are asked of it.
 */
function smallDisk(): { folder: string; disk: Disk; end: () => void } {
  const folder = tempFolder()
  try {
    execFileSync('mount', ['-t', 'tmpfs', '-o', `size=${ROOM}`, 'tmpfs', folder], { stdio: 'ignore' })
  } catch {
    return { folder, disk: countingDisk(), end: () => undefined }
  }
  return { folder, disk: nodeDisk, end: () => execFileSync('umount', [folder]) }
}

function countingDisk(): Disk {
  let left = ROOM
  return {
    ...nodeDisk,
    async create(path, bytes) {
      if (bytes.length > left) {
        await nodeDisk.create(path, bytes.subarray(0, left))
        throw osError('ENOSPC')
      }
      left -= bytes.length
      await nodeDisk.create(path, bytes)
    },
  }
}

/** Twenty files of 40 kB, 800 kB together: two sets of them do not fit on 1 MiB. */
function files(letter: string): Record<string, string> {
  return Object.fromEntries(Array.from({ length: 20 }, (_, at) => [`svg/m/p${at}.svg`, letter.repeat(40_000)]))
}

test('a disk that fills up while drawing keeps the earlier output, and there is room again', async () => {
  const { folder, disk, end } = smallDisk()
  try {
    fill(folder, { 'studio.yaml': '' })
    expect((await run(folder, ['draw', 'studio.yaml'], { disk, engine: fakeEngine({ files: files('a') }) })).code).toBe(
      0,
    )
    const before = treeWithTimes(folder)
    const ran = await run(folder, ['draw', 'studio.yaml'], { disk, engine: fakeEngine({ files: files('b') }) })
    expect(ran).toMatchObject({ code: 3, out: '' })
    expect(ran.err).toMatch(
      /^storyrod: could not write svg\/m\/p\d+\.svg into .*studio-drawings: the disk is full \(ENOSPC\)\.\n {2}The earlier output is as it was\.\n {2}Free some space, or choose another folder with --out\.\n$/,
    )
    expect(treeWithTimes(folder)).toEqual(before)
    if (disk === nodeDisk) {
      const { bavail, bsize } = statfsSync(folder)
      expect(bavail * bsize).toBeGreaterThan(ROOM - 20 * 45_056)
    }
  } finally {
    end()
  }
})

test('a starter that does not fit leaves nothing', async () => {
  const { folder, disk, end } = smallDisk()
  try {
    await fillUp(folder, disk)
    const before = treeWithTimes(folder)
    const ran = await run(folder, ['new', 'my.yaml'], { disk })
    expect(ran.code).toBe(3)
    expect(ran.err).toContain('could not write my.yaml: the disk is full (ENOSPC)')
    expect(treeWithTimes(folder)).toEqual(before)
    rmSync(join(folder, 'filler'))
  } finally {
    end()
  }
})

async function fillUp(folder: string, disk: Disk): Promise<void> {
  if (disk !== nodeDisk) return disk.create(join(folder, 'filler'), new Uint8Array(ROOM))
  try {
    writeFileSync(join(folder, 'filler'), new Uint8Array(2 * ROOM))
  } catch {
    // Full now, as intended.
  }
}
