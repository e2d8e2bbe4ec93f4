import { readFileSync, statSync, symlinkSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { nodeDisk } from '../../src/cli/disk.ts'
import { Stopped } from '../../src/cli/trouble.ts'
import { watchedDisk } from './helpers/failing-disk.ts'
import { earlier, FOREIGN, filesIn, NEW, replace } from './helpers/replacing.ts'
import { fill, tempFolder, treeWithTimes } from './helpers/temp.ts'

describe('replaceOutput', () => {
  test('puts every file in place, leaves the rest and no trace', async () => {
    const folder = earlier()
    expect(await replace(nodeDisk, folder)).toEqual({ written: 4, same: 1 })
    expect(filesIn(folder)).toEqual({ ...NEW, ...FOREIGN })
  })

  test('makes the folder with its parents', async () => {
    const folder = join(tempFolder(), 'deep', 'down')
    expect(await replace(nodeDisk, folder)).toEqual({ written: 5, same: 0 })
    expect(filesIn(folder)).toEqual(NEW)
  })

  test('leaves a file with the same bytes alone, time and all', async () => {
    const folder = earlier()
    await replace(nodeDisk, folder)
    expect(statSync(join(folder, 'svg/a/right-a.svg')).mtimeMs).toBe(1_000_000)
    expect(statSync(join(folder, 'svg/a/left-a.svg')).mtimeMs).not.toBe(1_000_000)
  })

  test('changes nothing when all bytes are the same', async () => {
    const folder = earlier()
    await replace(nodeDisk, folder)
    const before = treeWithTimes(folder)
    expect(await replace(nodeDisk, folder)).toEqual({ written: 0, same: 5 })
    expect(treeWithTimes(folder)).toEqual(before)
  })

  test('compares bytes, not sizes alone', async () => {
    const folder = tempFolder()
    fill(folder, { 'panels.json': 'abcd' })
    expect(await replace(nodeDisk, folder, { files: { 'panels.json': 'abce' } })).toEqual({ written: 1, same: 0 })
    expect(readFileSync(join(folder, 'panels.json'), 'utf8')).toBe('abce')
  })

  test('draws into the place that a link to the output folder names', async () => {
    const place = earlier()
    const link = join(tempFolder(), 'link')
    symlinkSync(place, link)
    await replace(nodeDisk, link)
    expect(filesIn(place)).toEqual({ ...NEW, ...FOREIGN })
  })
})

describe('asked to stop', () => {
  test('while staging: the earlier output stays and no trace is left', async () => {
    const folder = earlier()
    const before = treeWithTimes(folder)
    const stop: { asked: 'SIGINT' | undefined } = { asked: undefined }
    const error = await replace(nodeDisk, folder, {
      stop,
      before(path) {
        if (path === 'svg/b/door-a.svg') stop.asked = 'SIGINT'
      },
    }).catch((thrown) => thrown)
    expect(error).toBeInstanceOf(Stopped)
    expect(treeWithTimes(folder)).toEqual(before)
  })

  test('when all files are staged and none is moved yet', async () => {
    const folder = earlier()
    const before = treeWithTimes(folder)
    const stop: { asked: 'SIGINT' | undefined } = { asked: undefined }
    const disk = watchedDisk((step) => {
      if (step === 'flush') stop.asked = 'SIGINT'
    })
    await expect(replace(disk, folder, { stop })).rejects.toBeInstanceOf(Stopped)
    expect(treeWithTimes(folder)).toEqual(before)
  })

  test('while moving: the moves are brought to an end', async () => {
    const folder = earlier()
    const stop: { asked: 'SIGINT' | undefined } = { asked: undefined }
    const disk = watchedDisk((step) => {
      if (step === 'rename') stop.asked = 'SIGINT'
    })
    expect(await replace(disk, folder, { stop })).toEqual({ written: 4, same: 1 })
    expect(filesIn(folder)).toEqual({ ...NEW, ...FOREIGN })
  })
})

describe('two runs at once', () => {
  test('the second gives way and says which process is at work', async () => {
    const folder = earlier()
    // The parent of this process lives as long as the test does.
    fill(folder, { [`.storyrod-staging-${process.ppid}/new/x`]: 'half done' })
    const before = treeWithTimes(folder)
    const error = await replace(nodeDisk, folder).catch((thrown) => thrown)
    expect(error.exitCode).toBe(3)
    expect(error.message).toBe(
      `could not draw into ${folder}: another run (process ${process.ppid}) is drawing there.\n` +
        `  Nothing was changed. Wait for it to end. If there is no such run, delete ${join(folder, `.storyrod-staging-${process.ppid}`)} and run again.`,
    )
    expect(treeWithTimes(folder)).toEqual(before)
  })

  test('within one process too, and the first is not disturbed', async () => {
    const folder = earlier()
    const seconds: unknown[] = []
    const watched = watchedDisk(() => undefined)
    let second: Promise<void> | undefined
    await replace(watched, folder, {
      before() {
        second ??= replace(nodeDisk, folder).then(
          () => void seconds.push('drawn'),
          (error) => void seconds.push(error.exitCode),
        )
      },
    })
    await second
    expect(seconds).toEqual([3])
    expect(filesIn(folder)).toEqual({ ...NEW, ...FOREIGN })
  })

  test('a name that only looks like ours is left alone', async () => {
    const folder = tempFolder()
    fill(folder, { '.storyrod-staging-old/x': 'mine', '.storyrod-staging-': 'mine' })
    await replace(nodeDisk, folder)
    expect(filesIn(folder)).toEqual({ ...NEW, '.storyrod-staging-old/x': 'mine', '.storyrod-staging-': 'mine' })
  })
})
