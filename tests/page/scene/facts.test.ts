import { describe, expect, it } from 'vitest'
import { catalogue } from '../../../src/hardware/index.ts'
import { factsOf, nearestLook, outlineOf, sceneOf } from '../../../src/page/scene/index.ts'
import { WORK_OF } from '../../../src/page/scene/operations.ts'
import { drawer } from '../../../src/page/workers/drawer.ts'
import { built, ROUND_STOCK } from '../../support/define.ts'
import { sampleStems } from '../../support/samples.ts'
import { cupboard, look } from './cupboard.ts'
import { laidSample, panelIn } from './laid.ts'

describe('the facts of a hole', () => {
  it('are what it is for, its bit, and where it lies, in both units', () => {
    // 286 from the top edge of a side that is 702 long: 416 from the bottom. 37 mm are 93.23 sixty-fourths: 1 29/64 in is 36.909,
    // 0.091 less; 416 mm are 1048.19: 16 3/8 in is 415.925, 0.075 less. 5 and 13 mm are no fractions of an inch.
    expect(factsOf(cupboard, 'cupboard/left-side#bore-2')).toMatchObject({
      panel: 'cupboard/left-side',
      panelName: 'cupboard: left side',
      surface: 'face A, inside',
      purposes: ['shelf pin', 'hinge plate'],
      tool: { mm: '5 deep 13', inch: '5 mm deep 13 mm' },
      from: [
        { edge: 'front', mm: '37 mm', inch: '1 29/64 in + 0.1 mm' },
        { edge: 'bottom', mm: '416 mm', inch: '16 3/8 in + 0.1 mm' },
      ],
    })
  })

  it('name its partners in other panels, and the look that shows both', () => {
    const { partners, hardware } = factsOf(cupboard, 'cupboard/left-side#bore-2') ?? { partners: [], hardware: [] }
    // The pin across is on its axis; the cup of the hinge, 14.5 nearer the hinge edge, and its screws only belong to the plate.
    expect(partners.map(({ relation, id, words }) => [relation, id, words.mm])).toEqual([
      ['mate', 'cupboard/right-side#bore-21', '5 deep 13, 37 from front, 416 from bottom'],
      ['same hardware', 'cupboard/door#bore-4', '8 deep 11, 32 from left, 408 from bottom'],
      ['same hardware', 'cupboard/door#bore-5', '35 deep 12.5, 22.5 from left, 430.5 from bottom'],
      ['same hardware', 'cupboard/door#bore-6', '8 deep 11, 32 from left, 453 from bottom'],
    ])
    expect(partners[0]?.look).toEqual({ kind: 'pair', panels: ['cupboard/left-side', 'cupboard/right-side'] })
    expect(hardware).toHaveLength(2)
  })

  it('call mate what is on the same axis: of a pull with two holes the one before it, of slides the screw across', () => {
    const studio = laidSample('pottery-studio')
    const relations = (id: string) =>
      (factsOf(studio, id)?.partners ?? []).map((one) => [one.relation, one.panel, one.words.mm])
    // The pull's holes lie 120 apart in the front and in the box front: one of those is before each, the other beside it.
    const pulls = relations('glaze-store/drawer-1-front#bore-3')
    expect(pulls.map(([relation]) => relation)).toEqual(['mate', 'same hardware'])
    // Three screws in either member, of which only the first ones are across from each other.
    const slides = studio.assembly.hardware.filter(({ item }) => item.kind === 'drawer slide')
    const boxes = new Set(slides.flatMap(({ stations }) => stations.map(({ panel }) => panel)))
    const counts = [...boxes].flatMap((id) =>
      panelIn(studio, id)
        .bores.filter(({ uses }) => uses.some(({ part, drilling }) => part === 'box' && drilling === 'screw-1'))
        .map((bore) => relations(`${id}#${bore.id}`).filter(([relation]) => relation === 'mate').length),
    )
    expect(new Set(counts)).toEqual(new Set([1]))
  })

  it('of a hole in an edge count from face A and along the edge', () => {
    expect(factsOf(cupboard, 'cupboard/left-side#bore-34')).toMatchObject({
      surface: 'top edge',
      from: [
        { edge: 'face A', mm: '9 mm' },
        { edge: 'front', mm: '194.67 mm' },
      ],
    })
  })

  it('are there for every hole, partners going both ways', () => {
    for (const stem of sampleStems) {
      const laid = laidSample(stem)
      const all = laid.panels.flatMap((panel) => panel.bores.map((bore) => `${panel.id}#${bore.id}`))
      const partners = new Map(
        all.map((id) => [id, factsOf(laid, id)?.partners.map((one) => `${one.relation} ${one.id}`) ?? []]),
      )
      const oneWay = all.flatMap((id) =>
        (partners.get(id) ?? []).filter((other) => {
          const [, relation = '', there = ''] = /^(mate|same hardware) (.*)$/.exec(other) ?? []
          return partners.get(there)?.includes(`${relation} ${id}`) !== true
        }),
      )
      expect(oneWay).toEqual([])
    }
  })

  it('are nothing for a hole that there is not', () => {
    for (const id of ['cupboard/left-side#bore-99', 'cupboard/lid#bore-1', 'nonsense', ''])
      expect(factsOf(cupboard, id)).toBeUndefined()
  })

  it('come from the worker, for the last text that could be laid out', () => {
    const answer = drawer()
    const text = `${ROUND_STOCK}
modules: { box: { width: 600, depth: 400, carcase height: 500, stock: board, inside: { loose shelves: 1 } } }`
    const source = { text, file: 'box.yaml', files: [] }
    expect(answer({ kind: 'hole', number: 1, hole: 'box/left-side#bore-1' })).toEqual({
      kind: 'hole',
      number: 1,
      facts: undefined,
    })
    answer({ kind: 'text', number: 2, source, look: undefined, units: undefined })
    answer({
      kind: 'text',
      number: 3,
      source: { ...source, text: 'modules: nonsense' },
      look: undefined,
      units: undefined,
    })
    expect(answer({ kind: 'hole', number: 4, hole: 'box/left-side#bore-1' })).toMatchObject({
      kind: 'hole',
      number: 4,
      facts: { panelName: 'box: left side' },
    })
  })
})

describe('operations', () => {
  it('know the work of every item of the catalogue, and of every bore of the samples', () => {
    expect(catalogue.filter(({ kind }) => WORK_OF[kind] === undefined)).toEqual([])
    for (const stem of sampleStems) {
      const { operations } = sceneOf(laidSample(stem), { kind: 'isometric', apart: 0, turn: 0 })
      expect(new Set(operations.map(({ id }) => id)).size).toBe(operations.length)
      expect(operations.filter(({ purposes, count }) => purposes.length === 0 || count === 0)).toEqual([])
    }
  })

  it('are one a bit, depth and kind of work; a plate in a row of pins leaves the row whole', () => {
    const { operations } = look({ kind: 'face', panel: 'cupboard/left-side', face: 'A' })
    // Rows of eleven pins each; plates at 254 and 638 from the top beside them, 286 and 606 in the front row.
    expect(operations.map(({ id, words, count, work }) => [id, words, count, work])).toEqual([
      ['bore 5 13 shelf pins', '5 deep 13', 22, 'shelf pins'],
      ['bore 5 13 hinges', '5 deep 13', 2, 'hinges'],
      ['bore 2.5 20 in edges joints', '2.5 deep 20 in edges', 6, 'joints'],
      ['bore 5 35 in edges joints', '5 deep 35 in edges', 4, 'joints'],
      ['bore 7 through counterbore 10 5 joints', '7 through, counterbored 10 deep 5', 8, 'joints'],
    ])
    expect(operations[0]?.purposes).toEqual(['shelf pin', 'hinge plate'])
  })
})

describe('what there is to look at', () => {
  it('names for each panel those that it shares hardware with, most first', () => {
    const [module] = outlineOf(cupboard).modules
    const mates = (id: string) => module?.panels.find((panel) => panel.id === `cupboard/${id}`)?.mates
    // With the right side it shares 11 levels of pins in two rows, with the back 6 screws, with the shelf, the bottom and the top 4
    // each, with the door two hinges.
    expect(mates('left-side')).toEqual([
      'cupboard/right-side',
      'cupboard/back',
      'cupboard/bottom',
      'cupboard/fixed-shelf-1',
      'cupboard/top',
      'cupboard/door',
    ])
    expect(mates('shelf-1')).toEqual([])
  })

  it('is first all of it, and stays what it was while that is there', () => {
    expect(nearestLook(cupboard, undefined)).toEqual({ kind: 'isometric', apart: 0, turn: 0 })
    const looks = [
      { kind: 'face', panel: 'cupboard/door', face: 'B' },
      { kind: 'pair', panels: ['cupboard/left-side', 'cupboard/top'] },
      { kind: 'front', module: 'cupboard', doors: 'open' },
      { kind: 'floor' },
      { kind: 'isometric', module: 'cupboard', apart: 0.5, turn: 2 },
    ] as const
    for (const one of looks) expect(nearestLook(cupboard, one)).toBe(one)
  })

  it('is the nearest where something went or was renamed', () => {
    const face = (panel: string) => nearestLook(cupboard, { kind: 'face', panel, face: 'B' })
    expect(face('cupboard/shelf-9')).toEqual({ kind: 'face', panel: 'cupboard/left-side', face: 'B' })
    expect(face('old-name/door')).toEqual({ kind: 'face', panel: 'cupboard/door', face: 'B' })
    expect(face('old-name/nothing')).toEqual({ kind: 'face', panel: 'cupboard/left-side', face: 'B' })
    expect(nearestLook(cupboard, { kind: 'pair', panels: ['cupboard/shelf-1', 'cupboard/left-side'] })).toEqual({
      kind: 'face',
      panel: 'cupboard/shelf-1',
      face: 'A',
    })
    expect(nearestLook(cupboard, { kind: 'front', module: 'old-name', doors: 'off' })).toEqual({
      kind: 'front',
      module: 'cupboard',
      doors: 'off',
    })
    expect(nearestLook(cupboard, { kind: 'isometric', module: 'old-name', apart: 1, turn: 3 })).toEqual({
      kind: 'isometric',
      apart: 1,
      turn: 3,
    })
  })

  it('throws for a look at nothing', () => {
    expect(() => look({ kind: 'face', panel: 'cupboard/lid', face: 'A' })).toThrow(
      'nothing to see: no panel cupboard/lid',
    )
    expect(() => look({ kind: 'isometric', module: 'shed', apart: 0, turn: 0 })).toThrow(
      'nothing to see: no module shed',
    )
    expect(
      built(`${ROUND_STOCK}
modules: { a: { width: 500, depth: 400, carcase height: 500, stock: board } }`).panels.length,
    ).toBeGreaterThan(3)
  })
})
