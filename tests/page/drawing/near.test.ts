import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { firstRead, nearest, nextInWay, nextRead } from '../../../src/page/drawing/near.ts'

const at = (x: number, y: number, name = `${x} ${y}`) => ({ at: [x, y] as const, name })

describe('the nearest hole', () => {
  const holes = [at(0, 0), at(32, 0), at(64, 0)]

  test('within reach is taken, beyond it none', () => {
    expect(nearest(holes, [30, 3], 10)?.name).toBe('32 0')
    expect(nearest(holes, [16, 12], 19)).toBeUndefined()
    expect(nearest(holes, [64, 10], 10)?.name).toBe('64 0')
  })

  test('of several in one spot the first is taken: it is nearest the eye', () => {
    expect(nearest([at(5, 5, 'near'), at(5, 5, 'far')], [5, 6], 4)?.name).toBe('near')
  })
})

describe('arrow keys', () => {
  // Two columns of pins 37 and 460 from the left, 32 mm apart, and a cup between them.
  const grid = [96, 128, 160].flatMap((y) => [at(37, y), at(460, y)])
  const all = [...grid, at(200, 140, 'cup')]

  test('follow a column', () => {
    expect(nextInWay(all, [37, 96], 'ArrowDown')?.name).toBe('37 128')
    expect(nextInWay(all, [37, 160], 'ArrowUp')?.name).toBe('37 128')
    expect(nextInWay(all, [37, 96], 'ArrowUp')).toBeUndefined()
  })

  test('go across, to what is ahead before what is aside', () => {
    expect(nextInWay(all, [37, 128], 'ArrowRight')?.name).toBe('cup')
    expect(nextInWay(all, [200, 140], 'ArrowRight')?.name).toBe('460 128')
    expect(nextInWay(all, [460, 96], 'ArrowLeft')?.name).toBe('cup')
  })

  test('begin where one begins to read', () => {
    expect(firstRead(all)?.name).toBe('37 96')
    expect(firstRead([])).toBeUndefined()
  })

  // 96: the two upper pins; 128, then the cup at 140, then 160; behind the last comes the first.
  test('next and previous go as one reads', () => {
    const names: string[] = []
    let now = nextRead(all, undefined, 1)
    for (let k = 0; k < 8; k += 1) {
      names.push(now?.name ?? '')
      now = nextRead(all, now, 1)
    }
    expect(names).toEqual(['37 96', '460 96', '37 128', '460 128', 'cup', '37 160', '460 160', '37 96'])
    expect(nextRead(all, undefined, -1)?.name).toBe('460 160')
    expect(nextRead(all, all[0], -1)?.name).toBe('460 160')
  })

  test('next reaches every hole, those in one spot too', () => {
    const place = fc.tuple(fc.integer({ min: 0, max: 3 }), fc.integer({ min: 0, max: 3 }))
    fc.assert(
      fc.property(fc.array(place, { minLength: 1, maxLength: 20 }), (places) => {
        const things = places.map(([x, y]) => at(x * 10, y * 10))
        const seen = new Set<(typeof things)[number] | undefined>()
        let now = nextRead(things, undefined, 1)
        for (const _ of things) {
          seen.add(now)
          now = nextRead(things, now, 1)
        }
        expect(seen.size).toBe(things.length)
      }),
    )
  })
})
