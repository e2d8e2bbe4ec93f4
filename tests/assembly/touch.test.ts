import { describe, expect, test } from 'vitest'
import type { PlacedHardware } from '../../src/assembly/index.ts'
import { ownBox } from '../../src/assembly/index.ts'
import { type Box, compose, type Pose, place, placedBox } from '../../src/geometry/index.ts'
import type { Built } from '../../src/outputs/index.ts'
import { built } from '../support/define.ts'
import { anyDefinition } from '../support/random.ts'
import { builtSample, sampleStems } from '../support/samples.ts'
import { expectFaultless } from '../support/sought.ts'

const TIGHT = 1e-6
const AXES = [0, 1, 2] as const

/** What holds one board directly against another; hinges, slides, pins and stays keep a distance. */
const JOINS = ['through screw', 'one-piece screw', 'dowel', 'pocket screw', 'cam fitting', 'joining bolt']

/** The box of every panel on the floor, through its own poses alone. */
function floorBoxes(of: Built): Map<string, Box> {
  return new Map(
    of.assembly.modules.flatMap((module) =>
      module.panels.map((panel): [string, Box] => [
        panel.id,
        placedBox(compose(module.floorFromModule, panel.moduleFromPanel), ownBox(panel)),
      ]),
    ),
  )
}

function frameOf(of: Built, piece: PlacedHardware): Pose | undefined {
  return of.assembly.modules.find((module) => module.key === piece.frame)?.floorFromModule
}

/** What is wrong with how a piece joins its boards: they do not touch, or it does not stand where they do. */
function faultOf(of: Built, boxes: ReadonlyMap<string, Box>, piece: PlacedHardware): string | undefined {
  const panels = [...new Set(piece.stations.map((station) => station.panel))]
  const [a, b] = panels.map((id) => boxes.get(id))
  if (panels.length !== 2 || a === undefined || b === undefined) return `${piece.id} joins ${panels.join(', ')}`
  const apart = Math.max(...AXES.map((axis) => Math.max(a.min[axis], b.min[axis]) - Math.min(a.max[axis], b.max[axis])))
  if (apart > TIGHT) return `${piece.id}: ${panels.join(' and ')} are ${apart} mm apart`
  const shared = AXES.filter((axis) => Math.min(a.max[axis], b.max[axis]) - Math.max(a.min[axis], b.min[axis]) > TIGHT)
  if (shared.length < 2) return `${piece.id}: ${panels.join(' and ')} touch along a line only`
  // The tip of a joint stands on both boards: the last station of a pocket screw, the first of all others.
  const station = piece.item.kind === 'pocket screw' ? piece.stations.at(-1) : piece.stations[0]
  const frame = frameOf(of, piece)
  const origin = station?.pose.origin ?? [0, 0, 0]
  const at = frame === undefined ? origin : place(frame, origin)
  const off = Math.max(
    ...[a, b].flatMap((box) => AXES.map((axis) => Math.max(box.min[axis] - at[axis], at[axis] - box.max[axis]))),
  )
  return off > TIGHT ? `${piece.id} stands ${off} mm off ${panels.join(' and ')}` : undefined
}

/** Faults of all joins, and the number of them. */
function faultsOf(of: Built): { readonly faults: readonly string[]; readonly joins: number } {
  const boxes = floorBoxes(of)
  const pieces = of.assembly.hardware.filter((piece) => JOINS.includes(piece.item.kind))
  return { faults: pieces.flatMap((piece) => faultOf(of, boxes, piece) ?? []), joins: pieces.length }
}

/** A worktop that is asked to be laid on without screws, of a module or of its own. */
function laidLoose({ project }: Built, key: string): boolean {
  const module = project.modules.find((one) => one.key === key)
  const row = project.rows.find(({ worktop }) => worktop?.key === key)
  const top = module?.machineTop ?? module?.worktop ?? row?.worktop
  return top !== undefined && top.fix === undefined
}

/** Panels that nothing holds: no hardware with another panel, and no groove or rebate that they stand in. */
function loose(of: Built): string[] {
  const held = new Set(
    of.assembly.hardware.flatMap((piece) => {
      const panels = new Set(piece.stations.map((station) => station.panel))
      return panels.size > 1 || piece.item.kind !== 'pull' ? [...panels] : []
    }),
  )
  const boxes = new Map(
    of.assembly.modules.flatMap(({ panels }) =>
      panels.map((panel): [string, Box] => [panel.id, placedBox(panel.moduleFromPanel, ownBox(panel))]),
    ),
  )
  const meet = (a: Box | undefined, b: Box): boolean =>
    a !== undefined && AXES.every((axis) => Math.min(a.max[axis], b.max[axis]) - Math.max(a.min[axis], b.min[axis]) > 0)
  // It stands in a groove of another panel, or another stands in a groove of its own.
  const standsIn = (id: string, { cuts, panels }: Built['assembly']['modules'][number]): boolean =>
    cuts.some((cut) =>
      cut.panel === id
        ? panels.some((other) => other.id !== id && meet(boxes.get(other.id), cut.box))
        : meet(boxes.get(id), cut.box),
    )
  return of.assembly.modules.flatMap((module) =>
    module.panels
      .filter((panel) => panel.role !== 'loose shelf' && !held.has(panel.id) && !standsIn(panel.id, module))
      .filter((panel) => !laidLoose(of, panel.module))
      .map((panel) => panel.id),
  )
}

describe('the exploded view: each panel touches those that it is joined to', () => {
  test.each(sampleStems)('%s', (stem) => {
    const of = builtSample(stem)
    const { faults, joins } = faultsOf(of)
    expect(faults).toEqual([])
    expect(joins).toBeGreaterThan(40)
    expect(loose(of)).toEqual([])
  })

  test('over random projects', () => {
    let joins = 0
    expectFaultless(
      anyDefinition,
      (text) => {
        const of = built(text)
        const found = faultsOf(of)
        joins += found.joins
        // What a stop has kept from being placed holds nothing.
        const stops = of.findings.filter(({ severity }) => severity === 'stop')
        const named = (id: string): boolean =>
          stops.some(({ panels, at }) => panels.includes(id) || (panels.length === 0 && at[0] === 'modules'))
        return [...found.faults, ...loose(of).filter((id) => !named(id))]
      },
      { numRuns: 100 },
    )
    expect(joins).toBeGreaterThan(1000)
  })

  test('a gap is seen', () => {
    const of = built(`storyrod: 1
stock: { board: { thickness: 18 } }
modules: { box: { width: 600, depth: 400, carcase height: 500, stock: board } }
`)
    const [module] = of.assembly.modules
    if (module === undefined) throw new Error('no module')
    const moved = module.panels.map((panel) =>
      panel.role === 'left side'
        ? { ...panel, moduleFromPanel: { ...panel.moduleFromPanel, origin: [17.5, 0, 500] as const } }
        : panel,
    )
    const { faults } = faultsOf({ ...of, assembly: { ...of.assembly, modules: [{ ...module, panels: moved }] } })
    expect(faults[0]).toMatch(/apart|off/)
  })
})
