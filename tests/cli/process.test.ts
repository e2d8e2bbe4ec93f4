import { closeSync, openSync, readdirSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { nodeDisk } from '../../src/cli/disk.ts'
import { replaceOutput } from '../../src/cli/replace-output.ts'
import { BIN, SLOW, start } from './helpers/child.ts'
import { handOut } from './helpers/fake-engine.ts'
import { run } from './helpers/run.ts'
import { fill, tempFolder, tree, treeWithTimes } from './helpers/temp.ts'

const OLD = { 'studio-drawings/svg/module/panel-0-a.svg': 'old', 'studio-drawings/panels.json': '{"files":[]}' }

const STOPPED = { out: 'halfway\n', err: 'storyrod: stopped; the earlier output is as it was.\n' }

function shop(): string {
  const cwd = tempFolder()
  fill(cwd, { 'studio.yaml': '', ...OLD })
  return cwd
}

function stagingFolders(cwd: string): string[] {
  return readdirSync(join(cwd, 'studio-drawings')).filter((name) => name.startsWith('.storyrod-staging-'))
}

describe('a process that is ended while it draws', () => {
  test('by SIGKILL: the earlier output is intact, and the next run clears up', async () => {
    const cwd = shop()
    const before = treeWithTimes(cwd)
    const child = start(SLOW, ['draw', 'studio.yaml'], { cwd })
    await child.printed('halfway')
    child.process.kill('SIGKILL')
    expect(await child.ended).toMatchObject({ code: null, signal: 'SIGKILL' })

    const [staging] = stagingFolders(cwd)
    expect(staging).toBe(`.storyrod-staging-${child.process.pid}`)
    const after = Object.entries(treeWithTimes(cwd)).filter(([path]) => !path.includes('.storyrod-staging-'))
    expect(Object.fromEntries(after)).toEqual(before)

    const next = await run(cwd, ['draw', 'studio.yaml'])
    expect(next.code).toBe(0)
    expect(stagingFolders(cwd)).toEqual([])
  })

  test('by SIGTERM: it clears up itself and ends with 143', async () => {
    const cwd = shop()
    const before = treeWithTimes(cwd)
    const child = start(SLOW, ['draw', 'studio.yaml'], { cwd })
    await child.printed('halfway')
    child.process.kill('SIGTERM')
    expect(await child.ended).toEqual({ code: 143, signal: null, ...STOPPED })
    expect(treeWithTimes(cwd)).toEqual(before)
  })
})

test('a second run into the same folder gives way to the first, which clears up at SIGINT and ends with 130', async () => {
  const cwd = shop()
  const before = treeWithTimes(cwd)
  const child = start(SLOW, ['draw', 'studio.yaml'], { cwd })
  await child.printed('halfway')
  const second = await run(cwd, ['draw', 'studio.yaml'])
  expect(second).toMatchObject({ code: 3, out: '' })
  expect(second.err).toContain(`another run (process ${child.process.pid}) is drawing there`)
  expect(stagingFolders(cwd)).toEqual([`.storyrod-staging-${child.process.pid}`])
  child.process.kill('SIGINT')
  expect(await child.ended).toEqual({ code: 130, signal: null, ...STOPPED })
  expect(treeWithTimes(cwd)).toEqual(before)
})

test('with no earlier output not even the folder stays, though the reader of its words has gone away', async () => {
  const cwd = tempFolder()
  fill(cwd, { 'studio.yaml': '' })
  const child = start(SLOW, ['draw', 'studio.yaml'], { cwd })
  await child.printed('halfway')
  child.process.stdout?.destroy()
  child.process.stderr?.destroy()
  child.process.kill('SIGINT')
  expect((await child.ended).code).toBe(130)
  expect(tree(cwd)).toEqual({ 'studio.yaml': '' })
})

test('prints its version; and the staging folder of a process that is gone is cleared away', async () => {
  const cwd = shop()
  const child = start(BIN, ['--version'], { cwd })
  const ended = await child.ended
  expect(ended).toMatchObject({ code: 0, err: '' })
  expect(ended.out).toMatch(/^\d+\.\d+\.\d+\n$/)
  fill(cwd, { [`studio-drawings/.storyrod-staging-${child.process.pid}/new/x`]: 'left behind' })
  await replaceOutput(nodeDisk, {
    folder: join(cwd, 'studio-drawings'),
    paths: ['panels.json'],
    files: () => handOut({ 'panels.json': 'new' }),
    onFile: () => undefined,
    stop: { asked: undefined },
  })
  expect(stagingFolders(cwd)).toEqual([])
})

describe('the program as a process', () => {
  test('ends with the exit code of the command', async () => {
    const ended = await start(BIN, ['check', 'none.yaml'], { cwd: tempFolder() }).ended
    expect(ended).toMatchObject({ code: 2, out: '' })
    expect(ended.err).toMatch(/^storyrod: there is no definition none\.yaml\.\n/)
  })

  test('says so when its words cannot be written, and ends with 3', async () => {
    // A write to /dev/full fails with ENOSPC (Linux, man 4 full).
    const full = openSync('/dev/full', 'w')
    try {
      const child = start(BIN, ['--help'], { cwd: tempFolder(), stdio: ['ignore', full, 'pipe'] })
      const ended = await child.ended
      expect(ended.code).toBe(3)
      expect(ended.err).toMatch(/^storyrod: could not print everything: ENOSPC/)
    } finally {
      closeSync(full)
    }
  })
})
