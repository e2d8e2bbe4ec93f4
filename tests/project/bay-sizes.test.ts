import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { type Bay, baySizes, readDefinition, type Split } from '../../src/project/index.ts'

/** A split as the reader makes it, so that no part of it is made up here. */
function split(thickness: string, bays: string): Split {
  const text = `storyrod: 1
stock: {ply: {thickness: ${thickness}}}
modules: {box: {width: 9000, depth: 400, carcase height: 700, stock: ply, inside: {side by side: ${bays}}}}
`
  const read = readDefinition(text, 'x.yaml')
  const found = read.ok ? read.project.modules[0]?.inside.split : undefined
  if (found === undefined) throw new Error('the definition of the test is wrong')
  return found
}

describe('bay sizes, worked by hand', () => {
  test('fixed sizes first, then shares of the rest', () => {
    // Mean thickness (17.8 + 18.2) / 2 = 18; two dividers 36. 1000 - 36 - 264 = 700; shares 1 and 2.5: 200 and 500.
    const sizes = baySizes(1000, split('[17.8, 18.2]', '[{size: 264}, {share: 1}, {share: 2.5}]'))
    expect(sizes).toHaveLength(3)
    expect(sizes[0]).toBe(264)
    expect(sizes[1]).toBeCloseTo(200, 9)
    expect(sizes[2]).toBeCloseTo(500, 9)
  })

  test('sizes alone must fill the opening', () => {
    const two = split('18', '[{size: 200}, {size: 346}, {}]')
    const sized: Split = { ...two, bays: two.bays.slice(0, 2) }
    // 200 + 346 + 18 = 564.
    expect(baySizes(564, sized)).toEqual([200, 346])
    expect(baySizes(564.5, sized)).toBe(
      'the sizes take 546 mm and the dividers 18 mm of an opening of 564.5 mm; the remaining 0.5 mm has no bay to take it',
    )
    expect(baySizes(563, sized)).toBe(
      'the sizes take 546 mm and the dividers 18 mm of an opening of 563 mm; that is 1 mm too much',
    )
  })

  test('nothing may remain for no share', () => {
    const three = split('18', '[{size: 200}, {size: 328}, {}]')
    expect(baySizes(564, three)).toBe(
      'the sizes take 528 mm and the dividers 36 mm of an opening of 564 mm; nothing remains for the bays without a size',
    )
    expect(baySizes(36, split('18', '[{}, {}, {}]'))).toBe(
      'the dividers take 36 mm of an opening of 36 mm; nothing remains for the bays without a size',
    )
  })

  test('the reason is in the units that are asked for', () => {
    expect(baySizes(19.05, split('19.05', '[{}, {}]'), 'in')).toBe(
      'the dividers take 3/4 in of an opening of 3/4 in; nothing remains for the bays without a size',
    )
  })
})

test('bays and dividers always add up to the opening', () => {
  const made = split('18', '[{}, {}]')
  const one = made.bays[0]
  if (one === undefined) throw new Error('the split of the test has no bay')
  const bay = fc.oneof(
    fc.record({ size: fc.double({ min: 1, max: 400, noNaN: true }), share: fc.constant(1) }),
    fc.record({ size: fc.constant(undefined), share: fc.double({ min: 0.001, max: 1000, noNaN: true }) }),
  )
  fc.assert(
    fc.property(
      fc.array(bay, { minLength: 2, maxLength: 8 }),
      fc.double({ min: 50, max: 4000, noNaN: true }),
      (some, clear) => {
        const bays: Bay[] = some.map((sizes) => ({ ...one, ...sizes }))
        const sizes = baySizes(clear, { ...made, bays })
        if (typeof sizes === 'string') return
        expect(sizes.reduce((sum, size) => sum + size, 18 * (bays.length - 1))).toBeCloseTo(clear, 6)
        expect(sizes.every((size) => size > 0)).toBe(true)
      },
    ),
  )
})
