import { describe, expect, test } from 'vitest'
import {
  definitionName,
  lookAtModule,
  lookAtSubject,
  sameThing,
  subjectOf,
  waysToSee,
} from '../../../src/page/drawing/looks.ts'
import type { Outline, OutlineModule } from '../../../src/page/protocol.ts'

const panel = (id: string, name: string, faces: readonly ('A' | 'B')[], mates: readonly string[] = []) => ({
  id,
  name,
  faces,
  mates,
})
const locker: OutlineModule = {
  key: 'locker',
  name: 'locker',
  at: ['modules', 'locker'],
  isTop: false,
  panels: [
    panel('locker/left', 'left side', ['A', 'B'], ['locker/top', 'locker/door']),
    panel('locker/top', 'top', ['A'], ['locker/left']),
    panel('locker/door', 'door', ['A']),
  ],
}
const store: OutlineModule = {
  key: 'store',
  name: 'store',
  at: ['modules', 'store'],
  isTop: false,
  panels: [panel('store/left', 'left side', ['A'])],
}
const worktop: OutlineModule = {
  key: 'long top',
  name: 'long top',
  at: ['tops', 0],
  isTop: true,
  panels: [panel('long top/top', 'worktop', ['A'])],
}
const outline: Outline = { title: 'Shop', units: 'mm', modules: [locker, store, worktop] }
const left = locker.panels[0]
const door = locker.panels[2]

describe('what can be seen', () => {
  test('of all modules, of one, of a top, of a panel', () => {
    expect(waysToSee({})).toEqual(['Isometric', 'Floor plan'])
    expect(waysToSee({ module: locker })).toEqual(['Front', 'Isometric'])
    expect(waysToSee({ module: worktop })).toEqual(['Isometric'])
    expect(waysToSee({ module: locker, ...(left && { panel: left }) })).toEqual(['Face A', 'Face B', 'Facing pair'])
    expect(waysToSee({ module: locker, ...(door && { panel: door }) })).toEqual(['Face A'])
  })

  test('a look knows what it is at', () => {
    expect(subjectOf(outline, { kind: 'pair', panels: ['locker/left', 'locker/top'] })).toEqual({
      module: locker,
      panel: left,
    })
    expect(subjectOf(outline, { kind: 'front', module: 'gone', doors: 'on' })).toEqual({})
    expect(subjectOf(outline, { kind: 'floor' })).toEqual({})
  })

  test('the pair is made with the panel that shares most', () => {
    expect(lookAtSubject({ module: locker, ...(left && { panel: left }) }, 'Facing pair', undefined)).toEqual({
      kind: 'pair',
      panels: ['locker/left', 'locker/top'],
    })
  })

  test('how far apart, how turned and which doors: as it was', () => {
    expect(
      lookAtSubject({ module: locker }, 'Isometric', { kind: 'isometric', module: 'store', apart: 0.4, turn: 3 }),
    ).toEqual({ kind: 'isometric', module: 'locker', apart: 0.4, turn: 3 })
    expect(lookAtSubject({ module: locker }, 'Front', { kind: 'front', module: 'store', doors: 'off' })).toEqual({
      kind: 'front',
      module: 'locker',
      doors: 'off',
    })
  })
})

describe('another module', () => {
  const faceB = { kind: 'face', panel: 'locker/left', face: 'B' } as const

  test('shows the panel of the same name, on the same face where it is drawn', () => {
    expect(lookAtModule(outline, 'store', faceB)).toEqual({ kind: 'face', panel: 'store/left', face: 'A' })
  })

  test('shows the whole module where there is no such panel', () => {
    expect(lookAtModule(outline, 'store', { kind: 'face', panel: 'locker/door', face: 'A' })).toEqual({
      kind: 'front',
      module: 'store',
      doors: 'on',
    })
    expect(lookAtModule(outline, 'long top', faceB)).toEqual({
      kind: 'isometric',
      module: 'long top',
      apart: 0,
      turn: 0,
    })
  })

  test('none: all of them', () => {
    expect(lookAtModule(outline, undefined, faceB)).toEqual({ kind: 'isometric', apart: 0, turn: 0 })
  })
})

test('doors, turn and distance do not make it another thing; face, panel and module do', () => {
  expect(
    sameThing({ kind: 'front', module: 'store', doors: 'on' }, { kind: 'front', module: 'store', doors: 'open' }),
  ).toBe(true)
  expect(sameThing({ kind: 'isometric', apart: 0, turn: 0 }, { kind: 'isometric', apart: 1, turn: 0 })).toBe(true)
  expect(
    sameThing({ kind: 'isometric', apart: 0, turn: 0 }, { kind: 'isometric', module: 'store', apart: 0, turn: 0 }),
  ).toBe(false)
  expect(sameThing({ kind: 'face', panel: 'p', face: 'A' }, { kind: 'face', panel: 'p', face: 'B' })).toBe(false)
  expect(sameThing(undefined, { kind: 'floor' })).toBe(false)
})

test('only a module of its own has fields in the form', () => {
  expect(definitionName(locker)).toBe('locker')
  expect(definitionName(worktop)).toBeUndefined()
})
