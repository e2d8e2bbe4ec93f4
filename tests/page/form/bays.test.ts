import fc from 'fast-check'
import { expect, test } from 'vitest'
import { boardBox } from '../../../src/assembly/index.ts'
import { allBays, assumedShell, type BayView, baysOf } from '../../../src/page/form/bays/bays.ts'
import { frontLines } from '../../../src/page/form/bays/front-lines.ts'
import { formModelOf } from '../../../src/page/form/model.ts'
import { dataAt } from '../../../src/project/index.ts'
import { sampleText } from '../../support/samples.ts'
import { dataOf, definitions, laidOut } from './support.ts'

const TEXT = `storyrod: 1
stock: { ply: { thickness: [18, 18.2, 17.8] } }
modules:
  box:
    width: 636
    depth: 400
    carcase height: 736
    stock: ply
    carcase: { top: over, bottom: between }
    inside:
      side by side:
        - size: 200
          loose shelves: 2
        - stacked:
            - share: 1
              drawers: { stack: [{ height: 100 }, {}] }
            - share: 2
              front: { kind: door, hang: right }
`
const viewOf = (text: string, module = 'box'): BayView => {
  const data = dataOf(text)
  const shell = formModelOf(data, laidOut(text)).shells.find(({ name }) => name === module)
  if (shell === undefined) throw new Error(`no module ${module}`)
  return baysOf({ data, module, shell, units: 'mm' })
}

test('bays have the places that they have in the cabinet', () => {
  const inside = viewOf(TEXT)
  // Mean reading 18. Width 636 less two sides: x 18 … 618. Height 736 less bottom and top: z 18 … 718.
  expect(inside.rectangle).toEqual({ x0: 18, x1: 618, z0: 18, z1: 718 })
  const [left, right] = inside.bays
  expect(left).toMatchObject({ rectangle: { x0: 18, x1: 218 }, looseShelves: 2, within: 'side by side' })
  expect(inside.dividers).toEqual([{ x0: 218, x1: 236, z0: 18, z1: 718 }])
  // Of 700 less the shelf of 18, 682, the upper bay takes one third: 227 1/3, so z from 718 down to 490 2/3.
  const [upper, lower] = right?.bays ?? []
  expect(upper?.rectangle.z1).toBe(718)
  expect(upper?.rectangle.z0).toBeCloseTo(490 + 2 / 3, 9)
  expect(upper?.drawers[0]).toBe(100)
  expect(upper?.drawers[1]).toBeCloseTo(127 + 1 / 3, 9)
  expect(lower).toMatchObject({ front: { kind: 'door', hang: 'right' }, behind: false })
})

test('a front lies before all bays in its opening', () => {
  const text = TEXT.replace('    inside:\n', '    inside:\n      front: { kind: door }\n')
    .replace('              drawers: { stack: [{ height: 100 }, {}] }\n', '')
    .replace('              front: { kind: door, hang: right }\n', '')
  expect(allBays(viewOf(text)).map(({ behind }) => behind)).toEqual([false, true, true, true, true])
})

test('sizes that do not add up are drawn as equal parts, and said to be', () => {
  const data = dataOf(TEXT.replace('size: 200', 'size: 2000'))
  const shell = assumedShell({ data, module: 'box', units: 'mm' })
  const inside = baysOf({ data, module: 'box', shell, units: 'mm' })
  expect(inside.strained).toBe(true)
  const [left, right] = inside.bays.map(({ rectangle: { x0, x1 } }) => x1 - x0)
  // (636 − 2 × 18 − 18) / 2
  expect(left).toBeCloseTo(291, 9)
  expect(right).toBeCloseTo(291, 9)
})

test('partitions and fixed shelves are drawn where the cabinet has them', () => {
  fc.assert(
    fc.property(definitions, (text) => {
      const laid = laidOut(text)
      const data = dataOf(text)
      const { shells } = formModelOf(data, laid)
      const units = dataAt(data, ['units']) === 'in' ? 'in' : 'mm'
      for (const module of laid.assembly.modules) {
        const shell = shells.find(({ name }) => name === module.name)
        if (shell === undefined) continue
        const inside = baysOf({ data, module: module.name, shell, units })
        const drawn = allBays(inside).flatMap(({ split, dividers }) =>
          dividers.map(({ x0, x1, z0, z1 }) => (split === 'stacked' ? ['z', z0, z1] : ['x', x0, x1])),
        )
        const placed = module.panels.flatMap((panel) => {
          const { min, max } = boardBox(panel)
          if (panel.role === 'partition') return [['x', min[0], max[0]]]
          return panel.role === 'fixed shelf' ? [['z', min[2], max[2]]] : []
        })
        expect(sorted(drawn)).toEqual(sorted(placed))
      }
    }),
    { numRuns: 12 },
  )
})

const sorted = (spans: readonly (string | number)[][]): string[] =>
  spans.map(([axis, from, to]) => `${axis} ${Number(from).toFixed(4)} ${Number(to).toFixed(4)}`).toSorted()

test('the lines of a front lie within the carcase, y down', () => {
  const data = dataOf(sampleText('pottery-studio'))
  const { shells } = formModelOf(data, laidOut(sampleText('pottery-studio')))
  expect(shells).toHaveLength(9)
  for (const shell of shells) {
    const lines = frontLines(shell, baysOf({ data, module: shell.name, shell, units: 'mm' }))
    const paths = [lines.wood, lines.shelves, lines.fronts, lines.swings].join(' ')
    const numbers = [...paths.matchAll(/-?[\d.]+/g)].map(Number)
    expect(Math.min(...numbers)).toBe(0)
    expect(Math.max(...numbers)).toBeLessThanOrEqual(Math.max(shell.width, shell.height))
    expect(paths).not.toContain('NaN')
  }
})

test('which way a door opens: the dashed lines meet at its hinges', () => {
  const text = TEXT.replace(/ {4}inside:[\s\S]*/, '    inside: { front: { kind: door, hang: left } }\n')
  const inside = viewOf(text)
  const data = dataOf(text)
  const [shell] = formModelOf(data, laidOut(text)).shells
  if (shell === undefined) throw new Error('no module')
  // The opening is 18 … 618 by 18 … 718 (y down from 736); 6 mm within it: 24 … 612, y 24 … 712, middle 368.
  expect(frontLines(shell, inside).swings).toBe('M612 24L24 368L612 712')
})
