import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { LaidOut } from '../../../src/outputs/index.ts'
import { type Scene, sceneOf } from '../../../src/page/scene/index.ts'
import { seen } from '../../../src/page/scene/plane.ts'
import type { Bore } from '../../../src/panel/index.ts'
import { anyDefinition } from '../../support/random.ts'
import { sampleStems } from '../../support/samples.ts'
import { laidOut, laidSample } from './laid.ts'
import { looksOf } from './looks.ts'

/** What is wrong with a scene, in words; nothing where all is well. */
function faultsOf(laid: LaidOut, scene: Scene): string[] {
  const faults: string[] = []
  const where = JSON.stringify(scene.look)
  const fault = (words: string): void => void faults.push(`${words} (${where})`)
  const panels = new Map(laid.panels.map((panel) => [panel.id, panel]))
  const { min, max } = scene.bounds
  const isInside = ([x, y]: readonly [number, number]): boolean =>
    x >= min[0] && x <= max[0] && y >= min[1] && y <= max[1]
  const operations = new Set(scene.operations.map(({ id }) => id))

  for (const hole of scene.holes) {
    const [id, boreId] = hole.id.split('#')
    const bore = panels.get(id ?? '')?.bores.find((one) => one.id === boreId)
    const frame = scene.frames[hole.panel]
    if (id !== hole.panel || bore === undefined || frame === undefined) fault(`${hole.id}: no such hole, or no frame`)
    else if (!isAtEnd(hole.at, frame, bore)) fault(`${hole.id}: drawn at ${hole.at}, bored at ${seen(frame, bore.at)}`)
    if (!isInside(hole.at)) fault(`${hole.id}: out of bounds`)
    if (!operations.has(hole.operation)) fault(`${hole.id}: no operation ${hole.operation}`)
    if (/NaN|Infinity|e-/.test(hole.d) || hole.d === '') fault(`${hole.id}: d is ${hole.d}`)
  }
  for (const part of scene.parts) {
    if (/NaN|Infinity|e-/.test(part.d) || part.d === '') fault(`${part.key}: d is ${part.d}`)
    if (part.operation !== undefined && !operations.has(part.operation)) fault(`${part.key}: no operation`)
    if (part.panel !== undefined && !panels.has(part.panel)) fault(`${part.key}: no panel ${part.panel}`)
  }
  for (const { at, place } of [...scene.snaps, ...scene.edges.flatMap(({ from, to }) => [from, to])]) {
    if (!isInside(at)) fault(`a snap at ${at} is out of bounds`)
    if (![...at, ...place].every(Number.isFinite)) fault(`a snap at ${at}, ${place}`)
  }
  for (const { key, at } of scene.words) if (!isInside(at)) fault(`the words ${key} are out of bounds`)
  for (const list of [scene.parts, scene.words]) {
    const keys = list.map(({ key }) => key)
    if (new Set(keys).size < keys.length)
      fault(`keys that are not unique: ${keys.filter((key, k) => keys.indexOf(key) < k)}`)
  }
  const holes = scene.holes.map(({ id }) => id)
  if (new Set(holes).size < holes.length) fault('holes that are drawn twice')
  const counted = scene.operations.reduce((sum, { id, count }) => sum + (id.startsWith('bore') ? count : 0), 0)
  if (counted !== holes.length) fault(`${counted} holes counted, ${holes.length} drawn`)
  return faults
}

/** Where the bit enters, or where a through hole comes out; mm. */
function isAtEnd(at: readonly [number, number], frame: Scene['frames'][string], bore: Bore): boolean {
  const [x, y, z] = bore.at
  const far = [x + bore.axis[0] * bore.depth, y + bore.axis[1] * bore.depth, z + bore.axis[2] * bore.depth] as const
  const ends = bore.through ? [bore.at, far] : [bore.at]
  return ends.some((end) => {
    const place = seen(frame, end)
    return Math.hypot(place[0] - at[0], place[1] - at[1]) < 1e-6
  })
}

describe('every look', () => {
  it.each(sampleStems)('at %s lies where its frames say, within its bounds', (stem) => {
    const laid = laidSample(stem)
    expect(looksOf(laid).flatMap((look) => faultsOf(laid, sceneOf(laid, look)))).toEqual([])
  })

  it('at any definition does, too', () => {
    fc.assert(
      fc.property(anyDefinition, (text) => {
        const laid = laidOut(text)
        expect(looksOf(laid).flatMap((look) => faultsOf(laid, sceneOf(laid, look)))).toEqual([])
      }),
      { numRuns: 6 },
    )
  })

  it('shows every bore of what it shows from the side of the panel, and in the isometric view', () => {
    const laid = laidSample('pottery-studio')
    const all = laid.panels.flatMap((panel) => panel.bores.map((bore) => `${panel.id}#${bore.id}`)).sort()
    const isometric = sceneOf(laid, { kind: 'isometric', apart: 0, turn: 0 })
    expect(isometric.holes.map(({ id }) => id).sort()).toEqual(all)
    const faces = laid.panels.flatMap((panel) => sceneOf(laid, { kind: 'face', panel: panel.id, face: 'A' }).holes)
    expect(faces.map(({ id }) => id).sort()).toEqual(all)
  })

  it('is the same each time, in either unit but for its words', () => {
    const laid = laidSample('kiln-carts')
    for (const look of looksOf(laid)) {
      const { words, title, facts, operations, parts, textSize, bounds, ...rest } = sceneOf(laid, look, 'in')
      const metric = sceneOf(laid, look, 'mm')
      expect(sceneOf(laid, look, 'mm')).toEqual(metric)
      expect(metric).toMatchObject(rest)
      expect(operations.map(({ id }) => id)).toEqual(metric.operations.map(({ id }) => id))
    }
  })
})
