import { execFileSync } from 'node:child_process'
import { writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { stemOf } from '../../src/cli/definition-file.ts'
import { osError, watchedDisk } from './helpers/failing-disk.ts'
import { fakeEngine } from './helpers/fake-engine.ts'
import { run } from './helpers/run.ts'
import { fill, tempFolder } from './helpers/temp.ts'

/** Checks `name` in a folder with these files. */
async function checking(name: string, files: Readonly<Record<string, string | Uint8Array>> = {}) {
  const cwd = tempFolder()
  fill(cwd, files)
  const engine = fakeEngine()
  const ran = await run(cwd, ['check', name], { engine })
  return { cwd, text: engine.opened[0]?.text, ...ran }
}

describe('a definition that cannot be read', () => {
  test('is not there: the definitions that are there are named', async () => {
    const ran = await checking('stud.yaml', { 'studio.yaml': '', 'b.yml': '', 'notes.txt': '' })
    expect(ran).toMatchObject({
      code: 2,
      out: '',
      err: `storyrod: there is no definition stud.yaml.\n  In ${ran.cwd} there are: b.yml, studio.yaml\n`,
    })
  })

  test('is not there, and neither is any other', async () => {
    const ran = await checking('stud.yaml')
    expect(ran.err).toBe(
      `storyrod: there is no definition stud.yaml.\n  No .yaml file is in ${ran.cwd}; "storyrod new" writes one to start from.\n`,
    )
  })

  test('lies in a folder that is not there, or below a file', async () => {
    const ran = await checking('shop/a.yaml')
    expect(ran).toMatchObject({
      code: 2,
      err: `storyrod: there is no definition shop/a.yaml.\n  There is no folder ${join(ran.cwd, 'shop')} either.\n`,
    })
    expect(await checking('a.yaml/b.yaml', { 'a.yaml': '' })).toMatchObject({ code: 2 })
  })

  test('is a folder', async () => {
    const ran = await checking('shop', { 'shop/a.yaml': '' })
    expect(ran).toMatchObject({
      code: 2,
      err: `storyrod: shop is a folder; a definition is one file.\n  In ${join(ran.cwd, 'shop')} there are: a.yaml\n`,
    })
  })

  test('has no name', async () => {
    expect(await checking('')).toMatchObject({ code: 2, err: 'storyrod: the name of the definition is empty.\n' })
  })

  test('may not be read', async () => {
    const cwd = tempFolder()
    fill(cwd, { 'a.yaml': '' })
    const disk = watchedDisk((step) => {
      if (step === 'readStart') throw osError('EACCES', 'open')
    })
    expect(await run(cwd, ['check', 'a.yaml'], { disk })).toEqual({
      code: 3,
      out: '',
      err:
        'storyrod: could not read the definition a.yaml: you have no permission (EACCES).\n' +
        '  Change the permissions.\n',
    })
  })
})

describe('the size limit of 4 MiB', () => {
  // 4 × 1024 × 1024
  const limit = 4_194_304

  test('a file of just that size is read', async () => {
    const ran = await checking('a.yaml', { 'a.yaml': new Uint8Array(limit).fill(0x23) })
    expect(ran.code).toBe(0)
    expect(ran.text?.length).toBe(limit)
  })

  test('one byte more is refused before it is read', async () => {
    const cwd = tempFolder()
    fill(cwd, { 'a.yaml': new Uint8Array(limit + 1) })
    const steps: string[] = []
    const disk = watchedDisk((step, path) => {
      if (path.endsWith('a.yaml')) steps.push(step)
    })
    const ran = await run(cwd, ['check', 'a.yaml'], { disk })
    expect(ran.code).toBe(2)
    expect(ran.err).toBe(
      'storyrod: the definition a.yaml is larger than 4 MiB (4194304 bytes), the most that is read.\n' +
        '  Is it a definition? Split a very large workshop into several files.\n',
    )
    expect(steps).toEqual(['lookThrough'])
  })

  test('a thing without end is given up at the limit', async () => {
    const ran = await run('/', ['check', '/dev/zero'])
    expect(ran.code).toBe(2)
    expect(ran.err).toContain('the definition /dev/zero is larger than 4 MiB')
  })
})

describe('the text', () => {
  test('is read as UTF-8, without a byte order mark', async () => {
    const bytes = new TextEncoder().encode('\ufefftitle: Töpferei ⌀ 陶\r\n')
    expect((await checking('a.yaml', { 'a.yaml': bytes })).text).toBe('title: Töpferei ⌀ 陶\r\n')
  })

  test('comes out of a pipe too', async () => {
    const cwd = tempFolder()
    execFileSync('mkfifo', [join(cwd, 'pipe')])
    const engine = fakeEngine()
    const running = run(cwd, ['check', 'pipe'], { engine })
    // Opening a pipe waits for the other side, so the writer must not hold up this thread.
    execFileSync('sh', ['-c', `printf 'title: piped' > '${join(cwd, 'pipe')}' &`], { stdio: 'ignore' })
    expect((await running).code).toBe(0)
    expect(engine.opened[0]?.text).toBe('title: piped')
  })

  test.each([
    ['a stray byte', [0x61, 0x0a, 0x62, 0xff, 0x63], 'line 2 has the byte ff where it makes no character.'],
    // RFC 3629, section 1: the octet values C0, C1, F5 to FF never appear; F6 is ö in ISO 8859-1.
    ['Latin-1', [0x54, 0xf6, 0x70], 'line 1 has the byte f6 where it makes no character.'],
    ['a character cut off at the end', [0x61, 0x0a, 0xe2, 0x8c], 'it ends within a character, in line 2.'],
    ['UTF-16, low byte first', [0xff, 0xfe, 0x61, 0x00], 'it looks like UTF-16.'],
    ['UTF-16, high byte first', [0xfe, 0xff, 0x00, 0x61], 'it looks like UTF-16.'],
    ['half of a pair of surrogates', [0xed, 0xa0, 0x80], 'line 1 has the byte a0 where it makes no character.'],
  ])('%s is refused and located', async (_, bytes, words) => {
    const ran = await checking('a.yaml', { 'a.yaml': Uint8Array.from(bytes) })
    expect(ran).toMatchObject({
      code: 2,
      out: '',
      err: `storyrod: the definition a.yaml is not UTF-8 text: ${words}\n  Save it as UTF-8 in your editor.\n`,
    })
    expect(ran.text).toBeUndefined()
  })
})

test.each([
  ['studio.yaml', 'studio'],
  ['/a/b.c/studio.v2.YML', 'studio.v2'],
  ['studio.json', 'studio'],
  ['studio', 'studio'],
  ['studio.txt', 'studio.txt'],
  ['.yaml', '.yaml'],
])('the stem of %s is %s', async (path, stem) => {
  expect(await stemOf(path)).toBe(stem)
})

test('a definition written while it is read is not read past the limit', async () => {
  const cwd = tempFolder()
  fill(cwd, { 'a.yaml': 'small' })
  const disk = watchedDisk((step, path) => {
    if (step === 'readStart') writeFileSync(path, new Uint8Array(4_194_305))
  })
  expect(await run(cwd, ['check', 'a.yaml'], { disk })).toMatchObject({ code: 2 })
})
