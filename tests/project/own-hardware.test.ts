import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import type { Item } from '../../src/hardware/index.ts'
import { type Project, readDefinition, renderProblems } from '../../src/project/index.ts'
import { projectOf } from '../support/define.ts'

const definition = (hardware: string, module: string, units = 'mm') => `
storyrod: 1
units: ${units}
stock: { board: { thickness: 18 mm } }
hardware:
${hardware}
modules:
  one:
    width: 600 mm
    depth: 500 mm
    carcase height: 700 mm
    stock: board
${module}
`

const casterOf = (project: Project): Item => {
  const base = project.modules[0]?.base
  if (base?.kind !== 'casters') throw new Error('no casters')
  return base.item
}

/** The caster of a module that stands on `mine`. */
const caster = (hardware: string, units = 'mm') =>
  casterOf(projectOf(definition(hardware, '    base: { casters: mine }', units)))

const problems = (text: string): string[] => {
  const read = readDefinition(text, 'x.yaml')
  return read.ok ? [] : read.problems.map(({ message }) => message)
}

describe("a project's own hardware", () => {
  test('is like another in what it does not say', () => {
    expect(caster('  mine: {like: caster 75, overall height: 98}')).toMatchObject({
      id: 'mine',
      kind: 'caster',
      title: 'mine',
      overallHeight: 98,
      swivelRadius: 75,
      loadKg: 75,
    })
  })

  test('says where its figures come from', () => {
    expect(caster('  mine: {like: caster 75, title: the grey ones, source: measured}')).toMatchObject({
      title: 'the grey ones',
      source: 'measured',
    })
    expect(caster('  mine: {like: caster 75}').source).toMatch(
      /^the project; what it does not say, as caster 75: .*S42/,
    )
  })

  test('is measured in the units of the project: 4 1/8 in is 104.775 mm, and a length may carry its own', () => {
    const own = '  mine: {like: caster 3 in, overall height: 4 1/8, swivel radius: 80 mm, hole pattern: [3, 2]}'
    const item = caster(own, 'in')
    expect(item.kind === 'caster' && item.overallHeight).toBeCloseTo(104.775, 9)
    expect(item).toMatchObject({ swivelRadius: 80 })
    // 3 and 2 in apart: 38.1 and 25.4 mm from the king pin.
    expect(item.parts.plate?.[0]?.x).toBeCloseTo(-38.1, 9)
    expect(item.parts.plate?.[0]?.y).toBeCloseTo(-25.4, 9)
  })

  test('may be like an own one, before or behind it', () => {
    const item = caster('  mine: {like: ours, load: 60}\n  ours: {like: caster 75, overall height: 98}')
    expect(item).toMatchObject({ overallHeight: 98, loadKg: 60 })
    expect(caster('  ours: {like: caster 75, overall height: 98}\n  mine: {like: ours, load: 60}')).toEqual(item)
  })

  test('may be like a thousand', () => {
    const chain = Array.from({ length: 998 }, (_, k) => `  c${k}: {like: c${k + 1}}`)
    const item = caster([`  mine: {like: c0}`, ...chain, '  c998: {like: caster 75, load: 7}'].join('\n'))
    expect(item).toMatchObject({ loadKg: 7 })
  })

  test('more than a thousand are refused, and not called unknown', () => {
    const many = Array.from({ length: 1001 }, (_, k) => `  c${k}: {like: caster 75}`)
    expect(problems(definition(many.join('\n'), '    base: { casters: c7 }'))).toEqual([
      'hardware: 1001 pieces of hardware are more than are read',
    ])
  })

  test('under a name of the catalogue stands in its place: by name, as a default, and for what is like it', () => {
    const project = projectOf(
      definition(
        '  caster 75: {overall height: 98}\n  pin 5: {hole depth: 10}\n  dowel 8x30: {diameter: 7.8}\n  screw 4.5x45: {length: 50}\n  mine: {like: caster 75}',
        '    base: { casters: mine }\n    carcase: { joint: dowel, back: { stock: board } }\n    inside: { loose shelves: 1 }',
      ),
    )
    expect(casterOf(project)).toMatchObject({ overallHeight: 98 })
    expect(project.modules[0]?.inside.looseShelves?.pins.item.parts.left).toMatchObject([{ diameter: 5, depth: 10 }])
    expect(project.modules[0]?.carcase.joint).toMatchObject({ item: { parts: { face: [{ diameter: 7.8 }] } } })
    expect(project.modules[0]?.carcase.back).toMatchObject({ joint: { item: { id: 'screw 4.5x45', length: 50 } } })
  })

  test('under a new name is used only where it is named', () => {
    const project = projectOf(
      definition(
        '  a pin: {like: pin 5, hole depth: 10}\n  a dowel: {like: dowel 8x30, diameter: 7.8}\n  a hinge: {like: hinge 35 full, base figure: 14}',
        '    carcase: { joint: dowel }\n    inside: { loose shelves: 1, front: { kind: door } }',
      ),
    )
    const [module] = project.modules
    expect(module?.carcase.joint).toMatchObject({ item: { id: 'dowel 8x30' } })
    expect(module?.inside.looseShelves?.pins.item.id).toBe('pin 5')
    expect(module?.inside.front).toMatchObject({ hinge: [{ id: 'hinge 35 full' }, { id: 'hinge 35 half' }] })
  })

  test('with a problem is not reported again where it is used', () => {
    expect(problems(definition('  mine: {like: caster 57}', '    base: { casters: mine }'))).toEqual([
      'hardware › mine › like: there is no hardware "caster 57"',
    ])
  })

  test('is offered when a name is misspelt', () => {
    const read = readDefinition(
      definition('  our caster: {like: caster 75}', '    base: { casters: our castor }'),
      'x.yaml',
    )
    expect(read.ok ? [] : read.problems.map(({ nearest }) => nearest)).toEqual(['our caster'])
  })

  test('may have any name that a module may have', () => {
    for (const name of ['__proto__', 'constructor', '"10"', '"№ 7: the # one"', 'toString']) {
      const text = definition(`  ${name}: {like: caster 75, load: 9}`, `    base: { casters: ${name} }`)
      expect(casterOf(projectOf(text)), name).toMatchObject({ loadKg: 9 })
    }
  })

  test('a range without the usual takes its middle', () => {
    const project = projectOf(
      definition(
        '  mine: {like: hinge 35 full, cup distance: {least: 3, most: 6}}',
        '    inside: { front: { kind: door, hinge: mine } }',
      ),
    )
    expect(project.modules[0]?.inside.front).toMatchObject({ hinge: [{ cupDistance: { min: 3, max: 6, usual: 4.5 } }] })
  })
})

test('the example in the README is read, and its figures are those that it says', () => {
  const readme = readFileSync(new URL('../../README.md', import.meta.url), 'utf8')
  const example = /```yaml\nhardware:\n([\s\S]*?)```/.exec(readme)?.[1] ?? ''
  expect(example).not.toBe('')
  const read = readDefinition(definition(example, '    base: { casters: odd caster }'), 'README.md')
  if (!read.ok) throw new Error(renderProblems(read.problems))
  const item = casterOf(read.project)
  expect(item).toMatchObject({ overallHeight: 98, swivelRadius: 70, plate: { x: 70, y: 64 } })
  expect(item.parts.plate?.map(({ x, y, diameter }) => [x, y, diameter])).toEqual([
    [-20, 10, 8],
    [20, -10, 8],
  ])
})
