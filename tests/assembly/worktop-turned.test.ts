import { expect, test } from 'vitest'
import { rowTop } from '../../src/assembly/tops/run.ts'
import { compose, IDENTITY, MINUS_X, place, poseOf, Y } from '../../src/geometry/index.ts'
import { Kept } from '../../src/memory/index.ts'
import { built, projectOf } from '../support/define.ts'

const DEFINITION = `
storyrod: 1
stock: { board: { thickness: 18 }, top: { thickness: 27 } }
common: { depth: 500, carcase height: 700, stock: board, carcase: { back: none } }
modules:
  one: { width: 800 }
  two: { width: 400 }
floor plan:
  - row: [one, two]
    worktop: { stock: top, overhang: { left: 20, right: 30, front: 10, back: 5 } }
`

// A row that stands with its front to another wall: everything is turned with it, and the board with its screws is the same.
test('over a row that is turned by a quarter the worktop turns with it', () => {
  const { assembly } = built(DEFINITION)
  const project = projectOf(DEFINITION)
  const [row] = project.rows
  if (row === undefined) throw new Error('no row')
  // x to the back, y to the left: a quarter turn to the left, about a point 3 m off.
  const turned = poseOf(Y, MINUS_X, [3000, 100, 0])
  const over = (pose: typeof turned) =>
    rowTop(
      row,
      assembly.modules
        .filter((module) => module.liesOver === undefined)
        .map((module) => ({
          module: { ...module, floorFromModule: compose(pose, module.floorFromModule) },
          parts: {
            panels: module.panels,
            cuts: [],
            cutouts: [],
            troubles: [],
            hardware: assembly.hardware.filter((piece) => piece.frame === module.key),
          },
        })),
      new Kept(),
    )
  const [straight, aside] = [over(IDENTITY), over(turned)]
  const [panel] = aside.modules[0]?.panels ?? []
  // 20 + 1200 + 30 by 10 + 500 + 5.
  expect([panel?.length, panel?.width]).toEqual([1250, 515])
  // The front left corner of the row, 700 up.
  expect(aside.modules[0]?.floorFromModule.origin).toEqual([3000, 100, 700])
  expect(aside.parts.hardware.length).toBeGreaterThan(10)
  expect(aside.parts.hardware.map((piece) => piece.stations[0]?.pose.origin)).toEqual(
    straight.parts.hardware.map((piece) => place(turned, piece.stations[0]?.pose.origin ?? [0, 0, 0])),
  )
})
