import { describe, expect, test } from 'vitest'
import { builderOf, type Caster, findItem, type Item } from '../../src/hardware/index.ts'

/** An item as one of a kind without a builder: fields and holes, no figures. */
function plain(id: string): Item {
  const found = findItem(id)
  if (found === undefined) throw new Error(id)
  const { figures: _, ...item } = found
  return item as Item
}

describe('a kind without a builder', () => {
  const { builder, figures } = builderOf(plain('caster 75'))

  test('has its fields of numbers as figures, by their names in words', () => {
    const forms = Object.entries(builder.figures).map(([word, { form }]) => `${word}: ${form}`)
    expect(forms).toEqual(['overall height: length', 'swivel radius: length', 'plate: size', 'load: kilograms'])
    expect(figures).toEqual({ overallHeight: 100, swivelRadius: 75, plate: { x: 60, y: 60 }, loadKg: 75 })
  })

  test('makes an item with other figures and the same holes', () => {
    const item = builder.build({ id: 'mine', title: 'mine', source: 'measured' }, { ...figures, overallHeight: 98 })
    expect(item).toMatchObject({ id: 'mine', kind: 'caster', source: 'measured', overallHeight: 98, loadKg: 75 })
    expect(item.parts).toEqual((findItem('caster 75') as Caster).parts)
  })

  test('a hinge: ranges, lists of lengths that may be below 0, degrees', () => {
    const words = builderOf(plain('hinge 35 inset')).builder.figures
    expect(words['cup distance']).toMatchObject({ field: 'cupDistance', form: 'range', sign: 'above 0' })
    expect(words['plate heights']).toMatchObject({ form: 'lengths', sign: 'any' })
    expect(words.base).toMatchObject({ form: 'length', sign: 'any' })
    expect(words.opening).toMatchObject({ form: 'degrees' })
    expect(words.title).toBeUndefined()
  })
})
