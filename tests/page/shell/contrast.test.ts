import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { describe, expect, test } from 'vitest'

const css = readFileSync(fileURLToPath(new URL('../../../src/page/look/tokens.css', import.meta.url)), 'utf8')

/** The colours that a rule sets, by name; those that stand for another one are followed. */
function colours(selector: string): ReadonlyMap<string, string> {
  const start = css.indexOf(`${selector} {`)
  if (start < 0) throw new Error(`no rule for ${selector}`)
  const body = css.slice(start, css.indexOf('}', start))
  return new Map(
    [...body.matchAll(/--([a-z]+):\s*(#[0-9a-f]{6}|var\(--[a-z]+\));/g)].map(([, name, value]) => [
      name ?? '',
      value ?? '',
    ]),
  )
}

/** Relative luminance as WCAG 2.2 defines it. */
function luminance(colour: string): number {
  const [red = 0, green = 0, blue = 0] = [1, 3, 5].map((at) => {
    const part = Number.parseInt(colour.slice(at, at + 2), 16) / 255
    return part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4
  })
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue
}

function contrast(one: string, other: string): number {
  const [low = 0, high = 0] = [luminance(one), luminance(other)].sort((a, b) => a - b)
  return (high + 0.05) / (low + 0.05)
}

test('the arithmetic: black on white is 21, grey 767676 on white 4.54', () => {
  expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 6)
  expect(contrast('#767676', '#ffffff')).toBeCloseTo(4.54, 2)
})

const light = colours(':root')
const dark = new Map([...light, ...colours(':root[data-theme="dark"]')])

test('what the system’s dark sets is what the chosen dark sets', () => {
  expect(colours(':root:not([data-theme="light"])')).toEqual(colours(':root[data-theme="dark"]'))
})

describe.each([
  ['light', light],
  ['dark', dark],
])('%s', (_, all) => {
  const of = (name: string): string => {
    const value = all.get(name)
    if (value === undefined) throw new Error(`no colour ${name}`)
    const other = /^var\(--([a-z]+)\)$/.exec(value)?.[1]
    return other === undefined ? value : of(other)
  }
  const grounds = ['paper', 'bench', 'tint']

  test.each(grounds)('words on %s have 7 : 1 (WCAG 1.4.6)', (ground) => {
    expect(contrast(of('ink'), of(ground))).toBeGreaterThanOrEqual(7)
    expect(contrast(of('quiet'), of(ground))).toBeGreaterThanOrEqual(7)
  })

  test.each(grounds)('rules of controls and the focus on %s have 3 : 1 (WCAG 1.4.11)', (ground) => {
    expect(contrast(of('line'), of(ground))).toBeGreaterThanOrEqual(3)
    expect(contrast(of('focus'), of(ground))).toBeGreaterThanOrEqual(3)
  })
})
