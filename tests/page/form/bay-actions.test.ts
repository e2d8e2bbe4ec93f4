import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  addBay,
  fillWithDrawers,
  frontBay,
  joinBays,
  placeBay,
  removeBay,
  shelve,
  splitBay,
} from '../../../src/page/form/bays/actions.ts'
import { allBays, assumedShell, type BayView, baysOf, type FrontKind } from '../../../src/page/form/bays/bays.ts'
import { type Data, type DefinitionPath, dataAt, dataNames, type Edit } from '../../../src/project/index.ts'
import { changed, dataOf, definitions } from './support.ts'

const TEXT = `storyrod: 1
stock: { ply: { thickness: 18 } }
modules:
  box:            # by the door
    width: 600
    depth: 400
    carcase height: 720
    stock: ply
    inside:
      stacked:
        - size: 150   # for jars
          drawers: 1
        - loose shelves: 2
          front: { kind: door, hang: left, pull: { item: pull 128, end: top } }
`
const INSIDE: DefinitionPath = ['modules', 'box', 'inside']
const bay = (k: number): DefinitionPath => [...INSIDE, 'stacked', k]
const result = (edits: readonly Edit[], text = TEXT) => changed(text, edits)

describe('what one does with an opening', () => {
  test('it is split, and its shelves go into the first bay; the front stays over all', () => {
    const { text, problems } = result(splitBay(dataOf(TEXT), bay(1), 'side by side', 3))
    expect(problems).toEqual([])
    expect(dataAt(dataOf(text), bay(1))).toMatchObject({
      'side by side': [{ 'loose shelves': 2 }, {}, {}],
      front: { kind: 'door' },
    })
    expect(text).toContain('box:            # by the door')
    expect(text).toContain('- size: 150   # for jars')
  })

  test('a split is taken away', () => {
    const { data, problems } = result(joinBays(dataOf(TEXT), INSIDE))
    expect(problems).toEqual([])
    expect(dataAt(data, [...INSIDE, 'stacked'])).toBeUndefined()
  })

  test('of two bays one is taken out, and what is in the other fills the whole', () => {
    const { data, problems } = result(removeBay(dataOf(TEXT), bay(1)))
    expect(problems).toEqual([])
    expect(dataAt(data, INSIDE)).toEqual({ drawers: 1 })
  })

  test('what fills the whole then keeps its lines and comments; those of its place in the split go', () => {
    const lines = (inside: string) => `${TEXT.slice(0, TEXT.indexOf('      stacked:'))}${inside}`
    const text = lines(`      # upright
      stacked:
        - size: 150   # for jars
        # the wide one
        - size: 300
          # two fit
          loose shelves: '2'   # ash
          side by side:
            - { share: 1 }   # left
            - share: 2
              drawers: {
                stack: 1 }
`)
    expect(result(removeBay(dataOf(text), bay(0)), text).text).toBe(
      lines(`      # upright
      # the wide one
      # two fit
      loose shelves: '2'   # ash
      side by side:
        - { share: 1 }   # left
        - share: 2
          drawers: {
            stack: 1 }
`),
    )
    // In brackets the words stay as they are written, too.
    const flow = lines(`      stacked: [{ size: 150 }, { size: "3", drawers: "1" }]
`)
    expect(result(removeBay(dataOf(flow), bay(0)), flow).text).toBe(lines('      drawers: "1"\n'))
  })

  test('what goes into the first bay of a split keeps its lines and comments', () => {
    const text = TEXT.replace('drawers: 1', 'drawers:   # jars\n            stack: 2   # low')
    expect(result(splitBay(dataOf(text), bay(0), 'side by side', 2), text).text).toBe(
      text.replace(
        'drawers:   # jars\n            stack: 2   # low',
        'side by side:\n            - drawers:   # jars\n                stack: 2   # low\n            - {}',
      ),
    )
  })

  test('a share takes the place of a size, and back', () => {
    const shared = result(placeBay(dataOf(TEXT), bay(0), 'share', 2))
    expect(dataAt(shared.data, bay(0))).toEqual({ share: 2, drawers: 1 })
    const sized = result(placeBay(shared.data, bay(0), 'size', '5 3/4 in'), shared.text)
    expect(dataAt(sized.data, bay(0))).toEqual({ size: '5 3/4 in', drawers: 1 })
  })

  test('drawers take the place of loose shelves; behind a door they have no fronts', () => {
    const { data, problems } = result(fillWithDrawers(dataOf(TEXT), bay(1), { count: 2, behind: true }))
    expect(problems).toEqual([])
    expect(dataAt(data, bay(1))).toMatchObject({ drawers: { stack: 2, fronts: 'none' } })
    expect(dataAt(data, [...bay(1), 'loose shelves'])).toBeUndefined()
  })

  test('a front over bays with fronts of their own: those give way', () => {
    const { data, problems } = result(frontBay(dataOf(TEXT), INSIDE, 'pair'))
    expect(problems).toEqual([])
    expect(dataAt(data, [...bay(0), 'drawers'])).toEqual({ stack: 1, fronts: 'none' })
    expect(dataAt(data, [...bay(1), 'front'])).toBeUndefined()
    expect(dataAt(data, [...INSIDE, 'front'])).toEqual({ kind: 'pair' })
  })

  test('another kind of front keeps what has a meaning for it', () => {
    const flap = result(frontBay(dataOf(TEXT), bay(1), 'flap'))
    expect(flap.problems).toEqual([])
    expect(dataAt(flap.data, [...bay(1), 'front'])).toEqual({ kind: 'flap', pull: { item: 'pull 128' } })
    const fixed = result(frontBay(flap.data, bay(1), 'fixed'), flap.text)
    expect(fixed.problems).toEqual([])
    expect(dataAt(fixed.data, [...bay(1), 'front'])).toEqual({ kind: 'fixed' })
  })
})

/** What is done, with what is to be seen afterwards. */
interface Deed {
  readonly edits: readonly Edit[]
  readonly done: (bay: BayView | undefined) => boolean
}

type Choose = (data: Data, bay: BayView) => Deed | undefined

const FRONTS: readonly (FrontKind | undefined)[] = ['door', 'pair', 'flap', 'fixed', undefined]

const deeds: fc.Arbitrary<Choose> = fc.oneof(
  fc.tuple(fc.constantFrom('side by side' as const, 'stacked' as const), fc.integer({ min: 2, max: 3 })).map(
    ([direction, count]): Choose =>
      (data, { path, split }) =>
        split === undefined
          ? {
              edits: splitBay(data, path, direction, count),
              done: (bay) => bay?.split === direction && bay.bays.length === count,
            }
          : undefined,
  ),
  fc.constant<Choose>((data, { path, split }) =>
    split === undefined
      ? undefined
      : { edits: joinBays(data, path), done: (bay) => bay === undefined || bay.split === undefined },
  ),
  fc.constant<Choose>((_, { path, split, bays }) =>
    split === undefined
      ? undefined
      : { edits: addBay(path, split, 1), done: (bay) => bay?.bays.length === bays.length + 1 },
  ),
  fc.integer({ min: 0, max: 4 }).map(
    (count): Choose =>
      (data, { path, split }) =>
        split === undefined
          ? { edits: shelve(data, path, count), done: (bay) => (bay?.looseShelves ?? 0) === count }
          : undefined,
  ),
  fc.integer({ min: 0, max: 4 }).map(
    (count): Choose =>
      (data, { path, split, behind, front }) =>
        split === undefined
          ? {
              edits: fillWithDrawers(data, path, { count, behind: behind || front !== undefined }),
              done: (bay) => (bay?.drawers.length ?? 0) === count,
            }
          : undefined,
  ),
  fc.constantFrom(...FRONTS).map(
    (kind): Choose =>
      (data, { path, behind }) =>
        behind ? undefined : { edits: frontBay(data, path, kind), done: (bay) => bay?.front?.kind === kind },
  ),
)

const viewIn = (data: Data, module: string): BayView =>
  baysOf({ data, module, shell: assumedShell({ data, module, units: 'mm' }), units: 'mm' })

test('each action does what it says, and what cannot be is said of that inside alone', () => {
  fc.assert(
    fc.property(definitions, deeds, fc.nat(), fc.nat(), (text, choose, whichModule, whichBay) => {
      const data = dataOf(text)
      const modules = dataNames(data, 'modules')
      const module = modules[whichModule % modules.length] ?? ''
      const bays = allBays(viewIn(data, module))
      const target = bays[whichBay % bays.length]
      const deed = target && choose(data, target)
      if (target === undefined || deed === undefined) return
      const { data: next, problems } = changed(text, deed.edits)
      const found = allBays(viewIn(next, module)).find(
        ({ path }) => JSON.stringify(path) === JSON.stringify(target.path),
      )
      expect(deed.done(found)).toBe(true)
      const elsewhere = problems.filter(({ path = [] }) => path[1] !== module || !WITHIN.includes(path[2]))
      expect(elsewhere).toEqual([])
    }),
    { numRuns: 40 },
  )
})

/** Openings and lippings name panels that a change of the inside can take away; stretchers cannot run into partitions. */
const WITHIN: readonly unknown[] = ['inside', 'openings', 'lipping', 'carcase']

test('a bay that is taken out leaves the others as they are', () => {
  fc.assert(
    fc.property(definitions, fc.nat(), (text, which) => {
      const data = dataOf(text)
      for (const module of dataNames(data, 'modules')) {
        const splits = allBays(viewIn(data, module)).filter(({ split }) => split !== undefined)
        const split = splits[which % Math.max(1, splits.length)]
        const [first] = split?.bays ?? []
        if (split?.split === undefined || first === undefined) continue
        const { data: next } = changed(text, removeBay(data, first.path))
        const [, ...rest] = dataAt(data, [...split.path, split.split]) as readonly Data[]
        if (rest.length > 1) {
          expect(dataAt(next, [...split.path, split.split])).toEqual(rest)
        } else {
          const { size: _size, share: _share, ...contents } = rest[0] as Readonly<Record<string, Data>>
          expect(dataAt(next, split.path) ?? {}).toMatchObject(contents)
        }
      }
    }),
    { numRuns: 15 },
  )
})
