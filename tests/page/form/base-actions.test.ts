import { expect, test } from 'vitest'
import { STANDS, standOf, standOn } from '../../../src/page/form/base-actions.ts'
import { dataAt } from '../../../src/project/index.ts'
import { changed, dataOf } from './support.ts'

const TEXT = `storyrod: 1
stock: { ply: { thickness: 18 } }
common:
  depth: 500
  width: 600
  carcase height: 700
  stock: ply
  base:   # rolls
    casters: caster 75
    footprint gap: 8
modules: { a: {}, b: { base: { feet: foot M8, inset: 80 } }, c: { base: none } }
`

test.each([[['common', 'base']], [['modules', 'a', 'base']], [['modules', 'b', 'base']], [['modules', 'c', 'base']]])(
  'at %j each way to stand takes the place of the others, without a mistake',
  (path) => {
    for (const wanted of [...STANDS, 'none'] as const) {
      const { data, problems } = changed(TEXT, standOn(dataOf(TEXT), path, { wanted, units: 'mm' }))
      expect(problems).toEqual([])
      expect(standOf(dataAt(data, path))).toBe(wanted)
    }
  },
)

test('what has a meaning for both ways stays, and so does the comment', () => {
  const plinth = changed(TEXT, standOn(dataOf(TEXT), ['common', 'base'], { wanted: 'plinth', units: 'mm' }))
  expect(plinth.text).toContain('  base:   # rolls\n    plinth: { height: 100 }\n')
  const b = ['modules', 'b', 'base']
  const rolls = changed(TEXT, standOn(dataOf(TEXT), b, { wanted: 'casters', units: 'in' }))
  expect(dataAt(rolls.data, b)).toEqual({ inset: 80, casters: 'caster 3 in' })
  expect(changed(TEXT, standOn(dataOf(TEXT), b, { wanted: undefined, units: 'mm' })).text).toContain('b: {}')
})
