import { chmodSync, mkdirSync, readdirSync, symlinkSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { nodeDisk } from '../../src/cli/disk.ts'
import { replaceOutput } from '../../src/cli/replace-output.ts'
import { Trouble } from '../../src/cli/trouble.ts'
import { earlier, NEW, replace } from './helpers/replacing.ts'
import { fill, tempFolder, tree, treeWithTimes } from './helpers/temp.ts'

describe('places that are refused', () => {
  async function refusal(folder: string, files = NEW as Readonly<Record<string, string>>): Promise<string> {
    const before = tree(folder)
    const error = await replace(nodeDisk, folder, { files }).catch((thrown) => thrown)
    expect(error).toBeInstanceOf(Trouble)
    expect(error.exitCode).toBe(3)
    expect(tree(folder)).toEqual(before)
    return error.message
  }

  test('a folder inside that is a link out', async () => {
    const folder = tempFolder()
    const outside = tempFolder()
    symlinkSync(outside, join(folder, 'svg'))
    expect(await refusal(folder)).toBe(
      `could not draw into ${folder}: svg is a link to another place there.\n  Nothing was changed.\n` +
        '  Move it away, or choose another folder with --out.',
    )
    expect(tree(outside)).toEqual({})
  })

  test('a link further down', async () => {
    const folder = tempFolder()
    mkdirSync(join(folder, 'svg'))
    symlinkSync(tempFolder(), join(folder, 'svg', 'b'))
    expect(await refusal(folder)).toContain('svg/b is a link to another place there')
  })

  test('a file that is a link', async () => {
    const folder = tempFolder()
    const outside = tempFolder()
    fill(outside, { 'precious.json': 'precious' })
    symlinkSync(join(outside, 'precious.json'), join(folder, 'panels.json'))
    expect(await refusal(folder)).toContain('panels.json is a link or a device there')
    expect(tree(outside)).toEqual({ 'precious.json': 'precious' })
  })

  test('a file where a folder must be, and a folder where a file must be', async () => {
    const folder = tempFolder()
    fill(folder, { svg: 'a file' })
    expect(await refusal(folder)).toContain('svg is a file, and a folder must be there')
    const other = tempFolder()
    mkdirSync(join(other, 'panels.json'))
    expect(await refusal(other)).toContain('panels.json is a folder, and a file must be there')
  })

  test('an output folder that is a file, or below one, or a link to nothing', async () => {
    const parent = tempFolder()
    fill(parent, { drawings: 'a file' })
    symlinkSync(join(parent, 'nowhere'), join(parent, 'dangling'))
    for (const [name, what] of [
      ['drawings', 'a file'],
      ['drawings/below', 'a file'],
      ['dangling', 'a link to nothing'],
    ] as const) {
      const error = await replace(nodeDisk, join(parent, name)).catch((thrown) => thrown)
      expect(error.exitCode).toBe(3)
      expect(error.message).toBe(
        `could not make the folder ${join(parent, name.split('/')[0] ?? '')}: ${what} of that name is in the way.\n` +
          '  Move it away, or choose another folder with --out.',
      )
    }
    expect(tree(parent)).toEqual({ dangling: 'link', drawings: 'a file' })
  })

  test('a folder that may not be written', async () => {
    const folder = earlier()
    const before = treeWithTimes(folder)
    chmodSync(folder, 0o555)
    const error = await withoutRoot(() => replace(nodeDisk, folder).catch((thrown) => thrown))
    expect(error.exitCode).toBe(3)
    expect(error.message).toBe(
      `could not make a working folder in ${folder}: you have no permission (EACCES).\n  The earlier output is as it was.\n` +
        '  Change the permissions, or choose another folder with --out.',
    )
    expect(treeWithTimes(folder)).toEqual(before)
  })

  test('a parent that may not be written', async () => {
    const parent = tempFolder()
    chmodSync(parent, 0o555)
    const error = await withoutRoot(() => replace(nodeDisk, join(parent, 'out')).catch((thrown) => thrown))
    expect(error.message).toContain(`could not make the folder ${join(parent, 'out')}: you have no permission (EACCES)`)
    expect(tree(parent)).toEqual({})
  })
})

/** Root may write anywhere, so root becomes nobody (user 65534) for the while. */
async function withoutRoot<T>(work: () => Promise<T>): Promise<T> {
  if (process.geteuid?.() !== 0) return work()
  process.seteuid?.(65534)
  try {
    return await work()
  } finally {
    process.seteuid?.(0)
  }
}

describe('faults of our own', () => {
  const cases: readonly [string, readonly string[], string][] = [
    ['an absolute path', ['/etc/x'], 'an output path leaves its folder: "/etc/x"'],
    ['a way up', ['svg/../../x'], 'an output path leaves its folder: "svg/../../x"'],
    ['a way up by backslash', ['svg\\..\\x'], 'an output path leaves its folder: "svg\\\\..\\\\x"'],
    ['a drive', ['c:x'], 'an output path leaves its folder: "c:x"'],
    ['an empty name', ['svg//x'], 'an output path leaves its folder: "svg//x"'],
    ['a NUL', ['x\u0000y'], 'an output path leaves its folder: "x\\u0000y"'],
    ['our own folder', ['.storyrod-staging-1/x'], 'an output path is one of our own folders: .storyrod-staging-1/x'],
    ['capitals alone', ['svg/A.svg', 'svg/a.svg'], 'two output paths are one on some disks: svg/A.svg and svg/a.svg'],
    ['folders by capitals', ['svg/a/x', 'SVG/a/y'], 'two output folders are one on some disks: svg and SVG'],
    ['a file as folder', ['svg', 'svg/a'], 'an output path is both a file and a folder: svg'],
    [
      'the same letter composed twice',
      ['\u00e4', 'a\u0308'],
      'two output paths are one on some disks: \u00e4 and a\u0308',
    ],
  ]
  test.each(cases)('%s is thrown, and nothing is written', async (_, paths, message) => {
    const folder = join(tempFolder(), 'out')
    const files = Object.fromEntries(paths.map((path) => [path, 'x']))
    await expect(replace(nodeDisk, folder, { files })).rejects.toThrow(message)
    expect(readdirSync(join(folder, '..'))).toEqual([])
  })

  test('a file that was not announced, one that comes twice, one that does not come', async () => {
    const folder = earlier()
    const before = treeWithTimes(folder)
    const make = (paths: readonly string[], yielded: readonly string[]) =>
      replaceOutput(nodeDisk, {
        folder,
        paths,
        async *files() {
          for (const path of yielded) yield { path, bytes: new Uint8Array(1) }
        },
        onFile: () => undefined,
        stop: { asked: undefined },
      })
    await expect(make(['a'], ['b'])).rejects.toThrow('a file that was not announced, or twice: "b"')
    await expect(make(['a'], ['a', 'a'])).rejects.toThrow('a file that was not announced, or twice: "a"')
    await expect(make(['a', 'b'], ['a'])).rejects.toThrow('files that were announced did not come: b')
    expect(treeWithTimes(folder)).toEqual(before)
  })
})
