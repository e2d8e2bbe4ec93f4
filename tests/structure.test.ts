import { readdirSync, readFileSync, statSync } from 'node:fs'
import { dirname, join, relative, resolve } from 'node:path'
import { fileURLToPath } from 'node:url'
import { describe, expect, test } from 'vitest'

const SRC = fileURLToPath(new URL('../src', import.meta.url))

/** The rooms of the house in the order in which data goes through them. A room imports only from rooms before it. */
const ORDER = [
  'memory',
  'length',
  'geometry',
  'hardware',
  'rulebook',
  'project',
  'assembly',
  'panel',
  'sheets',
  'checks',
  'templates',
  'drawing',
  'writers',
  'outputs',
  'cli',
  'page',
]

/** The two tops: rooms that may touch the disk or the screen, the clock, the console and the process. Neither knows the other. */
const IMPURE = ['cli', 'page']

function filesIn(folder: string): string[] {
  return readdirSync(folder).flatMap((name) => {
    const path = join(folder, name)
    return statSync(path).isDirectory() ? filesIn(path) : /\.tsx?$/.test(path) ? [path] : []
  })
}

/** What is not in src (the samples that the page brings along) has no room. */
const room = (path: string): string => relative(SRC, path).split('/')[0] ?? ''

interface Import {
  readonly file: string
  readonly from: string
  readonly to: string
  readonly target: string
}

const files = filesIn(SRC)
const imports: Import[] = files.flatMap((file) =>
  [...readFileSync(file, 'utf8').matchAll(/(?:from|import)\s*\(?\s*'([^']+)'/g)].map((match) => {
    const target = match[1] ?? ''
    const to = target.startsWith('.') ? room(resolve(dirname(file), target)) : target
    return { file: relative(SRC, file), from: room(file), to, target }
  }),
)

describe('the structure of src', () => {
  test('has files and imports to look at', () => {
    expect(files.length).toBeGreaterThan(40)
    expect(imports.length).toBeGreaterThan(100)
  })

  test('every file lies in a room of the list', () => {
    expect(files.map(room).filter((name) => !ORDER.includes(name))).toEqual([])
  })

  test('a room imports only from rooms before it', () => {
    const against = imports.filter(
      ({ from, to, target }) =>
        target.startsWith('.') &&
        to !== from &&
        (ORDER.indexOf(to) > ORDER.indexOf(from) || (IMPURE.includes(to) && IMPURE.includes(from))),
    )
    expect(against.map(({ file, target }) => `${file} imports ${target}`)).toEqual([])
  })

  test('another room is entered by its index.ts', () => {
    const past = imports.filter(
      ({ from, to, target }) =>
        target.startsWith('.') && ORDER.includes(to) && to !== from && !target.endsWith('/index.ts'),
    )
    expect(past.map(({ file, target }) => `${file} imports ${target}`)).toEqual([])
  })

  test('a folder of the assembly is entered by its index.ts', () => {
    const past = imports.filter(({ file, from, target }) => {
      const here = resolve(SRC, dirname(file))
      const there = dirname(resolve(here, target))
      const within = !relative(there, here).startsWith('..')
      return from === 'assembly' && dirname(relative(SRC, there)) === from && !within && !target.endsWith('/index.ts')
    })
    expect(past.map(({ file, target }) => `${file} imports ${target}`)).toEqual([])
  })

  const BUILDS_PAGE = /^page\/(?:vite\.config\.ts|build\/)/

  test('only the command touches node, and what builds the page', () => {
    const impure = imports.filter(
      ({ file, from, target }) => target.startsWith('node:') && from !== 'cli' && !BUILDS_PAGE.test(file),
    )
    expect(impure.map(({ file, target }) => `${file} imports ${target}`)).toEqual([])
  })

  test('everything else is pure: no clock, chance, locale, console, process', () => {
    const forbidden = /\b(Date\.now|new Date\(\)|Math\.random|toLocale\w+|Intl\.|console\.|process\.|performance\.)/
    const found = files
      .filter((file) => !IMPURE.includes(room(file)))
      .flatMap((file) =>
        readFileSync(file, 'utf8')
          .split('\n')
          .flatMap((line, k) =>
            forbidden.test(line) && !/^\s*(\*|\/\/)/.test(line)
              ? [`${relative(SRC, file)}:${k + 1} ${line.trim()}`]
              : [],
          ),
      )
    expect(found).toEqual([])
  })

  test('no file is longer than 300 lines', () => {
    const long = files
      .map((file) => ({ file: relative(SRC, file), lines: readFileSync(file, 'utf8').split('\n').length }))
      .filter(({ lines }) => lines > 300)
    expect(long).toEqual([])
  })
})
