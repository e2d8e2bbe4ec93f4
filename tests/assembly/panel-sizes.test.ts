import { describe, expect, test } from 'vitest'
import { built, panelOf, ROUND_STOCK } from '../support/define.ts'

// One module, 600 wide, 500 deep, carcase 700 high, of 18 mm board with a 6 mm back, no fronts. The way a carcase is
// lapped is common practice, no source; every size below is arithmetic worked by hand from it.
const module = (carcase: string): string => `${ROUND_STOCK}
modules:
  box: { width: 600, depth: 500, carcase height: 700, stock: board, carcase: { ${carcase} } }
`

/** `length × width` by panel key. */
function sizes(carcase: string): Record<string, string> {
  return Object.fromEntries(
    built(module(carcase)).panels.map((panel) => [panel.key, `${panel.length} × ${panel.width}`]),
  )
}

describe('panel sizes for each way of lapping', () => {
  test('top and bottom between the sides, back applied', () => {
    // Sides: whole height 700; depth 500 − 6 = 494. Top and bottom: 600 − 2 × 18 = 564. Back covers all: 700 × 600.
    expect(sizes('top: between, bottom: between, back: { sits: applied, stock: thin }')).toEqual({
      'left-side': '700 × 494',
      'right-side': '700 × 494',
      top: '564 × 494',
      bottom: '564 × 494',
      back: '700 × 600',
    })
  })

  test('top over, bottom between', () => {
    // The sides lose one thickness above: 700 − 18 = 682. The top is as long as the module.
    expect(sizes('top: over, bottom: between, back: { sits: applied, stock: thin }')).toMatchObject({
      'left-side': '682 × 494',
      top: '600 × 494',
      bottom: '564 × 494',
    })
  })

  test('top and bottom over the ends of the sides', () => {
    // 700 − 2 × 18 = 664.
    expect(sizes('top: over, bottom: over, back: { sits: applied, stock: thin }')).toMatchObject({
      'right-side': '664 × 494',
      top: '600 × 494',
      bottom: '600 × 494',
    })
  })

  test('top between, bottom over', () => {
    expect(sizes('top: between, bottom: over, back: none')).toEqual({
      'left-side': '682 × 500',
      'right-side': '682 × 500',
      top: '564 × 500',
      bottom: '600 × 500',
    })
  })

  test('no top', () => {
    // Sides whole; a back in rebates goes up to the upper end: 700 − 18 + (9 − 0.5) = 690.5; 564 + 2 × 8.5 = 581.
    expect(sizes('top: none, bottom: between, back: { sits: rebated, stock: thin }')).toEqual({
      'left-side': '700 × 500',
      'right-side': '700 × 500',
      bottom: '564 × 500',
      back: '690.5 × 581',
    })
  })

  test('back inset between the edges, 10 in', () => {
    // Sides whole depth; back 700 − 36 = 664 by 600 − 36 = 564.
    const sized = sizes('top: between, bottom: between, back: { sits: inset, stock: thin, recess: 10, joint: none }')
    expect(sized).toMatchObject({ 'left-side': '700 × 500', back: '664 × 564' })
    // Its outer face lies 10 in front of the rear edges, so its inner face at 500 − 10 − 6 = 484.
    const back = panelOf(
      built(module('top: between, bottom: between, back: { sits: inset, stock: thin, recess: 10, joint: none }')),
      'box/back',
    )
    expect(back.moduleFromPanel.origin[1]).toBe(484)
  })

  test('back in a groove', () => {
    // Groove 8 deep, the back 0.5 short of its bottom: 664 + 2 × 7.5 = 679 by 564 + 2 × 7.5 = 579.
    const of = built(module('top: between, bottom: between, back: { sits: grooved, stock: thin }'))
    const back = panelOf(of, 'box/back')
    expect([back.length, back.width]).toEqual([679, 579])
    // Groove width 6 + 0.2 = 6.2, rear wall 10 from the rear edge: y from 483.8 to 490; the back stands in its middle.
    expect(back.moduleFromPanel.origin[1]).toBeCloseTo(483.9, 9)
    const side = panelOf(of, 'box/left-side')
    expect(side.grooves).toHaveLength(1)
    expect(side.grooves[0]).toMatchObject({ kind: 'groove', face: 'A', depth: 8, roundEnds: true })
    expect(side.grooves[0]?.min[1]).toBeCloseTo(483.8, 9)
    expect(side.grooves[0]?.max[1]).toBeCloseTo(490, 9)
    // Along the side the back ends 7.5 inside the bottom and the top: z from 18 − 7.5 = 10.5 to 689.5. The round of a
    // cutter 6.2 wide lies beyond that and the play: 0.5 + 3.1 = 3.6. So z from 6.9 to 693.1, and x = 700 − z.
    expect(side.grooves[0]?.min[0]).toBeCloseTo(6.9, 9)
    expect(side.grooves[0]?.max[0]).toBeCloseTo(693.1, 9)
    // The bottom lies between the sides: its groove runs out at both of its ends, which the sides hide.
    const bottom = panelOf(of, 'box/bottom')
    expect([bottom.grooves[0]?.min[0], bottom.grooves[0]?.max[0]]).toEqual([0, 564])
  })

  test('back in a rebate', () => {
    // Rebate half the thickness wide, 9, and as deep as the back is thick, 6; the back 0.5 short: 664 + 17 by 564 + 17.
    const of = built(module('top: between, bottom: between, back: { sits: rebated, stock: thin }'))
    const back = panelOf(of, 'box/back')
    expect([back.length, back.width]).toEqual([681, 581])
    const side = panelOf(of, 'box/right-side')
    expect(side.grooves[0]).toMatchObject({ kind: 'rebate', face: 'A', depth: 9, roundEnds: false })
    expect([side.grooves[0]?.min[1], side.grooves[0]?.max[1]]).toEqual([494, 500])
  })

  test('sizes go by the mean of the readings, grooves by the largest', () => {
    // Readings 17.6, 17.8, 18.0: mean 17.8, so the bottom is 600 − 35.6 = 564.4. Back 5.9 and 6.3: groove 6.3 + 0.2.
    const of = built(`
storyrod: 1
stock:
  board: { thickness: [17.6, 17.8, 18.0] }
  thin: { thickness: [5.9, 6.3] }
modules:
  box: { width: 600, depth: 500, carcase height: 700, stock: board, carcase: { back: { sits: grooved, stock: thin } } }
`)
    expect(panelOf(of, 'box/bottom').length).toBeCloseTo(564.4, 9)
    const groove = panelOf(of, 'box/left-side').grooves[0]
    expect((groove?.max[1] ?? 0) - (groove?.min[1] ?? 0)).toBeCloseTo(6.5, 9)
  })

  test('an overlay front sets the carcase back by its thickness and the gap', () => {
    // Side depth = overall 500 − front 18 − front gap 2 − back 6 = 474 (design formula).
    const of = built(`${ROUND_STOCK}
modules:
  box:
    width: 600
    depth: 500
    carcase height: 700
    stock: board
    carcase: { back: { sits: applied, stock: thin } }
    inside: { front: { kind: door } }
`)
    expect(panelOf(of, 'box/left-side').width).toBe(474)
    // The door covers all but the reveal of 1.5 all round: 697 × 597.
    expect([panelOf(of, 'box/door').length, panelOf(of, 'box/door').width]).toEqual([697, 597])
  })

  test('working height takes the base off', () => {
    // Caster 75: overall 100. Top at 900: the carcase is 800 high.
    const of = built(`${ROUND_STOCK}
modules:
  box: { width: 600, depth: 500, working height: 900, stock: board, base: { casters: caster 75 }, carcase: { back: none } }
`)
    expect(panelOf(of, 'box/left-side').length).toBe(800)
  })
})
