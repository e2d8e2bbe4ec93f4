import { describe, expect, it } from 'vitest'
import { sceneOf } from '../../../src/page/scene/index.ts'
import { look, wordsOf } from './cupboard.ts'
import { laidSample } from './laid.ts'

describe('the floor plan', () => {
  const scene = look({ kind: 'floor' })

  it('shows footprints from above, the back up, fronts marked', () => {
    expect(scene.parts.find(({ kind }) => kind === 'footprint')).toMatchObject({
      key: 'cupboard',
      module: 'cupboard',
      d: 'M0 0L600 0L600 -560L0 -560z',
    })
    expect(scene.parts.find(({ kind }) => kind === 'edge')?.d).toBe('M0 0L600 0')
    expect(wordsOf(scene, 'name')).toEqual(['cupboard'])
    expect(wordsOf(scene, 'size')).toContain('600')
  })

  it('shows the circles of swivel casters about their king pins', () => {
    // 85 from the edges of the footprint, swivel radius 75.
    const circles = scene.parts.filter(({ kind }) => kind === 'hardware').map(({ d }) => d)
    expect(circles).toHaveLength(4)
    expect(circles).toContain('M10 -85a75 75 0 1 0 150 0a75 75 0 1 0 -150 0z')
    expect(scene.snaps).toContainEqual({ at: [85, -85], place: [85, 85, 0], kind: 'centre' })
  })

  it('shows the bolts between modules, head and nut on one line', () => {
    const studio = laidSample('pottery-studio')
    const plan = sceneOf(studio, { kind: 'floor' })
    const bolts = studio.assembly.hardware.filter(({ item }) => item.kind === 'joining bolt')
    expect(plan.holes).toHaveLength(2 * bolts.length)
    expect(plan.operations.map(({ work }) => work)).toEqual(['bolts between modules', 'bolts between modules'])
    expect(wordsOf(plan, 'name')).toHaveLength(9)
    // The worktop over the row stands out before it: drawn over the footprints, and it is a panel.
    expect(plan.parts.some(({ kind, panel }) => kind === 'seen through' && panel === 'worktop-1/worktop')).toBe(true)
  })
})
