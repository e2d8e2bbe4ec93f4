import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { describe, expect, test } from 'vitest'
import { catalogue } from '../src/hardware/index.ts'
import { definitionJsonSchema } from '../src/project/index.ts'
import { RULEBOOK } from '../src/rulebook/index.ts'
import { ruleLine } from './support/rule-line.ts'

const root = new URL('..', import.meta.url)
const readme = readFileSync(new URL('README.md', root), 'utf8')
const developers = readFileSync(new URL('DEVELOPERS.md', root), 'utf8')

/** Every property name of a JSON Schema, at any depth. */
function keysOf(schema: unknown): string[] {
  if (typeof schema !== 'object' || schema === null) return []
  const own =
    'properties' in schema && typeof schema.properties === 'object' ? Object.keys(schema.properties ?? {}) : []
  return [...own, ...Object.values(schema).flatMap(keysOf)]
}

describe('the README', () => {
  test('names every key of the definition', () => {
    const keys = new Set(keysOf(definitionJsonSchema()))
    expect(keys.size).toBeGreaterThan(50)
    expect([...keys].filter((key) => !readme.includes(`\`${key}\``))).toEqual([])
  })

  test('names every piece of hardware', () => {
    expect(catalogue.map((item) => item.id).filter((id) => !readme.includes(`\`${id}\``))).toEqual([])
  })

  test('has a line for every rule', () => {
    const lines = Object.entries(RULEBOOK).map(([id, entry]) => ruleLine(id, entry))
    expect(lines.filter((line) => !readme.includes(line))).toEqual([])
  })

  test('links only to files that are there', () => {
    const links = [...readme.matchAll(/\]\(([^)#]+)[^)]*\)/g)]
      .map((match) => match[1] ?? '')
      .filter((link) => !link.startsWith('http'))
    expect(links.length).toBeGreaterThan(4)
    expect(links.filter((link) => !existsSync(fileURLToPath(new URL(link, root))))).toEqual([])
  })
})

function sourceFiles(folder: URL): string[] {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => readFileSync(`${entry.parentPath}/${entry.name}`, 'utf8'))
}

test('DEVELOPERS lists every source that the code cites, in order, and no other', () => {
  const cited = new Set(sourceFiles(new URL('src', root)).flatMap((text) => text.match(/\bS\d+b?\b/g) ?? []))
  const listed = [...developers.matchAll(/^- \*\*(S\d+b?)\*\* /gm)].map((match) => match[1] ?? '')
  const rank = (source: string): number => Number.parseInt(source.slice(1), 10) + (source.endsWith('b') ? 0.5 : 0)
  expect(listed).toEqual([...cited].sort((a, b) => rank(a) - rank(b)))
})

test('DEVELOPERS lists every source that the catalogue and the rules cite', () => {
  const cited = [...catalogue.map((item) => item.source), ...Object.values(RULEBOOK).map(({ source }) => source)]
  const numbers = new Set(cited.flatMap((source) => source.match(/\bS\d+b?\b/g) ?? []))
  expect(numbers.size).toBeGreaterThan(10)
  expect([...numbers].filter((number) => !developers.includes(`- **${number}** `))).toEqual([])
})
