import { describe, expect, it } from 'vitest'
import { placeBack } from '../../../src/geometry/index.ts'
import { sceneOf } from '../../../src/page/scene/index.ts'
import { MOST_HOLES } from '../../../src/page/scene/isometric.ts'
import { seen } from '../../../src/page/scene/plane.ts'
import { workshopText } from '../../support/workshop.ts'
import { cupboard, hole, look, rounded } from './cupboard.ts'
import { laidOut, laidSample } from './laid.ts'

const COS30 = Math.sqrt(3) / 2
const at = (turn: 0 | 1 | 2 | 3, apart = 0) => look({ kind: 'isometric', module: 'cupboard', apart, turn })

describe('the isometric view', () => {
  it('draws x to the right and up, y to the left and up, z up, all true', () => {
    // The top's first hole: 9 from the right end and 50 from the front: x 591, y 20 + 50, upper face at 720, 100 over the floor.
    const scene = at(0)
    const one = hole(scene, 'top#bore-1')
    expect(one.place).toEqual([591, 70, 820])
    expect(rounded(one.at)).toEqual(rounded([(591 - 70) * COS30, -((591 + 70) / 2 + 820)]))
    expect(one.hidden).toBe(false)
    // 7 wide: half axes 3.5 × √1.5 and 3.5 × √0.5; counterbored to 10: 5 × √1.5 and 5 × √0.5.
    expect(one.d).toContain('a4.287 2.475 0 1 0')
    expect(one.d).toContain('a6.124 3.536 0 1 0')
  })

  it('is walked round to the right', () => {
    // From the front right, y runs to the right and up, x to the left and up, from its end: (x, y) is where (y, −x) was.
    expect(rounded(hole(at(1), 'top#bore-1').at)).toEqual(rounded([(70 + 591) * COS30, -((70 - 591) / 2 + 820)]))
    expect(rounded(hole(at(2), 'top#bore-1').at)).toEqual(rounded([(-591 + 70) * COS30, -((-591 - 70) / 2 + 820)]))
    expect(rounded(hole(at(3), 'top#bore-1').at)).toEqual(rounded([(-70 - 591) * COS30, -((-70 + 591) / 2 + 820)]))
  })

  it('hides what lies on sides that look away, or behind other boards', () => {
    // A pin inside the left side: from the front left its face looks away.
    expect(hole(at(0), 'left-side#bore-3').hidden).toBe(true)
    // From the front right it looks here, but the right side stands before it; taken far apart nothing does.
    expect(hole(at(1), 'left-side#bore-3').hidden).toBe(true)
    // The counterbored holes of the left side enter from outside: seen from the left, and no more from the right.
    expect(hole(at(0), 'left-side#bore-25').hidden).toBe(false)
  })

  it('draws a through hole where it is seen to come out', () => {
    // From the front right one sees the inside of the left side, where the screws at its bottom come out: x 18 in place of 0.
    // Along the panel 693 from the top edge: z = 702 − 693 + 100; 50 from its front: y = 70.
    const one = hole(at(1), 'left-side#bore-29')
    expect(rounded(one.place)).toEqual([18, 70, 109])
    expect(one.d).not.toContain('a6.124')
  })

  it('takes all boards apart from the middle, each at its own distance', () => {
    // All that is drawn: x 0..600, y 0..560, z 100..820; its middle 300, 280, 460. The middle of the left side: 9, 287, 451. At
    // `apart` 1 boards stand 0.75 times as far again from the middle: −218.25, 5.25, −6.75 further.
    const [whole, apart] = [at(0), at(0, 1)]
    const move = [(-218.25 - 5.25) * COS30, -((-218.25 + 5.25) / 2 - 6.75)]
    const id = 'left-side#bore-25'
    const [a, b] = [hole(whole, id).at, hole(apart, id).at]
    expect(rounded([b[0] - a[0], b[1] - a[1]])).toEqual(rounded(move))
    // What is measured stays where it is.
    expect(hole(apart, id).place).toEqual(hole(whole, id).place)
  })

  it('paints every panel, and says for each where its frame lies', () => {
    const scene = at(0)
    expect(
      scene.parts.flatMap(({ panel, operation }) => (operation === undefined ? (panel ?? []) : [])).sort(),
    ).toEqual(cupboard.panels.map(({ id }) => id).sort())
    // The corner of the left side at its top, front, inside: panel (0, 0, 0), module (18, 20, 702).
    const frame = scene.frames['cupboard/left-side']
    expect(frame && rounded(seen(frame, [0, 0, 0]))).toEqual(rounded([(18 - 20) * COS30, -((18 + 20) / 2 + 802)]))
  })

  it('has the corners that one sees to measure from, in their places however far apart', () => {
    for (const scene of [at(0), at(0, 1)]) {
      // The fixed shelf: x 18..582, y 20..554, z 484..502 and 100 above the floor; the corner behind is right, rear, low.
      const corners = scene.snaps.map(({ place }) => place.join(' '))
      expect(corners).toContain('18 20 602')
      expect(corners).toContain('582 554 602')
      expect(corners).not.toContain('582 554 584')
    }
    // Seven corners and nine edges of each board that one sees three sides of.
    expect(at(0).snaps).toHaveLength(7 * cupboard.panels.length)
    expect(at(0).edges).toHaveLength(9 * cupboard.panels.length)
  })

  it('shows a module alone from its own front, however it stands on the floor; what is measured stays the same', () => {
    const studio = laidSample('pottery-studio')
    for (const key of ['mould-store', 'ware-trolley', 'glaze-store']) {
      const module = studio.assembly.modules.find((one) => one.key === key)
      const left = studio.panels.find(({ id }) => id === `${key}/left-side`)
      if (module === undefined || left === undefined) throw new Error(`no ${key}`)
      const scene = sceneOf(studio, { kind: 'isometric', module: key, apart: 0, turn: 0 })
      const frame = scene.frames[left.id]
      if (frame === undefined) throw new Error('no frame')
      // Where the front of a side looks in the module: (0, −1, 0); seen from the front it goes to the right and down.
      const [a, b] = [placeBack(left.moduleFromPanel, [0, 0, 0]), placeBack(left.moduleFromPanel, [0, -1, 0])]
      const [from, to] = [seen(frame, a), seen(frame, b)]
      expect(rounded([to[0] - from[0], to[1] - from[1]])).toEqual(rounded([COS30, 0.5]))
      const [first] = scene.holes.filter(({ panel }) => panel === left.id)
      const all = sceneOf(studio, { kind: 'isometric', apart: 0, turn: 0 }).holes.find(({ id }) => id === first?.id)
      // In the view of all it may be seen where it comes out, on the other side of the board.
      expect(Math.abs((all?.place[2] ?? 0) - (first?.place[2] ?? 1))).toBeLessThan(1e-9)
    }
  })

  it('of a workshop too large to tell its holes apart leaves them out, and says so; a module has all of its own', () => {
    const laid = laidOut(workshopText(30))
    const count = laid.panels.reduce((sum, { bores }) => sum + bores.length, 0)
    expect(count).toBeGreaterThan(MOST_HOLES)
    const all = sceneOf(laid, { kind: 'isometric', apart: 0, turn: 0 })
    expect(all.holes).toEqual([])
    expect(all.facts).toContainEqual(['holes', `${count}, not drawn: look at one module to see them`])
    const one = sceneOf(laid, { kind: 'isometric', module: 'cabinet-3', apart: 0, turn: 0 })
    const own = laid.panels.filter(({ module }) => module === 'cabinet-3').flatMap(({ bores }) => bores)
    expect(one.holes).toHaveLength(own.length)
  })
})
