import { chmodSync, readFileSync, symlinkSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import type { Disk } from '../../src/cli/disk.ts'
import { nodeDisk } from '../../src/cli/disk.ts'
import { osError, watchedDisk } from './helpers/failing-disk.ts'
import { fakeEngine } from './helpers/fake-engine.ts'
import { run } from './helpers/run.ts'
import { fill, tempFolder, tree } from './helpers/temp.ts'

describe('storyrod check', () => {
  async function checked(options: Parameters<typeof fakeEngine>[0]) {
    const cwd = tempFolder()
    fill(cwd, { 'a.yaml': '' })
    const ran = await run(cwd, ['check', 'a.yaml'], { engine: fakeEngine(options) })
    expect(tree(cwd)).toEqual({ 'a.yaml': '' })
    return ran
  }

  test('with nothing found ends with 0', async () => {
    expect(await checked({ findings: 'no stops' })).toEqual({ code: 0, out: 'no stops\n', err: '' })
  })

  test('with warnings and notes ends with 0', async () => {
    expect(await checked({ severities: ['warn', 'note', 'warn'], findings: 'three' })).toEqual({
      code: 0,
      out: 'three\n',
      err: '',
    })
  })

  test('with a stop ends with 1', async () => {
    expect(await checked({ severities: ['stop'], findings: 'one\n' })).toEqual({
      code: 1,
      out: 'one\n',
      err: '',
    })
  })

  test('of a bad definition ends with 2 and prints its problems as errors', async () => {
    expect(await checked({ problems: 'a.yaml:1:1 bad\n' })).toEqual({ code: 2, out: '', err: 'a.yaml:1:1 bad\n' })
  })
})

describe('storyrod new', () => {
  test('writes the starter and says what to do next', async () => {
    const cwd = tempFolder()
    expect(await run(cwd, ['new', 'my.yaml'])).toEqual({
      code: 0,
      out: 'Wrote my.yaml. Change it to your sizes, then: storyrod check my.yaml\n',
      err: '',
    })
    expect(tree(cwd)).toEqual({ 'my.yaml': '# a starter\n' })
  })

  test('never writes over a file, a folder or a link', async () => {
    const cwd = tempFolder()
    fill(cwd, { 'my.yaml': 'mine', 'folder/x': '' })
    symlinkSync(join(cwd, 'nowhere'), join(cwd, 'link'))
    const before = tree(cwd)
    for (const name of ['my.yaml', 'folder', 'link']) {
      expect(await run(cwd, ['new', name])).toEqual({
        code: 2,
        out: '',
        err: `storyrod: ${name} is there already, and is left as it is.\n  Give another name, or move it away first.\n`,
      })
    }
    expect(tree(cwd)).toEqual(before)
  })

  test('makes no folders', async () => {
    const cwd = tempFolder()
    expect(await run(cwd, ['new', 'shop/my.yaml'])).toEqual({
      code: 3,
      out: '',
      err:
        'storyrod: could not write shop/my.yaml: it is not there, or its folder is not (ENOENT).\n  Nothing was written.\n' +
        '  Make the folder first, or name another place.\n',
    })
    expect(tree(cwd)).toEqual({})
  })

  test('below a file', async () => {
    const cwd = tempFolder()
    fill(cwd, { file: '' })
    expect(await run(cwd, ['new', 'file/my.yaml'])).toMatchObject({ code: 3 })
  })

  test('in a folder that may not be written', async () => {
    const cwd = tempFolder()
    chmodSync(cwd, 0o555)
    const disk = watchedDisk((step) => {
      if (step === 'create') throw osError('EACCES', 'open')
    })
    expect(await run(cwd, ['new', 'my.yaml'], { disk })).toMatchObject({
      code: 3,
      err: expect.stringContaining(
        'could not write my.yaml: you have no permission (EACCES).\n  Nothing was written.\n',
      ),
    })
  })

  test('on a full disk leaves no half-written file', async () => {
    const cwd = tempFolder()
    const disk: Disk = {
      ...nodeDisk,
      async create(path, bytes) {
        await nodeDisk.create(path, bytes.subarray(0, 4))
        throw osError('ENOSPC')
      },
    }
    const ran = await run(cwd, ['new', 'my.yaml'], { disk })
    expect(ran.code).toBe(3)
    expect(ran.err).toContain('the disk is full (ENOSPC)')
    expect(tree(cwd)).toEqual({})
  })

  test('without a name', async () => {
    expect(await run(tempFolder(), ['new', ''])).toMatchObject({ code: 2 })
  })
})

test('storyrod schema prints JSON and nothing else', async () => {
  const ran = await run(tempFolder(), ['schema'])
  expect(ran).toEqual({ code: 0, out: '{\n  "title": "a schema"\n}\n', err: '' })
})

describe('a command line that cannot be followed ends with 2 and says what would be right', () => {
  const see = '  storyrod --help lists the commands, storyrod <command> --help their options.\n'
  test.each([
    ['an unknown option', ['draw', '--ot', 'x'], "storyrod: unknown option '--ot'\n(Did you mean --out?)\n"],
    ['an option of another command', ['check', 'a.yaml', '--anyway'], "storyrod: unknown option '--anyway'\n"],
    ['an unknown command', ['drew'], "storyrod: unknown command 'drew'\n(Did you mean draw?)\n"],
    ['a missing argument', ['check'], "storyrod: missing required argument 'definition'\n"],
    ['a missing argument of new', ['new'], "storyrod: missing required argument 'definition'\n"],
    ['a missing folder', ['draw', '--out'], "storyrod: option '--out <folder>' argument missing\n"],
    [
      'an argument too many',
      ['draw', 'a', 'b'],
      "storyrod: too many arguments for 'draw'. Expected 1 argument but got 2.\n",
    ],
    [
      'an argument where none is',
      ['schema', 'a'],
      "storyrod: too many arguments for 'schema'. Expected 0 arguments but got 1.\n",
    ],
  ])('%s', async (_, argv, words) => {
    const ran = await run(tempFolder(), argv)
    expect(ran.code).toBe(2)
    expect(ran.out).toBe('')
    expect(ran.err.replace(/\n+$/, '\n')).toBe(words + see)
  })

  test('an empty folder', async () => {
    expect(await run(tempFolder(), ['draw', '--out', ''])).toEqual({
      code: 2,
      out: '',
      err: 'storyrod: the folder after --out is empty.\n',
    })
  })

  test('no command at all: the help, as an error', async () => {
    const ran = await run(tempFolder(), [])
    expect(ran.code).toBe(2)
    expect(ran.out).toBe('')
    expect(ran.err).toContain('Usage: storyrod [options] [command]')
  })
})

describe('help', () => {
  const commands = {
    draw: ['[definition]', '--out <folder>', '--anyway', 'storyrod draw studio.yaml --out', 'panels.json'],
    check: ['<definition>', 'storyrod check studio.yaml', 'warning'],
    new: ['<definition>', 'never writes over a file', 'storyrod new studio.yaml'],
    schema: ['JSON Schema', 'storyrod schema > storyrod.schema.json'],
  }

  test('of the program names every command and how to begin', async () => {
    const ran = await run(tempFolder(), ['--help'])
    expect(ran).toMatchObject({ code: 0, err: '' })
    for (const command of Object.keys(commands)) expect(ran.out).toMatch(new RegExp(`^  ${command} `, 'm'))
    expect(ran.out).toContain('storyrod new my.yaml')
  })

  test.each(Object.entries(commands))(
    'of %s says what it does, its arguments, examples and exit codes',
    async (command, parts) => {
      const ran = await run(tempFolder(), [command, '--help'])
      expect(ran).toMatchObject({ code: 0, err: '' })
      expect(ran.out).toContain(`Usage: storyrod ${command} [options]`)
      for (const part of parts) expect(ran.out).toContain(part)
      for (const code of ['0 ', '1 ', '2 ', '3 ', '70', '130'])
        expect(ran.out).toMatch(new RegExp(`^  ${code} +\\S`, 'm'))
      expect((await run(tempFolder(), ['help', command])).out).toBe(ran.out)
    },
  )

  test.each([...Object.keys(commands), ''])('of "%s" keeps to 88 columns and has no colours', async (command) => {
    const ran = await run(tempFolder(), command === '' ? ['--help'] : [command, '--help'])
    for (const line of ran.out.split('\n')) expect(line.length, line).toBeLessThanOrEqual(88)
    expect(ran.out).not.toContain('\u001b')
  })
})

test('--version prints the version of package.json', async () => {
  const { version } = JSON.parse(readFileSync(new URL('../../package.json', import.meta.url), 'utf8'))
  expect(await run(tempFolder(), ['--version'])).toEqual({ code: 0, out: `${version}\n`, err: '' })
})
