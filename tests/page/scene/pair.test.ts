import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { LaidOut } from '../../../src/outputs/index.ts'
import { sceneOf } from '../../../src/page/scene/index.ts'
import { anyDefinition } from '../../support/random.ts'
import { sampleStems } from '../../support/samples.ts'
import { cupboard, hole, look, wordsOf } from './cupboard.ts'
import { laidOut, laidSample } from './laid.ts'
import { pairsOf } from './looks.ts'

/** Mates that share an axis but do not lie at one height across the fold. */
function crooked(laid: LaidOut): string[] {
  const ends = new Map<string, string>()
  for (const panel of laid.panels) {
    for (const bore of panel.bores) {
      for (const { hardware, part, drilling } of bore.uses)
        ends.set(`${panel.id} ${hardware} ${part} ${drilling}`, bore.id)
    }
  }
  return pairsOf(laid).flatMap(([p, q]) => {
    const scene = sceneOf(laid, { kind: 'pair', panels: [p, q] })
    const holes = new Map(scene.holes.map((one) => [one.id, one]))
    return laid.assembly.hardware.flatMap(({ id: piece, item, stations }) => {
      if (![p, q].every((panel) => stations.some((one) => one.panel === panel))) return []
      return item.mates.flatMap((mate) => {
        if (mate.relation !== 'coaxial') return []
        const of = (panel: string, [part, drilling]: readonly [string, string]) =>
          holes.get(`${panel}#${ends.get(`${panel} ${piece} ${part} ${drilling}`)}`)
        return [
          [of(p, mate.a), of(q, mate.b)],
          [of(p, mate.b), of(q, mate.a)],
        ].flatMap(([a, b]) => {
          if (a === undefined || b === undefined || Math.abs(a.at[1] - b.at[1]) < 1e-6) return []
          return [`${a.id} at ${a.at}, ${b.id} at ${b.at}`]
        })
      })
    })
  })
}

describe('a facing pair', () => {
  it('lays two sides like a book: left stays left, the backs at the fold, mirrored', () => {
    const scene = look({ kind: 'pair', panels: ['cupboard/right-side', 'cupboard/left-side'] })
    const [left, right] = [hole(scene, 'left-side#bore-2'), hole(scene, 'right-side#bore-21')]
    // Both pins 37 from the front, 416 over the underside.
    expect(left.at[1]).toBe(right.at[1])
    expect(left.at[0]).toBe(-right.at[0])
    expect(left.at[0]).toBeLessThan(0)
    // From the fold: half of the room in it, and 534 − 37.
    const edge = scene.frames['cupboard/left-side']
    expect(edge && left.at[0] - (edge[1] * 534 + edge[3])).toBeCloseTo(-(534 - 37), 9)
    expect(scene.facts[2]).toEqual(['laid', 'opened like a book, the back edges at the fold'])
    expect(wordsOf(scene, 'name')).toEqual(['left side, inside', 'right side, inside'])
    expect(left.hidden || right.hidden).toBe(false)
  })

  it('puts a door beside the side that it hangs on, hinge edge and front edge at the fold', () => {
    const scene = look({ kind: 'pair', panels: ['cupboard/left-side', 'cupboard/door'] })
    // Seen from inside the hinge edge, at the left in the module, is at the right.
    expect(scene.facts[2]).toEqual([
      'laid',
      'opened like a book, the left edge of the door and the front edge of the left side at the fold',
    ])
    // The middle of the plate's two holes, 702 − 254 and 702 − 286 over the underside, is at the height of the cup, 1.5 + 430.5.
    const plate = (hole(scene, 'left-side#bore-1').at[1] + hole(scene, 'left-side#bore-2').at[1]) / 2
    expect(plate).toBeCloseTo(hole(scene, 'door#bore-5').at[1], 9)
  })

  it('shows the faces that meet: a side on its inside, a top on its underside', () => {
    const scene = look({ kind: 'pair', panels: ['cupboard/top', 'cupboard/left-side'] })
    expect(wordsOf(scene, 'name')).toEqual(['left side, inside', 'top, inside'])
    // The screws of the top into the side: 50 from the front on both.
    expect(hole(scene, 'top#bore-5').at[1]).toBe(hole(scene, 'left-side#bore-33').at[1])
  })

  it('gives each panel corners of its own', () => {
    const scene = look({ kind: 'pair', panels: ['cupboard/left-side', 'cupboard/right-side'] })
    expect(scene.snaps.map(({ of }) => of)).toEqual([
      ...Array.from({ length: 4 }, () => 'cupboard/left-side'),
      ...Array.from({ length: 4 }, () => 'cupboard/right-side'),
    ])
  })

  it('has all mates at one height, in the samples', () => {
    expect(crooked(cupboard)).toEqual([])
    for (const stem of sampleStems) expect(crooked(laidSample(stem))).toEqual([])
  })

  it('and in any definition', () => {
    fc.assert(
      fc.property(anyDefinition, (text) => {
        expect(crooked(laidOut(text))).toEqual([])
      }),
      { numRuns: 4 },
    )
  })
})
