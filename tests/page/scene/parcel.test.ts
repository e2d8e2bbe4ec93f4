import { isDeepStrictEqual } from 'node:util'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { type LaidOut, layOutDefinition, layoutKeeper } from '../../../src/outputs/index.ts'
import { type Look, nearestLook, outlineKeeper, outlineOf, sceneOf } from '../../../src/page/scene/index.ts'
import { ScenePacker, type SceneParcel, SceneUnpacker } from '../../../src/page/scene/parcel.ts'
import type { ShapeColumns } from '../../../src/page/scene/parcel-standing.ts'
import { readDefinition } from '../../../src/project/index.ts'
import { chain, someEdits } from '../../support/random-edits.ts'
import { sampleFiles, sampleText } from '../../support/samples.ts'
import { workshopText } from '../../support/workshop.ts'
import { laidOut, laidSample } from './laid.ts'
import { looksOf } from './looks.ts'

const FILE = 'again.yaml'
const isRight = (text: string): boolean => readDefinition(text, FILE, sampleFiles).ok

/** Ways to look that hold at any definition once the nearest to each is taken; `share` picks a thing to look at. */
const anyLook = fc.record({ share: fc.double({ min: 0, max: 0.999, noNaN: true }), again: fc.boolean() })
const isometric: Look = { kind: 'isometric', apart: 0, turn: 0 }

/** Draws each definition as it follows the last one, and sends it; and draws it as if it were the first. */
function compare(texts: readonly string[], picks: readonly { share: number; again: boolean }[]): number {
  const [keeper, outlines] = [layoutKeeper(), outlineKeeper()]
  const [packer, unpacker] = [new ScenePacker(), new SceneUnpacker()]
  let look: Look | undefined = isometric
  let compared = 0
  texts.forEach((text, k) => {
    const again = keeper(text, FILE, sampleFiles)
    const afresh = layOutDefinition(text, FILE, sampleFiles)
    if (!again.ok || !afresh.ok) return
    const pick = picks[k % picks.length]
    if (pick?.again === false) {
      const all = looksOf(afresh.laid)
      look = all[Math.floor(pick.share * all.length)] ?? isometric
    }
    look = nearestLook(again.laid, look)
    if (look === undefined) return
    const sent = unpacker.unpack(structuredClone(packer.pack(sceneOf(again.laid, look))))
    const whole = sceneOf(afresh.laid, look)
    if (!isDeepStrictEqual(sent, whole)) expect({ text, look, sent }).toEqual({ text, look, sent: whole })
    expect(outlines(again.laid)).toEqual(outlineOf(afresh.laid))
    compared += 1
  })
  return compared
}

function shapesIn({ rest }: SceneParcel): ShapeColumns {
  if (rest.kind !== 'standing') throw new Error('no scene of standing panels')
  return rest.shapes.fresh
}

describe('a scene that is sent by what changed', () => {
  test('comes out as the one that is drawn afresh and sent whole, over chains of edits and looks', () => {
    const texts = fc.constantFrom(workshopText(4), sampleText('clay-cart'), sampleText('pottery-studio'))
    let compared = 0
    fc.assert(
      fc.property(texts, someEdits(3, 6), fc.array(anyLook, { minLength: 2, maxLength: 6 }), (text, edits, picks) => {
        compared += compare([text, ...chain(text, edits, isRight)], picks)
      }),
      { numRuns: 5 },
    )
    expect(compared).toBeGreaterThan(10)
  })

  test('and from one look to any other of the same definition', () => {
    const laid = laidSample('clay-cart')
    const [packer, unpacker] = [new ScenePacker(), new SceneUnpacker()]
    const looks = looksOf(laid)
    fc.assert(
      fc.property(fc.nat(looks.length - 1), (k) => {
        const look = looks[k] ?? isometric
        const sent = unpacker.unpack(structuredClone(packer.pack(sceneOf(laid, look))))
        expect(sent).toEqual(sceneOf(laid, look))
      }),
    )
  })

  test('holds nothing that was there before: neither where nothing changed, nor of what stands as it stood', () => {
    const keeper = layoutKeeper()
    const packer = new ScenePacker()
    const text = workshopText(3)
    const packed = (words: string, before = 'width: 700') => {
      const opened = keeper(text.replace(before, words), FILE)
      if (!opened.ok) throw new Error('the workshop cannot be laid out')
      return packer.pack(sceneOf(opened.laid, isometric))
    }
    const first = packed('width: 700')
    expect(first.parts.fresh.length).toBe(first.parts.runs[2])
    const second = packed('width: 700')
    expect([second.parts.fresh, shapesIn(second).panels, second.framed]).toEqual([[], [], undefined])
    // Cabinet 3 is the last of its row, so that the panels of cabinet 1 stay where they are, and behind the same.
    const third = packed('width: 710')
    expect(third.parts.fresh.length).toBeGreaterThan(0)
    expect(third.parts.fresh.filter(({ panel }) => panel?.startsWith('cabinet-1/'))).toEqual([])
    expect(shapesIn(third).panels.filter((panel) => panel === 'cabinet-1/left-side')).toEqual([])
    packed('width: 700')
    // Cabinet 3 is moved by cabinet 1, which changes no hole of it: it stands to cabinet 2, to which it is bolted, as it did.
    const moved = shapesIn(packed('width: 510', 'width: 500')).panels
    expect(moved.length).toBeGreaterThan(0)
    expect(moved.filter((panel) => panel.startsWith('cabinet-3/'))).toEqual([])
  })

  test('may not miss one that went before', () => {
    const laid = laidOut(workshopText(2))
    const packer = new ScenePacker()
    packer.pack(sceneOf(laid, isometric))
    const second = packer.pack(sceneOf(laid, isometric))
    expect(() => new SceneUnpacker().unpack(second)).toThrow('does not follow the last one')
  })
})

describe('an outline', () => {
  test('that says the same is the very same thing, and so is each module of one that does not', () => {
    const [keeper, outlines] = [layoutKeeper(), outlineKeeper()]
    const outlined = (text: string): LaidOut => {
      const opened = keeper(text, FILE)
      if (!opened.ok) throw new Error('the workshop cannot be laid out')
      return opened.laid
    }
    const text = workshopText(3).replace('width: 700', 'width: 710')
    const first = outlines(outlined(text))
    expect(outlines(outlined(text.replace('width: 710', 'width: 711')))).toBe(first)
    const other = outlines(outlined(text.replace(/loose shelves: 3(?![\s\S]*loose shelves: 3)/, 'loose shelves: 2')))
    expect(other).not.toBe(first)
    expect(other.modules[0]).toBe(first.modules[0])
  })

  test('knows the mates of a panel as they follow from all hardware there is', () => {
    const laid = laidSample('pottery-studio')
    for (const { panels } of outlineOf(laid).modules) {
      for (const { id, mates } of panels) {
        const shared = laid.assembly.hardware.filter(({ stations }) => stations.some(({ panel }) => panel === id))
        const others = shared.flatMap(({ stations }) => stations.map(({ panel }) => panel))
        expect([...mates].sort()).toEqual([...new Set(others)].filter((other) => other !== id).sort())
      }
    }
  })
})
