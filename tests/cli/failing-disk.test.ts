import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { nodeDisk } from '../../src/cli/disk.ts'
import { Trouble } from '../../src/cli/trouble.ts'
import { failingDisk, osError, watchedDisk } from './helpers/failing-disk.ts'
import { earlier, FOREIGN, filesIn, NEW, replace } from './helpers/replacing.ts'
import { tempFolder, tree, treeWithTimes } from './helpers/temp.ts'

test('every file is on the disk before the first is moved, and the journal is on it while they are', async () => {
  const folder = earlier()
  const steps: string[] = []
  const staging = `.storyrod-staging-${process.pid}`
  await replace(
    watchedDisk((step, path) => steps.push(`${step} ${path.slice(folder.length + 1)}`)),
    folder,
  )
  const changed = Object.keys(NEW).filter((path) => path !== 'svg/a/right-a.svg')
  const at = (step: string) => {
    expect(
      steps.filter((each) => each === step),
      step,
    ).toHaveLength(1)
    return steps.indexOf(step)
  }
  const journal = at(`create ${staging}/placing.json`)
  const moves = changed.map((path) => at(`rename ${staging}/new/${path}`))
  for (const path of changed) {
    expect(at(`create ${staging}/new/${path}`)).toBeLessThan(at(`flush ${staging}/new/${path}`))
    expect(at(`flush ${staging}/new/${path}`)).toBeLessThan(journal)
  }
  expect(journal).toBeLessThan(at(`flush ${staging}/placing.json`))
  expect(at(`flush ${staging}/placing.json`)).toBeLessThan(Math.min(...moves))
  expect(at('link svg/a/left-a.svg')).toBeLessThan(at(`rename ${staging}/new/svg/a/left-a.svg`))
  for (const inner of ['', 'svg', 'svg/a', 'svg/b', 'dxf', 'dxf/b']) {
    expect(at(`flushFolder ${inner}`)).toBeGreaterThan(Math.max(...moves))
    expect(at(`flushFolder ${inner}`)).toBeLessThan(at(`remove ${staging}/placing.json`))
  }
})

/** How many steps a run takes when all goes well, so that each can be made to fail. */
async function stepsOf(how: 'all' | 'writing'): Promise<number> {
  let count = 0
  const writing = ['create', 'makeFolder', 'flush']
  const disk = watchedDisk((step) => {
    if (how === 'all' || writing.includes(step)) count += 1
  })
  await replace(disk, earlier())
  return count
}

describe('a disk that fails at any step', () => {
  test('a full disk leaves the earlier output and no trace, wherever it fills up', async () => {
    const steps = await stepsOf('writing')
    expect(steps).toBeGreaterThan(20)
    for (let at = 0; at < steps; at += 1) {
      const folder = earlier()
      const before = treeWithTimes(folder)
      const error = await replace(failingDisk('full', at).disk, folder).catch((thrown) => thrown)
      expect(error, `step ${at}`).toBeInstanceOf(Trouble)
      expect(error.exitCode).toBe(3)
      expect(error.message).toContain('the disk is full (ENOSPC)')
      expect(treeWithTimes(folder), `step ${at}`).toEqual(before)
    }
  })

  test('one step that fails leaves the earlier output or the whole new one, and nothing between', async () => {
    const steps = await stepsOf('all')
    let kept = 0
    for (let at = 0; at < steps; at += 1) {
      const folder = earlier()
      const before = treeWithTimes(folder)
      const { disk, failed } = failingDisk('once', at)
      const result = await replace(disk, folder).catch((thrown) => thrown)
      expect(failed(), `step ${at} was reached`).toBe(true)
      if (result instanceof Trouble) {
        kept += 1
        expect(treeWithTimes(folder), `step ${at}: ${result.message}`).toEqual(before)
      } else {
        // A step that can be done without: a second name for an old file, the removal of the staging folder.
        expect(result).toEqual({ written: 4, same: 1 })
        const { ...files } = filesIn(folder)
        for (const path of Object.keys(files)) if (path.startsWith('.storyrod-staging-')) delete files[path]
        expect(files, `step ${at}`).toEqual({ ...NEW, ...FOREIGN })
      }
    }
    expect(kept).toBeGreaterThan(steps / 2)
  })

  test('a run that dies at any step is undone by the next run, even when that one fails too', async () => {
    const steps = await stepsOf('all')
    for (let at = 0; at < steps; at += 1) {
      const folder = earlier()
      const before = treeWithTimes(folder)
      const first = await replace(failingDisk('gone', at).disk, folder).catch((thrown) => thrown)
      const second = await replace(nodeDisk, folder, { before: failAtLast }).catch((thrown) => thrown)
      expect(second.message, `step ${at}`).toBe('the engine fails')
      if (first instanceof Trouble) expect(treeWithTimes(folder), `step ${at}: ${first.message}`).toEqual(before)
      else expect(filesIn(folder), `step ${at}`).toEqual({ ...NEW, ...FOREIGN })
    }
  })

  test('says where the old files are when they cannot be put back, and keeps them until they can', async () => {
    const folder = earlier()
    const before = treeWithTimes(folder)
    let renames = 0
    const disk = watchedDisk((step) => {
      if (step === 'rename') renames += 1
      if (step === 'rename' && renames > 1) throw osError('EIO', 'rename')
    })
    const error = await replace(disk, folder).catch((thrown) => thrown)
    expect(error.exitCode).toBe(3)
    expect(error.message).toBe(
      `could not put the earlier output of ${folder} back: the disk reports an error (EIO).\n` +
        `  Old and new files are mixed there now. The old ones are kept in ${join(folder, `.storyrod-staging-${process.pid}`)}; ` +
        `draw again once the cause is gone, and they are put back first.\n` +
        `  Look after the disk.`,
    )
    const again = await replace(disk, folder).catch((thrown) => thrown)
    expect(again.message).toBe(
      `could not clear up after a run that was cut off in ${folder}: the disk reports an error (EIO).\n` +
        `  What that run had replaced is kept in ${join(folder, `.storyrod-staging-${process.pid}`)} until it can be put back.\n` +
        '  Look after the disk.',
    )
    await expect(replace(nodeDisk, folder, { before: failAtLast })).rejects.toThrow('the engine fails')
    expect(treeWithTimes(folder)).toEqual(before)
  })

  test('works on a disk without second names for a file', async () => {
    const folder = earlier()
    const disk = watchedDisk((step) => {
      if (step === 'link') throw osError('EPERM', 'link')
    })
    expect(await replace(disk, folder)).toEqual({ written: 4, same: 1 })
    expect(filesIn(folder)).toEqual({ ...NEW, ...FOREIGN })
  })

  test('keeps the earlier output on such a disk too, whichever move fails', async () => {
    let at = 0
    for (; ; at += 1) {
      const folder = earlier()
      const before = treeWithTimes(folder)
      let moves = -1
      const disk = watchedDisk((step) => {
        if (step === 'link') throw osError('EPERM', 'link')
        if (step === 'rename') moves += 1
        if (step === 'rename' && moves === at) throw osError('EBUSY', 'rename')
      })
      const result = await replace(disk, folder).catch((thrown) => thrown)
      if (!(result instanceof Error)) break
      expect(result.message).toContain('another program holds it (EBUSY)')
      expect(treeWithTimes(folder), `move ${at}`).toEqual(before)
    }
    // Two old files moved away and four new ones into place.
    expect(at).toBe(6)
  })

  test('folders newly made go again', async () => {
    const parent = tempFolder()
    const { disk } = failingDisk('full', 6)
    const error = await replace(disk, join(parent, 'deep', 'down')).catch((thrown) => thrown)
    expect(error.message).toContain('ENOSPC')
    expect(tree(parent)).toEqual({})
  })
})

function failAtLast(path: string): void {
  if (path === 'panels.json') throw new Error('the engine fails')
}
