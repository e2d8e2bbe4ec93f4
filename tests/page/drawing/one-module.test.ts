import { describe, expect, test } from 'vitest'
import { agreed, type Held } from '../../../src/page/drawing/one-module.ts'
import type { Outline } from '../../../src/page/protocol.ts'

const module = (name: string) => ({
  key: `${name}-key`,
  name,
  at: ['modules', name],
  isTop: false,
  panels: ['left', 'right'].map((side) => ({
    id: `${name}-key/${side}`,
    name: side,
    faces: ['A'] as const,
    mates: [],
  })),
})
const outline: Outline = { title: 'Shop', units: 'mm', modules: [module('alpha'), module('beta')] }
const face = (name: string) => ({ kind: 'face', panel: `${name}-key/left`, face: 'A' }) as const
const both: Held = { name: 'alpha', looked: 'alpha' }

describe('form and drawing show one module', () => {
  test('chosen in the form, the drawing goes to the same panel of it', () => {
    expect(agreed(outline, { name: 'beta', look: face('alpha') }, both)).toEqual({
      held: { name: 'beta', looked: 'beta' },
      look: face('beta'),
    })
  })

  test('chosen in the drawing, the form goes to it', () => {
    expect(agreed(outline, { name: 'alpha', look: face('beta') }, both)).toEqual({
      held: { name: 'beta', looked: 'beta' },
      name: 'beta',
    })
  })

  test('once they agree nothing changes, however often one asks', () => {
    expect(agreed(outline, { name: 'alpha', look: face('alpha') }, both)).toEqual({ held: both })
  })

  test('all modules, or a pair of both, stay on the sheet whatever is chosen in the form', () => {
    const looks = [
      { kind: 'floor' },
      { kind: 'isometric', apart: 0, turn: 0 },
      { kind: 'pair', panels: ['alpha-key/right', 'beta-key/left'] },
    ] as const
    for (const look of looks) expect(agreed(outline, { name: 'beta', look }, both)).not.toHaveProperty('look')
  })

  // A new module, or a new name of one, is in the form before it is laid out; what is looked at meanwhile must not take it back.
  test('a module that is not laid out yet is waited for', () => {
    const shown = { name: 'gamma', look: face('alpha') }
    const before = agreed(outline, shown, both)
    expect(before).toEqual({ held: both })
    const later: Outline = { ...outline, modules: [...outline.modules, module('gamma')] }
    expect(agreed(later, shown, before.held)).toEqual({
      held: { name: 'gamma', looked: 'gamma' },
      look: face('gamma'),
    })
  })
})
